import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isPlainName } from "../../src/cli/plain-name.js";
import { fileSafe } from "../../src/job/index.js";

describe("fileSafe", () => {
	it.each([
		["Heron – baritone №2", "heron-baritone-no2"],
		["Ünïcödé", "unicode"],
		["../../etc/passwd", "etc-passwd"],
		["C:\\Users", "c-users"],
		["  a  b  ", "a-b"],
		["½ neck", "1-2-neck"],
		["a.svg", "a-svg"],
		["漢字", ""],
		["***", ""],
		["", ""],
	])("writes %j as %j", (name, plain) => expect(fileSafe(name)).toBe(plain));

	// Microsoft, "Naming Files, Paths, and Namespaces": list from memory.
	it.each(["con", "PRN", "aux", "nul", "com1", "LPT9"])("leaves no device's name: %s", (name) => {
		expect(fileSafe(name)).toBe(`${name.toLowerCase()}-job`);
	});

	it("gives a plain file name or nothing, whatever it is given", () => {
		const name = fc.oneof(
			fc.string({ unit: "binary", maxLength: 30 }),
			fc.string({ maxLength: 200 }),
		);
		fc.assert(
			fc.property(name, (given) => {
				const plain = fileSafe(given);
				expect(plain).toMatch(/^(?:[a-z0-9]+(?:-[a-z0-9]+)*)?$/u);
				expect(plain === "" || isPlainName(plain)).toBe(true);
				expect(plain.length).toBeLessThanOrEqual(64);
				expect(fileSafe(plain)).toBe(plain);
			}),
			{ seed: 5, numRuns: 150 },
		);
	});
});
