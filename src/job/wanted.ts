import type * as z from "zod";
import { type Problem, problem } from "../problem/index.js";
import { type ShopStock, TOOLS, type Tool } from "../tools/index.js";
import { KITS, type Kit, toolsOf } from "../tools/kits.js";
import { fileSafe } from "./file-safe.js";
import { nearest } from "./nearest.js";
import type { SchemaOptions } from "./neck-schema.js";
import { kitSchema, toolSchema } from "./schema.js";
import { shapeProblems, show } from "./shape.js";

/** One tool that a job asks for. */
export interface Wanted {
	readonly tool: Tool;
	/** Of the part, file-name-safe. */
	readonly name: string;
	readonly settings: Readonly<Record<string, unknown>>;
	readonly stock: ShopStock;
	/** Pieces of each part to cut, glued up to one. */
	readonly layers: number;
	/** Whether the machine's tabs hold its parts. */
	readonly tabs: boolean;
	/** Where its entry stands in the job. */
	readonly path: readonly (string | number)[];
	/** The kit that it belongs to: what does not apply to the neck is left out of that. */
	readonly kit: string | null;
}

/** An entry as it stands in the job: without a sheet of its own it takes the job's. */
type Draft = Omit<Wanted, "stock"> & { readonly stock: ShopStock | null };

interface Entries {
	readonly wanted: readonly Draft[];
	readonly problems: readonly Problem[];
}

/** The tools under `make`, each read by its own schema. */
export function wantedOf(value: unknown, options: SchemaOptions, only: readonly string[]): Entries {
	const list = (value as { make?: unknown } | null)?.make;
	if (!Array.isArray(list)) return { wanted: [], problems: [] };
	if (list.length === 0) {
		const known = TOOLS.map((t) => t.id);
		return { wanted: [], problems: [problem("make-empty", ["make"], { known })] };
	}
	const wanted: Draft[] = [];
	const problems: Problem[] = [];
	list.forEach((entry, i) => {
		const read = entryOf(entry, i, options);
		if (read.ok) wanted.push(...read.drafts);
		else problems.push(...read.problems);
	});
	return chosenOf(withoutTold(wanted), problems, only);
}

/** Entries without those of a kit that stand in the job by themselves, or in a kit before. */
function withoutTold(drafts: readonly Draft[]): Draft[] {
	return drafts.filter(({ kit, tool }, i) => {
		if (kit === null) return true;
		return !drafts.some((d, k) => d.tool === tool && (d.kit === null || k < i));
	});
}

function chosenOf(
	wanted: readonly Draft[],
	found: readonly Problem[],
	only: readonly string[],
): Entries {
	const problems = [...found, ...twice(wanted)];
	if (only.length === 0 || problems.length > 0) return { wanted, problems };
	const unknown = only.filter((o) => !wanted.some((w) => isMeant(o, w, wanted)));
	const names = [...new Set(wanted.flatMap((w) => [w.tool.id, w.name]))];
	// What is asked for by name is refused where it cannot be made, not left out as of a kit.
	const meant = wanted.filter((w) => only.some((o) => isMeant(o, w, wanted)));
	return {
		wanted: meant.map((w) => ({ ...w, kit: null })),
		problems: unknown.map((given) =>
			problem("only-unknown", [], { given, names, guess: nearest(given, names) }),
		),
	};
}

/**
 * Whether a name of `only` means an entry: by its own name; by its tool's, if no entry has that
 * name; or as the name of one of its parts, which begin with the entry's.
 */
function isMeant(only: string, entry: Draft, all: readonly Draft[]): boolean {
	if (all.some(({ name }) => name === only)) return entry.name === only;
	return entry.tool.id === only || only.startsWith(`${entry.name}-`);
}

function twice(wanted: readonly Draft[]): Problem[] {
	return wanted.flatMap((w, i) =>
		wanted.findIndex((other) => other.name === w.name) === i
			? []
			: [problem("same-name", w.path, { name: w.name })],
	);
}

type EntryRead =
	| { readonly ok: true; readonly drafts: readonly Draft[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** One entry: a tool's or a kit's name, or a map of one such name to its settings. */
function entryOf(entry: unknown, i: number, options: SchemaOptions): EntryRead {
	const known = [...KITS, ...TOOLS].map(({ id }) => id);
	const isMap = typeof entry === "object" && entry !== null && !Array.isArray(entry);
	const keys = isMap ? Object.keys(entry) : [];
	const id = typeof entry === "string" ? entry : keys[0];
	const refuse = (...problems: Problem[]): EntryRead => ({ ok: false, problems });
	if (id === undefined || keys.length > 1) {
		return refuse(problem("make-entry", ["make", i], { given: show(entry) }));
	}
	const path = typeof entry === "string" ? ["make", i] : ["make", i, id];
	const given = isMap ? ((entry as Record<string, unknown>)[id] ?? {}) : {};
	const kit = KITS.find((k) => k.id === id);
	if (kit) return kitEntries(kit, given, path, options);
	const tool = TOOLS.find((t) => t.id === id);
	if (!tool) {
		const facts = { given: id, guess: nearest(id, known), known };
		return refuse(problem("unknown-tool", path, facts));
	}
	return toolEntry(tool, given, path, null, options);
}

/** Every tool of a kit, with settings where the kit's entry has some for it; `without` leaves tools out. */
function kitEntries(
	kit: Kit,
	given: unknown,
	path: readonly (string | number)[],
	options: SchemaOptions,
): EntryRead {
	const schema = kitSchema(kit, options.unit);
	const result = schema.safeParse(given);
	if (!result.success) {
		return { ok: false, problems: shapeProblems(schema, given, result.error.issues, path) };
	}
	const { without, ...settings } = given as { without?: readonly string[] } & Record<
		string,
		unknown
	>;
	const read = toolsOf(kit)
		.filter(({ id }) => !without?.includes(id))
		.map((tool) => {
			const own = settings[tool.id];
			const at = own === undefined ? path : [...path, tool.id];
			return toolEntry(tool, own ?? {}, at, kit.id, options);
		});
	const problems = read.flatMap((r) => (r.ok ? [] : r.problems));
	if (problems.length > 0) return { ok: false, problems };
	return { ok: true, drafts: read.flatMap((r) => (r.ok ? r.drafts : [])) };
}

function toolEntry(
	tool: Tool,
	given: unknown,
	path: readonly (string | number)[],
	kit: string | null,
	options: SchemaOptions,
): EntryRead {
	const schema: z.ZodType = toolSchema(tool, options.unit);
	const result = schema.safeParse(given);
	if (!result.success) {
		return { ok: false, problems: shapeProblems(schema, given, result.error.issues, path) };
	}
	const { name, stock, layers, tabs, ...settings } = result.data as Record<string, unknown> & {
		name?: string;
		stock?: ShopStock;
		layers: number;
		tabs: boolean;
	};
	const called = name ? fileSafe(name) : tool.id;
	const draft = { tool, name: called, settings, stock: stock ?? null, layers, tabs, path, kit };
	return { ok: true, drafts: [draft] };
}
