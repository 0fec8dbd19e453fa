import { describe, expect, it } from "vitest";
import { proofJson, proofText } from "../../src/cli/proof-table.js";
import type { LabelClaim, SizeClaim } from "../../src/drawing/index.js";
import type { Problem } from "../../src/problem/index.js";
import { judged, type Measured, type Proven } from "../../src/proof/index.js";

const DEGREE = Math.PI / 180;

function size(id: string, nominal: number, kind: SizeClaim["kind"] = "width"): SizeClaim {
	return {
		id,
		kind,
		feature: id.replace(/-/gu, " "),
		datum: "theoretical nut",
		operation: "cut",
		axis: "x",
		at: [{ x: 0, y: 0 }],
		nominal,
		bench: 0.05,
		file: 0.001,
	};
}

const LABEL: LabelClaim = {
	id: "label-scale",
	kind: "label",
	feature: "label scale",
	datum: "part",
	operation: "engrave",
	text: "25 1/2 in, 22 frets",
	at: [{ x: 0, y: 0 }],
	height: 3.5,
	turn: 0,
	font: "readability",
	nominal: 3.5,
	bench: 0.5,
	file: 0.001,
};

const FILE = "neck-bar.svg";

/** A claim as a file keeps it, off by `deviation`. */
function measured(claim: Measured["claim"], deviation: number, tolerance = 0.001): Measured {
	const value = claim.nominal + deviation;
	return { file: FILE, part: "bar", claim, value, deviation, tolerance };
}

/** A file with its findings, as measuring and judging leaves it. */
function provenFile(all: readonly Measured[], more: readonly Problem[] = [], file = FILE): Proven {
	const own = all.map((m) => ({ ...m, file }));
	return { file, measured: own, findings: [...judged(own), ...more] };
}

function other(code: string, severity: Problem["severity"], facts: Problem["facts"] = {}): Problem {
	return { code, severity, where: { path: [] }, facts };
}

const GOOD = [
	measured(size("notch-1", 37.3327), 0.0002),
	measured(size("notch-2", 72.5701), -0.0004),
	measured(size("slant", 12 * DEGREE, "angle"), 0.0009 * DEGREE, 0.002 * DEGREE),
	measured(LABEL, 0.0009),
];
const UNFIT = other("nothing-drawn", "error");
const FONT = { file: FILE, part: "bar", font: "own", count: 3 };
const HINT = other("file-changed", "note", { file: FILE });

function linesOf(proven: readonly Proven[], all = false): string[] {
	const text = proofText(proven, { all });
	expect(text.endsWith("\n")).toBe(true);
	return text.slice(0, -1).split("\n");
}

