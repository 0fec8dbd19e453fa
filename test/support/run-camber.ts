import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Disk } from "../../src/cli/disk.js";
import { run } from "../../src/cli/main.js";
import { tempFolder } from "./temp-folder.js";

/** What a command said and how it ended. */
export interface Ran {
	readonly code: number;
	readonly out: string;
	readonly err: string;
}

/** Runs one command line within this process. */
export async function camber(args: readonly string[], disk?: Disk): Promise<Ran> {
	let out = "";
	let err = "";
	const console = {
		out: (text: string) => {
			out += text;
		},
		err: (text: string) => {
			err += text;
		},
	};
	return { code: await run(args, console, disk), out, err };
}

/** A job file in a folder of its own, and a folder beside it that is not there yet. */
export function jobFile(text: string | Uint8Array, name = "neck.yaml") {
	const folder = tempFolder();
	const file = join(folder, name);
	writeFileSync(file, text);
	return { folder, file, out: join(folder, "out") };
}
