import { z } from "zod";
import { TOOLS, type Tool } from "../tools/index.js";
import { jobSchema, toolSchema } from "./schema.js";

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
}

type Meta = { readonly [key in "description" | "derived" | "kind" | "range"]?: string | undefined };

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
	const { name, stock } = toolSchema(TOOLS[0]!, "mm").shape;
	return [
		...keysOf(z.strictObject({ name }), []),
		...keysOf(z.strictObject({ stock: stock.meta({}) }), []).filter(
			({ path }) => path.length === 1,
		),
	];
}

/** A key as a flag of `camber single`: its path without the block, joined by hyphens. */
export function flagOf(path: readonly string[]): string {
	const rest = path.length > 1 ? path.slice(1) : path;
	return `--${rest.join("-")}`;
}

function keysOf(schema: z.ZodObject, at: readonly string[]): Key[] {
	return Object.entries(schema.shape).flatMap(([name, field]) => {
		const path = [...at, name];
		const { inner, initial, optional, meta } = unwrapped(field as z.ZodType);
		if (inner instanceof z.ZodObject) return keysOf(inner, path);
		return [
			{
				path,
				text: (meta.description ?? "").replace(/ \(default: .*\)$/u, ""),
				kind: meta.kind ?? "",
				range: meta.range ?? "",
				initial: meta.derived ?? (initial === undefined ? "" : shown(initial)),
				required: !optional && initial === undefined,
			},
		];
	});
}

function shown(value: unknown): string {
	return typeof value === "string" ? value : JSON.stringify(value);
}

/** A field without its optional and default wrappings; the outermost text counts. */
function unwrapped(field: z.ZodType) {
	let inner = field;
	let meta: Meta = field.meta() ?? {};
	let initial: unknown;
	let optional = false;
	for (;;) {
		const { def } = inner as unknown as { def: Record<string, unknown> };
		if (def.type === "optional") optional = true;
		else if (def.type === "default" || def.type === "prefault") initial = def.defaultValue;
		else break;
		inner = def.innerType as z.ZodType;
		meta = { ...inner.meta(), ...meta };
	}
	return { inner, meta, initial, optional };
}
