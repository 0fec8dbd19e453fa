import type { OutFile } from "../drawing/index.js";
import type { Lettering } from "../lettering/index.js";
import type { Problem } from "../problem/index.js";
import type { Proven } from "../proof/index.js";

/** Every written file as it was measured again, or why it could not be. */
export type ProvenJob =
	| { readonly ok: true; readonly proven: readonly Proven[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Measures every file by its bytes alone against what the manifest promises. One error in one
 * file refuses them all: nothing of a job that does not hold is written.
 */
export async function proveAll(
	files: readonly OutFile[],
	manifest: OutFile,
	letters: Lettering,
): Promise<ProvenJob> {
	const { Prover, promisedOf } = await import("../proof/index.js");
	const promised = promisedOf(new TextDecoder().decode(manifest.bytes), manifest.name);
	if ("code" in promised) return { ok: false, problems: [promised] };
	const prover = new Prover(letters);
	const proven: Proven[] = [];
	const bytesOf = (name: string) => files.find((file) => file.name === name)!.bytes;
	for (const file of promised.files) proven.push(await prover.prove(bytesOf(file.name), file));
	for (const print of promised.prints) {
		const written = print.files.map(({ name }) => ({ name, bytes: bytesOf(name) }));
		proven.push(...(await prover.provePrint(written, print)));
	}
	const errors = proven.flatMap(({ findings }) => findings.filter((f) => f.severity === "error"));
	return errors.length > 0 ? { ok: false, problems: errors } : { ok: true, proven };
}
