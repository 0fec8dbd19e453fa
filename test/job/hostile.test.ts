import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { readJob } from "../../src/job/index.js";
import { placeText, problemText } from "../../src/problem/index.js";
import { JOB } from "../support/job-text.js";

type Tree = Record<string, unknown> | unknown[];

const ANY = fc.oneof(
	{ maxDepth: 3 },
	fc.constantFrom<unknown>(
		null,
		true,
		0,
		-1,
		1e300,
		Number.NaN,
		Number.POSITIVE_INFINITY,
		"",
		"nut",
		"25.5 in",
		"1/0 in",
		"flat",
		[],
		{},
		[{}],
		{ nut: 43 },
		{ "": 1 },
		"__proto__",
		"\u0000",
		"漢字",
	),
	fc.string({ unit: "binary", maxLength: 12 }),
	fc.double(),
	fc.dictionary(fc.string({ maxLength: 8 }), fc.integer(), { maxKeys: 3 }),
	fc.array(fc.oneof(fc.integer(), fc.string({ maxLength: 5 })), { maxLength: 4 }),
);

/** Paths of everything in a tree, also of keys that it does not have. */
function pathsIn(tree: unknown, at: (string | number)[] = []): (string | number)[][] {
	if (typeof tree !== "object" || tree === null) return [at];
	const inner = Object.entries(tree).flatMap(([key, value]) =>
		pathsIn(value, [...at, Array.isArray(tree) ? Number(key) : key]),
	);
	return [at, [...at, "more"], ...inner];
}

function withValue(tree: Tree, path: readonly (string | number)[], value: unknown): unknown {
	const [key, ...rest] = path;
	if (key === undefined) return value;
	const copy = (Array.isArray(tree) ? [...tree] : { ...tree }) as Record<string | number, unknown>;
	copy[key] = withValue((copy[key] ?? {}) as Tree, rest, value);
	return copy;
}

const TREE = {
	...parse(JOB),
	machine: { kind: "laser", pens: { cut: { colour: "#0b7a75" } } },
	shop: { "temperature-swing": "10 K" },
	make: [
		{ "notched-straightedge": { along: "centre", "second-edge": { scale: 640, frets: 20 } } },
		{ "radius-gauge": { at: ["nut", 7], stock: { material: "steel", thickness: 1 } } },
		{ "slot-strip": { slots: "tang", name: "strip" } },
	],
} as Tree;

describe("a hostile job", () => {
	it("is read or refused in words, with a place in its text, and never throws", () => {
		const change = fc.tuple(fc.constantFrom(...pathsIn(TREE)), ANY);
		let refused = 0;
		fc.assert(
			fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
				const text = stringify(
					changes.reduce<unknown>(
						(tree, [path, value]) => withValue(tree as Tree, path, value),
						TREE,
					),
				);
				const read = readJob(text);
				if (read.ok) return;
				refused++;
				const lines = text.split("\n");
				for (const p of read.problems) {
					expect(problemText(p)).not.toMatch(/undefined|\[object/u);
					expect(placeText(p, "f")).toMatch(/^f/u);
					const { line, column } = p.where;
					if (line === undefined) expect(["empty-job", "too-deep"]).toContain(p.code);
					else expect(column).toBeLessThanOrEqual(lines[line - 1]!.length + 1);
				}
			}),
			{ seed: 6, numRuns: 150 },
		);
		expect(refused).toBeGreaterThan(90);
	});

	it("may be any text at all", () => {
		const text = fc.oneof(
			fc.string({ unit: "binary", maxLength: 200 }),
			fc
				.array(fc.constantFrom(..."abc:-[]{}&*!|>'\"%@#\n\t ,?0.~".split("")), { maxLength: 80 })
				.map((c) => c.join("")),
			fc
				.tuple(fc.nat(JOB.length), fc.nat(JOB.length))
				.map(([a, b]) => JOB.slice(0, a) + JOB.slice(b)),
		);
		fc.assert(
			fc.property(text, (given) => {
				const read = readJob(given);
				if (!read.ok)
					for (const p of read.problems) expect(problemText(p)).not.toMatch(/undefined/u);
			}),
			{ seed: 7, numRuns: 250 },
		);
	});
});
