import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isWorded } from "../../src/problem/index.js";
import { findingNumber, numberedCodes } from "../../src/proof/numbers.js";

describe("the numbers of findings", () => {
	it("are each given once, to codes that have words", () => {
		const numbers = numberedCodes().map(findingNumber);
		expect(new Set(numbers).size).toBe(numbers.length);
		expect(numberedCodes().filter((code) => !isWorded(code))).toEqual([]);
		expect(findingNumber("toString")).toBeNull();
	});

	it("are given to every finding that the proof raises", () => {
		const sources = readdirSync("src/proof")
			.filter((name) => name !== "numbers.ts")
			.map((name) => readFileSync(`src/proof/${name}`, "utf8"));
		const raised = sources.flatMap((text) =>
			[...text.matchAll(/(?:problem|finding|fault|note|warn|add|tell)\w*\(\s*"([a-z-]+)"/gu)].map(
				(m) => m[1]!,
			),
		);
		const codes = [...new Set(raised)].filter(isWorded);
		expect(codes.length).toBeGreaterThan(15);
		expect(codes.filter((c) => findingNumber(c) === null)).toEqual(["manifest-unreadable"]);
	});
});
