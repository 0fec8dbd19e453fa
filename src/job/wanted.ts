import type * as z from "zod";
import { type Problem, problem } from "../problem/index.js";
import { type ShopStock, TOOLS, type Tool } from "../tools/index.js";
import { fileSafe } from "./file-safe.js";
import { nearest } from "./nearest.js";
import type { SchemaOptions } from "./neck-schema.js";
import { toolSchema } from "./schema.js";
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
		if (Array.isArray(read)) problems.push(...read);
		else wanted.push(read);
	});
	problems.push(...twice(wanted));
	if (only.length === 0 || problems.length > 0) return { wanted, problems };
	const unknown = only.filter((o) => !wanted.some((w) => isMeant(o, w, wanted)));
	const names = [...new Set(wanted.flatMap((w) => [w.tool.id, w.name]))];
	return {
		wanted: wanted.filter((w) => only.some((o) => isMeant(o, w, wanted))),
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

/** One entry: a tool's name, or a map of one tool's name to its settings. */
function entryOf(entry: unknown, i: number, options: SchemaOptions): Draft | Problem[] {
	const known = TOOLS.map((t) => t.id);
	const isMap = typeof entry === "object" && entry !== null && !Array.isArray(entry);
	const keys = isMap ? Object.keys(entry) : [];
	const id = typeof entry === "string" ? entry : keys[0];
	if (id === undefined || keys.length > 1) {
		return [problem("make-entry", ["make", i], { given: show(entry) })];
	}
	const path = typeof entry === "string" ? ["make", i] : ["make", i, id];
	const tool = TOOLS.find((t) => t.id === id);
	if (!tool) {
		const facts = { given: id, guess: nearest(id, known), known };
		return [problem("unknown-tool", path, facts)];
	}
	const given = isMap ? ((entry as Record<string, unknown>)[id] ?? {}) : {};
	const schema: z.ZodType = toolSchema(tool, options.unit);
	const result = schema.safeParse(given);
	if (!result.success) return shapeProblems(schema, given, result.error.issues, path);
	const { name, stock, layers, tabs, ...settings } = result.data as Record<string, unknown> & {
		name?: string;
		stock?: ShopStock;
		layers: number;
		tabs: boolean;
	};
	const called = name ? fileSafe(name) : tool.id;
	return { tool, name: called, settings, stock: stock ?? null, layers, tabs, path };
}
