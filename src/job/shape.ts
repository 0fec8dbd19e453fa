import { z } from "zod";
import { type Fact, type Problem, problem } from "../problem/index.js";
import { nearest } from "./nearest.js";

type Keys = readonly (string | number)[];
type Issue = z.core.$ZodIssue;

/**
 * Problems of a value's shape, all of them, from what zod found.
 *
 * @param schema - read for the keys it knows
 * @param value - what was checked: messages quote it
 * @param at - path of the value within the job
 */
export function shapeProblems(
	schema: z.ZodType,
	value: unknown,
	issues: readonly Issue[],
	at: Keys,
): Problem[] {
	return issues.flatMap((issue) => fromIssue(schema, value, issue, at));
}

function fromIssue(schema: z.ZodType, value: unknown, issue: Issue, at: Keys): Problem[] {
	const path = issue.path as Keys;
	const where = [...at, ...path];
	const given = valueAt(value, path);
	switch (issue.code) {
		case "unrecognized_keys":
			return issue.keys.map((key) => unknownKey(schema, given, path, key, [...where, key]));
		case "invalid_union":
			return unionProblems(schema, value, issue, at);
		case "invalid_type":
			return [typeProblem(given, issue.expected, where)];
		case "invalid_value": {
			const allowed = issue.values.map(String);
			if (given === undefined) return [problem("missing", where, { allowed: allowed.join(", ") })];
			const guess = nearest(String(given), allowed);
			return [
				problem("not-one-of", where, { given: show(given), allowed: allowed.join(", "), guess }),
			];
		}
		case "too_small":
		case "too_big":
			return [problem("list-size", where, { given: show(given), limit: sizeOf(issue) })];
		case "custom": {
			const { code, facts } = issue.params as { code: string; facts: Record<string, Fact> };
			return [problem(code, where, facts)];
		}
		default:
			return [problem("wrong-kind", where, { given: show(given), expected: "another form" })];
	}
}

function sizeOf(issue: Issue): string {
	if (issue.code === "too_small") return `at least ${issue.minimum}`;
	return issue.code === "too_big" ? `at most ${issue.maximum}` : "";
}

function typeProblem(given: unknown, expected: string, where: Keys): Problem {
	if (given === undefined) return problem("missing", where, { allowed: "" });
	return problem("wrong-kind", where, { given: show(given), expected: kindWord(expected) });
}

const KIND_WORDS: Readonly<Record<string, string>> = {
	object: "a map (key: value)",
	record: "a map (key: value)",
	array: "a list ([a, b, c])",
	string: "a text",
	number: "a number",
	int: "a whole number",
	boolean: "true or false",
};

function kindWord(expected: string): string {
	return KIND_WORDS[expected] ?? expected;
}

/**
 * Of the alternatives the one whose kind of node was given speaks; if none fits, all are named.
 */
function unionProblems(
	schema: z.ZodType,
	value: unknown,
	issue: Extract<Issue, { code: "invalid_union" }>,
	at: Keys,
): Problem[] {
	const path = issue.path as Keys;
	const given = valueAt(value, path);
	if (given === undefined) return [problem("missing", [...at, ...path], { allowed: "" })];
	const branches = issue.errors.filter(
		(errors) => !errors.some((e) => e.path.length === 0 && isMismatch(e, given)),
	);
	const branch = branches[0];
	if (!branch) {
		const expected = [...new Set(issue.errors.flat().map(expectedOf).filter(Boolean))];
		return [
			problem("wrong-kind", [...at, ...path], {
				given: show(given),
				expected: expected.join(" or "),
			}),
		];
	}
	return branch.flatMap((inner) =>
		fromIssue(schema, value, { ...inner, path: [...path, ...inner.path] } as Issue, at),
	);
}

function isMismatch(issue: Issue, given: unknown): boolean {
	if (issue.code === "invalid_type" || issue.code === "invalid_value") return true;
	if (issue.code !== "invalid_union") return false;
	return issue.errors.every((errors) =>
		errors.some((e) => e.path.length === 0 && isMismatch(e, given)),
	);
}

function expectedOf(issue: Issue): string {
	if (issue.code === "invalid_type") return kindWord(issue.expected);
	if (issue.code === "invalid_value") return issue.values.map(String).join(", ");
	if (issue.code !== "invalid_union") return "";
	return [...new Set(issue.errors.flat().map(expectedOf))].filter(Boolean).join(" or ");
}

function unknownKey(
	schema: z.ZodType,
	map: unknown,
	path: Keys,
	key: string,
	where: Keys,
): Problem {
	const value = (map as Record<string, unknown> | undefined)?.[key];
	if (/^\d/u.test(key) && (value === null || value === undefined)) {
		return problem("decimal-comma-key", where, { key });
	}
	const known = keysAt(schema, path);
	return problem("unknown-key", where, { key, guess: nearest(key, known), known });
}

/** The keys that a schema knows at a path. */
function keysAt(schema: z.ZodType, path: Keys): string[] {
	const shapes = shapesOf(schema);
	const [step, ...rest] = path;
	if (step === undefined) return shapes.flatMap((shape) => Object.keys(shape));
	return shapes.flatMap((shape) => {
		const inner = shape[String(step)];
		return inner ? keysAt(inner as z.ZodType, rest) : [];
	});
}

/** Object shapes within optional, default, transformed and alternative schemas. */
function shapesOf(schema: z.ZodType): Readonly<Record<string, unknown>>[] {
	if (schema instanceof z.ZodObject) return [schema.shape];
	const { def } = schema as unknown as { def: Record<string, unknown> };
	const inner = [def.innerType, def.in, ...((def.options as unknown[]) ?? [])];
	return inner.filter(Boolean).flatMap((s) => shapesOf(s as z.ZodType));
}

function valueAt(value: unknown, path: Keys): unknown {
	return path.reduce<unknown>(
		(at, key) => (at as Record<string | number, unknown> | null | undefined)?.[key],
		value,
	);
}

/** A given value as a message quotes it, cut short. */
export function show(value: unknown): string {
	if (value === null) return "nothing";
	const text = typeof value === "string" ? value : (JSON.stringify(value) ?? String(value));
	return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
