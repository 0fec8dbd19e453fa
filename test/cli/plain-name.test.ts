import { describe, expect, it } from "vitest";
import { isPlainName, requirePlainNames } from "../../src/cli/plain-name.js";

describe("isPlainName", () => {
	it.each([
		"a",
		"radius-gauge.svg",
		"Slot_Strip.2.dxf",
		"-a",
		"_",
		"console.svg",
		"com.svg",
		"lpt10",
	])("takes %j", (name) => expect(isPlainName(name)).toBe(true));

	it.each([
		"",
		".",
		"..",
		".a",
		"a.",
		"a/b",
		"../a",
		"/a",
		"a\\b",
		"C:a",
		"a b",
		"a\n",
		"é",
		"a\0",
	])("refuses %j", (name) => expect(isPlainName(name)).toBe(false));

	// Microsoft, "Naming Files, Paths, and Namespaces": list from memory.
	it.each([
		"CON",
		"con.svg",
		"Prn",
		"aux.tar.gz",
		"NUL",
		"nul.txt",
		"COM1",
		"com9.dxf",
		"LPT1.svg",
	])("refuses the Windows device %s", (name) => expect(isPlainName(name)).toBe(false));

	it("takes 150 characters and refuses 151", () => {
		expect(isPlainName("a".repeat(150))).toBe(true);
		expect(isPlainName("a".repeat(151))).toBe(false);
	});

	it("takes, of all UTF-16 code units, 65 characters", () => {
		// 26 + 26 letters, 10 digits, dot, hyphen, underscore.
		let taken = "";
		for (let unit = 0; unit <= 0xffff; unit += 1) {
			const character = String.fromCharCode(unit);
			if (isPlainName(`a${character}b`)) taken += character;
		}
		expect(taken).toBe("-.0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz");
		expect(taken).toHaveLength(65);
	});
});

describe("requirePlainNames", () => {
	it("takes distinct names", () => {
		expect(() => requirePlainNames(["a.svg", "a.dxf", "b.svg"])).not.toThrow();
	});

	it("throws where two names differ in case alone", () => {
		expect(() => requirePlainNames(["Gauge.svg", "x", "gauge.SVG"])).toThrow(
			new RangeError("file name used twice: gauge.SVG"),
		);
	});

	it("throws where a name is not plain", () => {
		expect(() => requirePlainNames(["a", "../b"])).toThrow(
			new RangeError('not a plain file name: "../b"'),
		);
	});
});
