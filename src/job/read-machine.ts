import type { Problem } from "../problem/index.js";
import { locate } from "./locate.js";
import { type MachineValues, machineFileSchema } from "./machine-schema.js";
import { shapeProblems } from "./shape.js";
import { unitOf } from "./unit-of.js";
import { type JobText, parseJobText } from "./yaml-text.js";

/** A machine's own file: its name in messages, and its text. */
export interface MachineFile {
	readonly name: string;
	readonly text: string;
}

export type MachineRead =
	| {
			readonly ok: true;
			readonly values: MachineValues;
			/** Places a problem in this file. */
			readonly located: (p: Problem) => Problem;
	  }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** A machine's values from its own file, or all problems of the file's shape. */
export function readMachine({ name, text }: MachineFile): MachineRead {
	const inFile = (p: Problem): Problem => ({ ...p, where: { ...p.where, file: name } });
	const parsed = parseJobText(text);
	if (Array.isArray(parsed)) return { ok: false, problems: parsed.map(inFile) };
	const located = (p: Problem) => inFile(placed(p, parsed));
	const schema = machineFileSchema(unitOf(parsed.value));
	const result = schema.safeParse(parsed.value);
	if (result.success) return { ok: true, values: result.data.machine, located };
	const problems = shapeProblems(schema, parsed.value, result.error.issues, []);
	return { ok: false, problems: problems.map(located) };
}

/** A problem with its line and column in a text. */
export function placed(p: Problem, { doc, lines }: JobText): Problem {
	if (p.where.line !== undefined) return p;
	const of = /-key$/u.test(p.code) ? "key" : "value";
	return { ...p, where: { ...p.where, ...locate(doc, lines, p.where.path, of) } };
}
