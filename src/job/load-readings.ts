import { type Problem, problem } from "../problem/index.js";
import { filesOfReadings } from "./slots-of.js";
import { parseJobText } from "./yaml-text.js";

/**
 * The texts of the files that a job's readings name, by their names; or those that cannot be had.
 * A job that is no sound YAML names none: reading it says why.
 *
 * @param load - brings a file's bytes; without it a job that names a file is refused
 */
export async function loadReadings(
	text: string,
	load?: (path: string) => Promise<Uint8Array>,
): Promise<ReadonlyMap<string, string> | Problem[]> {
	if (!text.includes("readings")) return new Map();
	const parsed = parseJobText(text);
	if (Array.isArray(parsed)) return new Map();
	const texts = new Map<string, string>();
	const problems: Problem[] = [];
	for (const file of filesOfReadings(parsed.value)) {
		try {
			if (!load) throw new Error("nothing here loads files");
			texts.set(file, new TextDecoder().decode(await load(file)));
		} catch (error) {
			const reason = error instanceof Error ? error.message : String(error);
			problems.push(problem("readings-not-loaded", ["neck", "readings"], { file, reason }));
		}
	}
	return problems.length > 0 ? problems : texts;
}
