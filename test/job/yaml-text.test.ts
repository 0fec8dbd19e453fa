import { describe, expect, it } from "vitest";
import { parseJobText } from "../../src/job/yaml-text.js";

function contentOf(text: string): unknown {
	const parsed = parseJobText(text);
	return Array.isArray(parsed) ? parsed.map((p) => p.code) : parsed.value;
}

describe("parseJobText", () => {
	// YAML 1.2.2, chapter 10.3.2 (core schema): yes and no are words, 0o14 is 12, 0x10 is 16.
	it.each([
		["a: yes", { a: "yes" }],
		["a: True", { a: true }],
		["a: 0o14", { a: 12 }],
		["a: 014", { a: 14 }],
		["a: 0x10", { a: 16 }],
		["a: 1_000", { a: "1_000" }],
		["a: 2026-03-01", { a: "2026-03-01" }],
		["a: 25:30", { a: "25:30" }],
		["a: ~", { a: null }],
		["a: '1'", { a: "1" }],
		["<<: {a: 1}", { "<<": { a: 1 } }],
	])("reads %j by YAML 1.2", (text, value) => expect(contentOf(text)).toEqual(value));

	it.each([
		["a byte order mark", "\ufeffa: 1"],
		["Windows line ends", "a: 1\r\n"],
		["a document mark", "---\na: 1\n...\n"],
		["comments with any brackets", `# ${"[{".repeat(600)}\na: 1 # ${"[".repeat(600)}`],
		["the same in quotes", `a: 1\nb: "${"[".repeat(30)}"`],
	])("takes %s", (_, text) => expect(contentOf(text)).toMatchObject({ a: 1 }));

	it("takes twenty levels and refuses twenty-one", () => {
		expect(contentOf(`a: ${"[".repeat(19)}${"]".repeat(19)}`)).not.toEqual(["too-deep"]);
		expect(contentOf(`a: ${"[".repeat(20)}${"]".repeat(20)}`)).toEqual(["too-deep"]);
	});

	it("takes a million characters and refuses one more", () => {
		const text = (size: number) => `a: 1 #${"x".repeat(size - 6)}`;
		expect(contentOf(text(1_000_000))).toEqual({ a: 1 });
		expect(contentOf(text(1_000_001))).toEqual(["text-too-large"]);
	});

	it("does not let aliases multiply", () => {
		const lines = Array.from(
			{ length: 30 },
			(_, i) => `k${i}: &k${i} [${i === 0 ? "x" : `*k${i - 1}, *k${i - 1}`}]`,
		);
		expect(new Set(contentOf(lines.join("\n")) as string[])).toEqual(new Set(["yaml-alias"]));
	});

	it("tells every inch mark and every key that stands twice", () => {
		const places = (text: string) => {
			const parsed = parseJobText(text);
			return Array.isArray(parsed) && parsed.map((p) => [p.code, p.where.line]);
		};
		expect(places('a: "1/2""\nb: 1\nc: "3""\n')).toEqual([
			["inch-in-quotes", 1],
			["inch-in-quotes", 3],
		]);
		expect(places("a: 1\nb: 1\na: 2\nb: 2\n")).toEqual([
			["duplicate-key", 3],
			["duplicate-key", 4],
		]);
	});

	it("gives own keys only, whatever they are called", () => {
		const parsed = contentOf("__proto__: {polluted: yes}\nconstructor: 1\n") as object;
		expect(Object.keys(parsed)).toEqual(["__proto__", "constructor"]);
		expect(({} as { polluted?: string }).polluted).toBeUndefined();
	});
});
