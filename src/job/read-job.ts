import type * as z from "zod";
import type { Machine } from "../cutting/index.js";
import { usualPaper } from "../fields/index.js";
import type { Neck } from "../neck/index.js";
import type { Paper } from "../paper/index.js";
import type { Problem } from "../problem/index.js";
import type { WireFit } from "../readings/index.js";
import type { Bench, Wire } from "../tools/index.js";
import { fileSafe } from "./file-safe.js";
import { machineOf, mergedMachine } from "./machine-of.js";
import { paperOf } from "./paper-of.js";
import { parsePaper } from "./paper-schema.js";
import { type MachineFile, placed, readMachine } from "./read-machine.js";
import { missingValues, type NeckRead, readNeck } from "./read-neck.js";
import { type JobValues, jobSchema } from "./schema.js";
import { metaAt } from "./schema-walk.js";
import { shapeProblems } from "./shape.js";
import { unitOf } from "./unit-of.js";
import { type Wanted, wantedOf } from "./wanted.js";
import { wireOf } from "./wire-of.js";
import { type JobText, parseJobText, sourceOf } from "./yaml-text.js";

/** A job as read: all but the letters, which load by themselves. */
export interface Job {
	readonly bench: Omit<Bench, "layers" | "letters">;
	readonly font: string | null;
	readonly wanted: readonly Wanted[];
	/** For file names. */
	readonly fileName: string;
	/** Whether the job says which paper it is printed on. */
	readonly namesPaper: boolean;
	/** What readings made of the neck; null for a neck of numbers alone. */
	readonly fit: NeckRead["fit"];
	/** The wire's readings; null for a wire of single numbers. */
	readonly wireFit: WireFit | null;
	/** What the neck was built from, mm. */
	readonly neckValues: NeckRead["values"];
}

/** A problem's place in the job's text, for problems found after reading. */
export type Locator = (p: Problem) => Problem;

export interface ReadOptions {
	/** Whether scale lengths outside 150 to 2000 mm pass: no. */
	readonly allowUnusual?: boolean;
	/** Only these tools or part names; all if empty. */
	readonly only?: readonly string[];
	/** A machine's own file: the job's values win over it. */
	readonly machine?: MachineFile;
	/** Texts of the files that the neck's readings name. */
	readonly files?: ReadonlyMap<string, string>;
	/** The paper instead of the job's: "A4", "210 x 330 mm", "roll 610 mm". */
	readonly paper?: string;
}

export type JobRead =
	| { readonly ok: true; readonly job: Job; readonly located: Locator }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * A job from its text: first all problems of shape, then, if there are none, all of the
 * neck's geometry.
 */
export function readJob(text: string, options: ReadOptions = {}): JobRead {
	const { allowUnusual = false, only = [] } = options;
	const parsed = parseJobText(text);
	if (Array.isArray(parsed)) return { ok: false, problems: parsed };
	const located = locator(parsed);
	const fail = (problems: readonly Problem[]): JobRead => ({
		ok: false,
		problems: problems.map(located),
	});

	const value = withTexts(parsed);
	const schemaOptions = { unit: unitOf(value), allowUnusual };
	const schema = jobSchema(schemaOptions);
	const result = schema.safeParse(value);
	const entries = wantedOf(value, schemaOptions, only);
	const file = options.machine ? readMachine(options.machine) : NO_FILE;
	const size = options.paper === undefined ? null : parsePaper(options.paper, schemaOptions.unit);
	const shape = [
		...(size && "code" in size ? [size] : []),
		...(file.ok ? [] : file.problems),
		...missingValues(value, rangesOf(schema)),
		...(result.success ? [] : shapeProblems(schema, value, result.error.issues, [])),
		...entries.problems,
	];
	if (!file.ok || !result.success || shape.length > 0 || (size && "code" in size))
		return fail(shape);

	const machine = machineOf(mergedMachine(file.values, result.data.machine));
	if (Array.isArray(machine)) {
		return fail(machine.map((p) => (isIn(parsed, p.where.path) ? p : file.located(p))));
	}
	const wired = wireOf(result.data.wire);
	if (Array.isArray(wired)) return fail(wired);
	const { wire, fit: wireFit } = wired;
	const read = readNeck(result.data.neck, {
		unit: schemaOptions.unit,
		files: options.files ?? new Map(),
		crownHeight: wire.crownHeight,
	});
	if (Array.isArray(read)) return fail(read);
	const paper = paperOf(
		size ?? result.data.paper ?? usualPaper(schemaOptions.unit),
		result.data.printer,
	);
	if (Array.isArray(paper)) return fail(paper);
	const bench = benchOf(result.data, read.neck, machine, paper, wire);
	const wanted = entries.wanted.map((w) => ({ ...w, stock: w.stock ?? bench.stock }));
	const job = {
		bench,
		font: result.data.lettering.font ?? null,
		wanted,
		fileName: fileSafe(bench.job),
		namesPaper: result.data.paper !== undefined,
		fit: read.fit,
		wireFit,
		neckValues: read.values,
	};
	return { ok: true, job, located };
}

/** What is allowed for a neck's values, in words. */
function rangesOf(schema: z.ZodType): Record<string, string> {
	const keys = ["scale", "radius", "width"];
	return Object.fromEntries(keys.map((key) => [key, metaAt(schema, ["neck", key], "range")]));
}

const NO_FILE = { ok: true as const, values: {}, located: (p: Problem) => p };

function isIn({ doc }: JobText, path: Problem["where"]["path"]): boolean {
	return doc.hasIn(path);
}

function locator(text: JobText): Locator {
	const isFlag = (p: Problem) => String(p.where.path[0]).startsWith("--");
	return (p) =>
		p.where.file !== undefined || p.code === "only-unknown" || isFlag(p) ? p : placed(p, text);
}

/** The job's value with name and date as they stand in the file: 1.10 stays 1.10. */
function withTexts({ value, doc }: JobText): unknown {
	const texts = ["job", "date"].flatMap((key) => {
		const given = (value as Record<string, unknown>)[key];
		const source = sourceOf(doc, [key]);
		return typeof given === "number" && source !== undefined ? [[key, source]] : [];
	});
	return texts.length === 0 ? value : { ...(value as object), ...Object.fromEntries(texts) };
}

function benchOf(
	values: JobValues,
	neck: Neck,
	machine: Machine,
	paper: Paper,
	wire: Wire,
): Omit<Bench, "layers" | "letters"> {
	return {
		job: values.job,
		date: values.date ?? null,
		neck,
		wire,
		stock: values.stock,
		machine,
		paper,
		temperatureSwing: values.shop["temperature-swing"],
	};
}

export type { Wanted } from "./wanted.js";
