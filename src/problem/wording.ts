import type { Problem } from "./problem.js";
import { CUTTING } from "./words/cutting.js";
import { FIELDS } from "./words/fields.js";
import { FILES } from "./words/files.js";
import { FLAGS } from "./words/flags.js";
import { JOB } from "./words/job.js";
import { LETTERING } from "./words/lettering.js";
import { NECK } from "./words/neck.js";
import { PAPER } from "./words/paper.js";
import { PAPER_PROOF } from "./words/paper-proof.js";
import { PROOF } from "./words/proof.js";
import { PROOF_FILES } from "./words/proof-files.js";
import { READINGS } from "./words/readings.js";
import { READINGS_BOARD } from "./words/readings-board.js";
import { READINGS_RADIUS } from "./words/readings-radius.js";
import { READINGS_SCALE } from "./words/readings-scale.js";
import type { Wording } from "./words/say.js";
import { TOOLS } from "./words/tools.js";
import { TOOLS_BLOCK } from "./words/tools-block.js";
import { TOOLS_CAMBER } from "./words/tools-camber.js";
import { TOOLS_SCALE } from "./words/tools-scale.js";
import { TOOLS_SETUP } from "./words/tools-setup.js";
import { YAML } from "./words/yaml.js";

/** Every code with its wording; nothing else in the project words a problem. */
const WORDING: Wording = {
	...FIELDS,
	...JOB,
	...YAML,
	...NECK,
	...TOOLS,
	...TOOLS_SCALE,
	...TOOLS_SETUP,
	...TOOLS_BLOCK,
	...TOOLS_CAMBER,
	...CUTTING,
	...PAPER,
	...LETTERING,
	...FILES,
	...PROOF,
	...PROOF_FILES,
	...PAPER_PROOF,
	...FLAGS,
	...READINGS_SCALE,
	...READINGS,
	...READINGS_BOARD,
	...READINGS_RADIUS,
};

/** Whether a code has its wording. */
export function isWorded(code: string): boolean {
	return Object.hasOwn(WORDING, code);
}

/** All codes that have a wording. */
export function wordedCodes(): string[] {
	return Object.keys(WORDING);
}

/**
 * A problem in one line: what was given, what is allowed, how to mend it, without its place.
 *
 * @throws RangeError for a code without wording
 */
export function problemText({ code, facts }: Problem): string {
	const words = isWorded(code) && WORDING[code]?.(facts);
	if (!words) throw new RangeError(`no wording for ${code}`);
	return `${words.what}. ${words.mend}`;
}

/** Where a problem stands: "heron.yaml:5:10: neck.scale", as far as it is known. */
export function placeText({ where }: Problem, file: string): string {
	const { line, column } = where;
	const name = where.file ?? file;
	const at = line === undefined ? [name] : [name, line, column];
	return [at.filter((x) => x !== "").join(":"), pathText(where.path)].filter(Boolean).join(": ");
}

/** A path of keys as people write it: "make[1].radius-gauge.at". */
export function pathText(path: readonly (string | number)[]): string {
	return path.reduce<string>((text, key) => {
		if (typeof key === "number") return `${text}[${key + 1}]`;
		return text === "" ? key : `${text}.${key}`;
	}, "");
}
