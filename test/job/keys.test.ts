import { describe, expect, it } from "vitest";
import { commonKeys, flagOf, jobKeys, toolKeys } from "../../src/job/keys.js";
import { TOOLS } from "../../src/tools/index.js";

const all = [...jobKeys(), ...commonKeys(), ...TOOLS.flatMap(toolKeys)];

describe("the keys of a job", () => {
	it("say what they are and what is allowed, each of them", () => {
		for (const key of all) {
			const name = key.path.join(".");
			expect(key.text, name).not.toBe("");
			expect(key.range, name).not.toBe("");
			expect(key.kind, name).not.toBe("");
			expect(key.range, name).not.toMatch(/undefined|\bany\b/u);
		}
	});

	it("are these where a job must have them", () => {
		const needed = jobKeys().filter(({ required }) => required);
		expect(needed.map(({ path }) => path.join("."))).toEqual([
			"format",
			"job",
			"neck.frets",
			"wire.crown-width",
			"wire.crown-height",
			"wire.tang-width",
			"wire.tang-depth",
			"stock.material",
			"stock.thickness",
		]);
		const owed = jobKeys().filter(({ initial }) => initial.startsWith("needed, or readings."));
		const readable = ["neck.scale", "neck.radius", "neck.width"];
		expect(owed.map(({ path }) => path.join("."))).toEqual(readable);
		expect([...commonKeys(), ...TOOLS.flatMap(toolKeys)].filter((k) => k.required)).toEqual([]);
	});

	it("show their defaults as a job file writes them", () => {
		const initial = (path: string) => all.find((k) => k.path.join(".") === path)?.initial;
		expect(initial("machine.tolerance")).toBe("0.05 mm; 0.3 mm on paper, cut by hand");
		expect(initial("neck.division")).toBe("12");
		expect(initial("neck.markers")).toBe("[]");
		expect(initial("faces")).toBe("[concave]");
		expect(initial("gauge-width")).toContain("greatest width");
		expect(initial("date")).toBe("");
	});

	it("open every block and no setting of a tool", () => {
		const paths = jobKeys().map(({ path }) => path.join("."));
		expect(paths).toContain("neck.strings.at-nut");
		expect(paths).toContain("machine.pens.cut.colour");
		expect(paths).not.toContain("neck.strings");
		expect(paths.filter((p) => p.startsWith("make"))).toEqual([]);
		expect(TOOLS.flatMap(toolKeys).every(({ path }) => path.length === 1)).toBe(true);
		expect(commonKeys().map(({ path }) => path)).toEqual([
			["name"],
			["stock"],
			["layers"],
			["tabs"],
		]);
	});
});

describe("flagOf", () => {
	it("leaves the block out and joins the rest", () => {
		expect(flagOf(["neck", "strings", "at-nut"])).toBe("--strings-at-nut");
		expect(flagOf(["job"])).toBe("--job");
	});

	it("gives every key of a job and every setting of a tool a flag of its own", () => {
		for (const tool of TOOLS) {
			const flags = [...jobKeys(), ...toolKeys(tool), ...commonKeys()].map(({ path }) =>
				flagOf(path),
			);
			const make = [
				"--out",
				"--format",
				"--dxf",
				"--dimensions",
				"--no-dimensions",
				"--force",
				"--only",
			];
			const own = ["--allow-unusual", "--json", "--help", "--debug", "--version"];
			// format is the job file's own and has no flag.
			const used = [...flags.filter((f) => f !== "--format"), ...make, ...own];
			expect(used.filter((flag, i) => used.indexOf(flag) < i)).toEqual([]);
		}
	});
});
