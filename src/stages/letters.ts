import type { Job } from "../job/index.js";
import { fileSafe } from "../job/index.js";
import { type Lettering, loadLettering } from "../lettering/index.js";
import { type Problem, problem } from "../problem/index.js";

/** Signs that camber's own texts are made of: printable ASCII and two more. */
export const OWN_SIGNS = `${String.fromCharCode(...Array.from({ length: 95 }, (_, i) => 32 + i))}±°`;

/** The job's lettering, or why there is none. */
export async function lettersOf(
	job: Job,
	load?: (path: string) => Promise<Uint8Array>,
): Promise<Lettering | Problem[]> {
	const path = ["lettering", "font"];
	const file = job.font ?? "";
	let letters: Lettering;
	try {
		if (file && !load) return [problem("font-not-loaded", path, { file })];
		const bytes = file && load ? await load(file) : null;
		letters = await loadLettering(bytes ? { bytes, name: fontName(file) } : undefined);
	} catch (error) {
		const text = error instanceof Error ? error.message : String(error);
		const reason = text.replace(/^the font "[^"]*" (?:cannot be read: )?/u, "");
		return [problem("font-unusable", path, { file, reason })];
	}
	const lacking = letters.missing(OWN_SIGNS);
	if (lacking.length > 0) {
		const missing = lacking.map((sign) => (sign === " " ? "space" : sign));
		return [problem("font-lacks-signs", path, { file, missing })];
	}
	const { job: name, date } = job.bench;
	const texts = [["job", name] as const, ["date", date ?? ""] as const];
	const problems = texts.flatMap(([key, text]) => {
		const missing = letters.missing(text);
		return missing.length > 0 ? [problem("letters-missing", [key], { text, missing })] : [];
	});
	return problems.length > 0 ? problems : letters;
}

/** How label claims name a font: its file's name, wherever the file lies. */
export function fontName(path: string): string {
	return fileSafe(path.replace(/^.*[/\\]/u, "").replace(/\.[^.]*$/u, "")) || "font";
}
