import * as z from "zod";

type Keys = readonly (string | number)[];
type Def = Readonly<Record<string, unknown>>;

/** What a field tells about itself beside its checks. */
export type Meta = {
	readonly [key in "description" | "derived" | "kind" | "range"]?: string | undefined;
};

function defOf(schema: z.ZodType): Def {
	return (schema as unknown as { def: Def }).def;
}

/** A field without its optional and default wrappings; the outermost text counts. */
export function unwrapped(field: z.ZodType) {
	let inner = field;
	let meta: Meta = field.meta() ?? {};
	let initial: unknown;
	let optional = false;
	for (;;) {
		const def = defOf(inner);
		if (def.type === "optional") optional = true;
		else if (def.type === "default" || def.type === "prefault") initial = def.defaultValue;
		else break;
		inner = def.innerType as z.ZodType;
		meta = { ...inner.meta(), ...meta };
	}
	return { inner, meta, initial, optional };
}

/** The fields that may stand at a path; several within alternatives. */
function fieldsAt(schema: z.ZodType, path: Keys): z.ZodType[] {
	const [step, ...rest] = path;
	if (step === undefined) return [schema];
	return plain(schema).flatMap((s) => stepInto(s, step).flatMap((inner) => fieldsAt(inner, rest)));
}

/** Maps, lists and values within optional, default, transformed and alternative schemas. */
function plain(schema: z.ZodType): z.ZodType[] {
	const def = defOf(schema);
	const inner = [def.innerType, def.in, ...((def.options as unknown[]) ?? [])].filter(Boolean);
	return inner.length === 0 ? [schema] : inner.flatMap((s) => plain(s as z.ZodType));
}

function stepInto(schema: z.ZodType, step: string | number): z.ZodType[] {
	if (schema instanceof z.ZodObject) {
		const { shape } = schema;
		return Object.hasOwn(shape, step) ? [shape[step] as z.ZodType] : [];
	}
	const { element, valueType } = defOf(schema);
	return [element, valueType].filter(Boolean) as z.ZodType[];
}

/** The keys that a schema knows at a path. */
export function keysAt(schema: z.ZodType, path: Keys): string[] {
	const objects = fieldsAt(schema, path).flatMap(plain);
	return objects.flatMap((s) => (s instanceof z.ZodObject ? Object.keys(s.shape) : []));
}

/** What the field at a path says of itself; "" if the schema does not say. */
export function metaAt(schema: z.ZodType, path: Keys, what: "kind" | "range"): string {
	const said = fieldsAt(schema, path).map((field) => unwrapped(field).meta[what] ?? "");
	return said.find((text) => text !== "") ?? "";
}
