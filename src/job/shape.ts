import type * as z from "zod";
import { type Fact, type Problem, problem } from "../problem/index.js";
import { nearest } from "./nearest.js";
import { keysAt, metaAt } from "./schema-walk.js";

type Keys = readonly (string | number)[];
type Issue = z.core.$ZodIssue;

/** What was checked, and where it stands in the job. */
interface Checked {
	readonly schema: z.ZodType;
	readonly value: unknown;
	readonly at: Keys;
}

/**
 * Problems of a value's shape, all of them, from what zod found.
 *
 * @param schema - read for the keys and ranges it knows
 * @param value - what was checked: messages quote it
 * @param at - path of the value within the job
 */
export function shapeProblems(
	schema: z.ZodType,
	value: unknown,
	issues: readonly Issue[],
	at: Keys,
): Problem[] {
	return issues.flatMap((issue) => fromIssue({ schema, value, at }, issue));
}

function fromIssue(checked: Checked, issue: Issue): Problem[] {
	const path = issue.path as Keys;
	const where = [...checked.at, ...path];
	const given = valueAt(checked.value, path);
	if (issue.code === "custom") {
		const { code, facts } = issue.params as { code: string; facts: Record<string, Fact> };
		return [problem(code, where, facts)];
	}
	if (issue.code === "unrecognized_keys") {
		return issue.keys.map((key) => unknownKey(checked, path, key));
	}
	if (given === undefined || given === null) return [absent(checked, path, given)];
	switch (issue.code) {
		case "invalid_union":
			return unionProblems(checked, issue);
		case "invalid_value":
			return [notOneOf(checked, path, issue.values.map(String))];
		case "too_small":
		case "too_big":
			return Array.isArray(given) ? [listSize(given, issue, where)] : [];
		case "invalid_type":
			return [wrongKind(checked, path, kindWord(issue.expected))];
		default:
			return [wrongKind(checked, path, "another value")];
	}
}

/** A key that is missing or has nothing behind it. */
function absent(checked: Checked, path: Keys, given: undefined | null): Problem {
	const where = [...checked.at, ...path];
	const key = where.at(-1);
	if (typeof key === "string" && given === null && /^\d/u.test(key)) {
		return problem("decimal-comma-key", where, { key });
	}
	const name = typeof key === "number" ? `entry ${key + 1}` : `"${key ?? ""}"`;
	const allowed = metaAt(checked.schema, path, "range");
	return problem(given === null ? "no-value" : "missing", where, { key: name, allowed });
}

function notOneOf(checked: Checked, path: Keys, words: readonly string[]): Problem {
	const given = valueAt(checked.value, path);
	const allowed = metaAt(checked.schema, path, "range") || words.join(", ");
	const guess = typeof given === "string" && !words.includes(given) ? nearest(given, words) : "";
	return problem("not-one-of", [...checked.at, ...path], { given: show(given), allowed, guess });
}

function listSize(
	given: readonly unknown[],
	issue: Extract<Issue, { code: "too_small" | "too_big" }>,
	where: Keys,
): Problem {
	const entries = (n: number | bigint) => (Number(n) === 1 ? "1 entry" : `${n} entries`);
	const limit =
		issue.code === "too_small"
			? `at least ${entries(issue.minimum)}`
			: `at most ${entries(issue.maximum)}`;
	return problem("list-size", where, { size: given.length, limit });
}

function wrongKind(checked: Checked, path: Keys, expected: string): Problem {
	const where = [...checked.at, ...path];
	const given = valueAt(checked.value, path);
	if (where.length === 0) return problem("not-a-job", where, { given: show(given) });
	if (typeof given === "number" && !Number.isFinite(given)) {
		return problem("not-finite", where, { given: show(given) });
	}
	const kind = metaAt(checked.schema, path, "kind");
	const range = metaAt(checked.schema, path, "range");
	const facts = { given: show(given), expected: KINDS[kind] ?? expected };
	return problem("wrong-kind", where, { ...facts, allowed: range === facts.expected ? "" : range });
}

/** Kinds of field that say more than the kind of node does. */
const KINDS: Readonly<Record<string, string>> = {
	length: "a length",
	"length or map": "a length or a map {key: value}",
	text: "a text",
	station: "a station",
	count: "a whole number",
	division: "a division",
};

const KIND_WORDS: Readonly<Record<string, string>> = {
	object: "a map {key: value}",
	record: "a map {key: value}",
	array: "a list [a, b]",
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
	checked: Checked,
	issue: Extract<Issue, { code: "invalid_union" }>,
): Problem[] {
	const path = issue.path as Keys;
	const given = valueAt(checked.value, path);
	const branch = issue.errors.find(
		(errors) => !errors.some((e) => e.path.length === 0 && isMismatch(e)),
	);
	if (branch) {
		return branch.flatMap((inner) =>
			fromIssue(checked, { ...inner, path: [...path, ...inner.path] } as Issue),
		);
	}
	const words = issue.errors.flat().flatMap(wordsOf);
	if (typeof given === "string" && words.length > 0) return [notOneOf(checked, path, words)];
	const expected = [...new Set(issue.errors.flat().flatMap(expectedOf))];
	return [wrongKind(checked, path, expected.join(" or "))];
}

function isMismatch(issue: Issue): boolean {
	if (issue.code === "invalid_type" || issue.code === "invalid_value") return true;
	if (issue.code !== "invalid_union") return false;
	return issue.errors.every((errors) => errors.some((e) => e.path.length === 0 && isMismatch(e)));
}

/** Words that an alternative would have taken. */
function wordsOf(issue: Issue): string[] {
	return issue.code === "invalid_value" ? issue.values.map(String) : [];
}

/** Kinds of node that an alternative would have taken. */
function expectedOf(issue: Issue): string[] {
	if (issue.code === "invalid_type") return [kindWord(issue.expected)];
	if (issue.code === "invalid_union") return issue.errors.flat().flatMap(expectedOf);
	return wordsOf(issue);
}

function unknownKey({ schema, value, at }: Checked, path: Keys, key: string): Problem {
	const where = [...at, ...path, key];
	const map = valueAt(value, path) as Record<string, unknown> | undefined;
	if (/^\d/u.test(key) && (map?.[key] ?? null) === null) {
		return problem("decimal-comma-key", where, { key });
	}
	const known = keysAt(schema, path);
	return problem("unknown-key", where, { key, guess: nearest(key, known), known });
}

function valueAt(value: unknown, path: Keys): unknown {
	return path.reduce<unknown>(
		(at, key) => (at as Record<string | number, unknown> | null | undefined)?.[key],
		value,
	);
}

/** A given value as a message quotes it. */
export function show(value: unknown): string {
	if (value === null || value === undefined) return "nothing";
	if (typeof value === "string") return `"${value}"`;
	if (typeof value !== "number") return JSON.stringify(value);
	if (Number.isNaN(value)) return ".nan";
	return String(value).replace("Infinity", ".inf");
}
