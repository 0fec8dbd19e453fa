import * as z from "zod";
import type { Tool } from "../tools/index.js";
import { commonSettings, jobSchema } from "./schema.js";
import { unwrapped } from "./schema-walk.js";

/** One key of the job file, read off the schema that checks it. */
export interface Key {
	/** `["neck", "strings", "at-nut"]`; a tool's settings stand alone. */
	readonly path: readonly string[];
	readonly text: string;
	readonly kind: string;
	/** What is allowed, in words. */
	readonly range: string;
	/** The fixed default, how it follows from the neck, or "" for a key that must be given. */
	readonly initial: string;
	readonly required: boolean;
	/** The block that needs it once the block is there; "" elsewhere. */
	readonly neededIn: string;
}

/** Keys of a job file, blocks opened, `make` left out. */
export function jobKeys(): Key[] {
	const { make: _, ...shape } = jobSchema({ unit: "mm", allowUnusual: false }).shape;
	return keysOf(z.strictObject(shape), []);
}

/** Settings of one tool. */
export function toolKeys(tool: Tool): Key[] {
	return keysOf(tool.settings("mm"), []);
}

/** Keys that every tool's entry may hold besides. */
export function commonKeys(): Key[] {
	const common = commonSettings("mm");
	return Object.entries(common).map(([name, field]) => keyOf([name], field, false));
}

/** Blocks whose keys say nothing without the block's name: "across", "margin". */
const NAMED_BLOCKS: readonly string[] = ["printer"];

/**
 * A key as a flag of `camber single`: its path joined by hyphens, without the block unless the
 * flag says nothing without it.
 */
export function flagOf(path: readonly string[]): string {
	const rest = path.length > 1 && !NAMED_BLOCKS.includes(path[0]!) ? path.slice(1) : path;
	return `--${rest.join("-")}`;
}

/** The keys of a block. Within an optional block none is needed. */
function keysOf(schema: z.ZodObject, at: readonly string[], within = false): Key[] {
	return Object.entries(schema.shape).flatMap(([name, field]) => {
		const path = [...at, name];
		const { inner, optional } = unwrapped(field as z.ZodType);
		if (inner instanceof z.ZodObject) return keysOf(inner, path, within || optional);
		return [keyOf(path, field as z.ZodType, within)];
	});
}

function keyOf(path: readonly string[], field: z.ZodType, within: boolean): Key {
	const { initial, optional, meta } = unwrapped(field);
	return {
		path,
		text: (meta.description ?? "").replace(/ \(default: .*\)$/u, ""),
		kind: meta.kind ?? "",
		range: meta.range ?? "",
		initial: meta.derived ?? (initial === undefined ? "" : shown(initial)),
		required: !within && !optional && initial === undefined,
		neededIn: within && !optional && initial === undefined ? (path.at(-2) ?? "") : "",
	};
}

/** A default as a job file writes it: words without quotes. */
function shown(value: unknown): string {
	if (Array.isArray(value)) return `[${value.map(shown).join(", ")}]`;
	return typeof value === "string" ? value : JSON.stringify(value);
}