describe("proofText", () => {
	it("is one line if all is well; only lengths count as the largest deviation", () => {
		const two = [provenFile(GOOD), provenFile(GOOD, [], "neck-bar.dxf")];
		expect(linesOf(two)).toEqual(["8 claims measured in 2 files, largest deviation 0.0004 mm"]);
	});

	it("says that a deviation is there although it rounds to nothing", () => {
		const [line] = linesOf([provenFile([measured(size("a", 10), 3e-5)])]);
		expect(line).toBe("1 claim measured in 1 file, largest deviation under 0.0001 mm");
	});

	it("names no deviation where no length was measured", () => {
		expect(linesOf([provenFile([measured(LABEL, 0)])])).toEqual(["1 claim measured in 1 file"]);
	});

	it("tells notes too, and counts them in the line", () => {
		const lines = linesOf([provenFile(GOOD, [HINT])]);
		expect(lines[0]).toBe(FILE);
		expect(lines[1]).toMatch(/^ {2}note 141: neck-bar\.svg is no longer/u);
		expect(lines.at(-1)).toMatch(/largest deviation 0\.0004 mm; 1 note$/u);
	});

	it("tells a failing claim with its figures, and what it came to", () => {
		const lines = linesOf([provenFile([...GOOD, measured(size("notch-3", 105.8297), 0.0123)])]);
		expect(lines.map((l) => l.trim().split(/ {2,}/u))).toEqual([
			["file", "part", "claim", "nominal", "measured", "deviation", "tolerance"],
			[FILE, "bar", "notch-3", "105.8297", "105.8420", "0.0123", "0.0010"],
			["5 claims measured in 1 file, largest deviation 0.0123 mm; 1 error"],
		]);
	});

	it("tells angles in degrees", () => {
		const slant = measured(size("slant", 12 * DEGREE, "angle"), 0.25 * DEGREE, 0.002 * DEGREE);
		expect(
			linesOf([provenFile([slant])])[1]!
				.split(/ {2,}/u)
				.slice(3),
		).toEqual(["12.0000°", "12.2500°", "0.2500°", "0.0020°"]);
	});

	it("tells what was not found, sizes and labels", () => {
		const lost = [size("notch-9", 5), LABEL].map((claim) => measured(claim, Number.NaN));
		const lines = linesOf([provenFile(lost)]);
		expect(lines[1]).toMatch(/notch-9 +5\.0000 +not found +0\.0010$/u);
		expect(lines[2]).toMatch(/label-scale +"25…frets" +not as drawn +0\.0010$/u);
		expect(lines.at(-1)).toBe("0 claims measured in 1 file; 2 errors");
	});

	it("has what is wrong with a file first, worst first, then claims by deviation over tolerance", () => {
		const fails = [
			measured(size("by-three", 10), 0.003),
			measured(size("by-ten", 10), -0.05, 0.005),
			measured(size("by-four", 10), 0.04, 0.01),
			measured(size("lost", 10), Number.NaN),
		];
		const warned = provenFile(GOOD, [HINT, other("font-not-given", "warning", FONT)]);
		const lines = linesOf([warned, provenFile(fails, [UNFIT], "second.svg")]);
		const claims = lines.slice(-5, -1).map((l) => l.split(/ {2,}/u)[2]);
		expect(claims).toEqual(["lost", "by-ten", "by-four", "by-three"]);
		const rest = [...lines.slice(0, -6), lines.at(-1)!];
		expect(rest.filter((l) => !l.startsWith("    "))).toEqual([
			"second.svg",
			expect.stringMatching(/^ {2}error 105: no path could be read/u),
			FILE,
			expect.stringMatching(/^ {2}warning 306: bar: labels in the lettering "own"/u),
			FILE,
			expect.stringMatching(/^ {2}note 141: neck-bar\.svg is no longer/u),
			expect.stringMatching(/; 5 errors, 1 warning, 1 note$/u),
		]);
	});

	it("does not call labels wrong that could not be compared", () => {
		const unread = {
			...measured(LABEL, Number.NaN),
			remark: { kind: "font-not-given" as const, by: 0 },
		};
		const text = proofText([provenFile([...GOOD, unread])], { all: true });
		expect(text).toMatch(/label-scale +"25…frets" +not compared/u);
		expect(text).toMatch(/\n {2}warning 306: bar: labels/u);
		expect(text).toMatch(/4 claims measured in 1 file.*; 1 warning\n$/u);
	});

	it("stops after 40 claims, or 8 where the file itself is wrong, and says how many there are besides", () => {
		const many = Array.from({ length: 57 }, (_, i) =>
			measured(size(`notch-${i}`, i), 0.002 + i / 1000),
		);
		const lines = linesOf([provenFile(many)]);
		expect(lines).toHaveLength(1 + 40 + 2);
		expect(lines[1]).toContain("notch-56 ");
		expect(lines.at(-2)).toBe("And 17 more.");
		const wrong = linesOf([provenFile(many, [UNFIT])]);
		expect(wrong).toHaveLength(2 + 1 + 8 + 2);
		expect(wrong.at(-2)).toBe("And 49 more.");
	});

	it("lists every claim on demand, worst first, well or not", () => {
		const all = [...GOOD, ...Array.from({ length: 60 }, (_, i) => measured(size(`n-${i}`, i), 0))];
		const lines = linesOf([provenFile(all)], true);
		expect(lines).toHaveLength(1 + all.length + 1);
		expect(lines[1]).toContain("label-scale");
		expect(lines[1]).toContain("as drawn");
		const failing = linesOf([provenFile([...all, measured(size("off", 3), 1)], [UNFIT])], true);
		expect(failing).toHaveLength(2 + 1 + all.length + 1 + 1);
		expect(failing[3]).toContain("off ");
	});

	it("keeps to 100 columns whatever the names and figures, and leaves out their middles", () => {
		const long = (name: string) => `${name}-${"very-long-".repeat(30)}end`;
		const file = `${long("file")}.svg`;
		const claims = [
			measured(size(long("claim"), 1234567.8), 98765.4321),
			measured(size(long("other"), 5e9), -5e9),
			measured({ ...LABEL, id: long("label"), text: "W".repeat(300) }, Number.NaN),
			measured(size("notch-7", 3), 0.5),
		].map((m) => ({ ...m, part: long("part") }));
		const word = other("file-changed", "warning", { file: "x".repeat(150) });
		for (const all of [false, true]) {
			const lines = linesOf([provenFile(claims, [word], file)], all);
			expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(100);
			expect(lines.join("\n")).toMatch(/^fi\S*…\S*end\.svg/mu);
			expect(lines.filter((line) => line.includes("notch-7"))).toHaveLength(1);
		}
	});

	it("lets no name command the console", () => {
		const file = "a\u001b[2Jb\u202e.svg";
		const fails = [{ ...measured(size("n", 3), 1), part: "p\u0007\n" }];
		const text = proofText([provenFile(fails, [UNFIT], file)], { all: false });
		expect(text.replaceAll("\n", "")).not.toMatch(/[\p{Cc}\p{Cf}]/u);
		expect(text).toContain("a?[2Jb?.svg");
	});
});

describe("proofJson", () => {
	it("holds every claim and finding as JSON keeps it, angles in radians", () => {
		const proven = [provenFile([...GOOD, measured(size("lost", 10), Number.NaN)], [HINT])];
		const json = proofJson(proven);
		expect(JSON.parse(JSON.stringify(json))).toEqual(json);
		expect(json).toMatchObject({ files: 1, claims: 4, largest: 0.0004, errors: 1, notes: 1 });
		const [{ file, measured: claims, findings }] = json.proven as [(typeof json.proven)[0]];
		expect(file).toBe(FILE);
		expect(claims.map(({ claim }) => claim)).toEqual([
			"notch-1",
			"notch-2",
			"slant",
			"label-scale",
			"lost",
		]);
		expect(claims[2]).toMatchObject({ kind: "angle", nominal: 0.20943951, tolerance: 0.000034907 });
		expect(claims[3]).toMatchObject({ text: LABEL.text, value: 3.5009 });
		expect(claims[4]).toMatchObject({ nominal: 10, value: null, deviation: null });
		expect(findings.map(({ code, text }) => [code, text.length > 20])).toEqual([
			["feature-missing", true],
			["file-changed", true],
		]);
	});

	it("holds no more than nine decimals, and null for what no decimal writes", () => {
		const far = measured(size("a", 1 / 3), 1e300);
		const json = proofJson([{ file: FILE, measured: [far], findings: [] }]);
		expect(json.proven[0]!.measured).toMatchObject([
			{ nominal: 0.333333333, value: null, deviation: null },
		]);
		expect(json.largest).toBeNull();
	});
});
