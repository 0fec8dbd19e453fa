import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { making } from "../support/job-text.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { RUNS, randomJob } from "../support/random-neck.js";
import {
	expectSound,
	foundAfter,
	lacking,
	runFindings,
	sizesOf,
	withPoints,
} from "../support/scale-tools.js";

const FANNED = {
	scale: { bass: "27 in", treble: "25.5 in", "square-fret": 7 },
	frets: 24,
	strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 },
};

function rocker(neck: object = {}, settings: object = {}, wire: object = {}) {
	const job = jobWith(neck, [{ "fret-rocker": settings }]);
	return madeParts({ ...job, wire: { ...job.wire, ...wire } });
}

function lengths(neck: object = {}, settings: object = {}): number[] {
	return rocker(neck, settings).parts.flatMap((part) =>
		sizesOf(part)
			.filter((c) => /^edge-\d+-length$/u.test(c.id))
			.map((c) => c.nominal),
	);
}

const codes = (neck: object, settings: object = {}) =>
	rocker(neck, settings).problems.map((p) => p.code);

describe("the edges of a rocker", () => {
	// d(n) = 647.7·(1 − 2^(−n/12)), equal division; the rest worked by hand from it.
	const d = (n: number) => 647.7 * (1 - 2 ** (-n / 12));

	it("of 647.7 mm, 22 frets and crowns of 2.7 mm are two: for frets 1 to 12 and 11 to 22", () => {
		const [part] = rocker().parts;
		const [long, short] = lengths();
		expect(long).toBeCloseTo((d(3) - d(1) + 2.7 + (d(13) - d(9) - 3.7)) / 2, 9);
		expect(short).toBeCloseTo((d(13) - d(11) + 2.7 + (d(22) - d(18) - 3.7)) / 2, 9);
		expect(long).toBeCloseTo((69.4 + 75.8) / 2, 1);
		expect(short).toBeCloseTo((40.1 + 43.5) / 2, 1);
		const notes = part!.notes.join(" ");
		expect(notes).toContain("serves frets 1-12, three at a time: lengths of 69.4 to 75.8 mm");
		expect(notes).toContain("serves frets 11-22, three at a time: lengths of 40.1 to 43.5 mm");
	});

	it("end half a millimetre before a nut that was moved to the first fret", () => {
		// 1-2-3 alone: from the nut's face + 0.5 to the crown of fret 4 − 0.5, at most.
		const [edge] = lengths({ frets: 4, "nut-shift": 15 });
		const least = d(3) - d(1) + 2.7;
		const most = d(4) - 1.35 - 0.5 - 15.5;
		expect(edge).toBeCloseTo((least + most) / 2, 9);
	});

	it("serve the zero fret and the two after it, a nut at its crown notwithstanding", () => {
		const [edge] = lengths({ frets: 3, "zero-fret": true });
		// 0-1-2 from the crown's back to the crown of 3; 1-2-3 from the crown of 0 on.
		const least = Math.max(d(2) + 2.7, d(3) - d(1) + 2.7);
		const most = d(3) - 1.35 - 0.5 + 1.35;
		expect(edge).toBeCloseTo((least + most) / 2, 9);
		expect(codes({ frets: 1, "zero-fret": true })).toEqual(["too-few-frets-to-rock"]);
		expect(lengths({ frets: 2, "zero-fret": true })).toEqual([expect.closeTo(d(2) + 3.7, 9)]);
	});

	it("are a millimetre longer than the crowns where nothing bounds them", () => {
		expect(lengths({ frets: 3 })).toEqual([expect.closeTo(d(3) - d(1) + 2.7 + 1, 9)]);
	});

	it("serve both outer strings of a fanned neck, by name", () => {
		const [part] = rocker(FANNED).parts;
		expect(lengths(FANNED)).toHaveLength(3);
		expect(part!.notes.join(" ")).toMatch(/bass 1-\d+, treble 1-\d+/u);
	});

	it("serve every three frets of any neck and touch nothing else, measured on the edges", () => {
		fc.assert(
			fc.property(randomJob({ leastGap: 6, fanned: false }), ({ job, drawn }) => {
				const make = [{ "fret-rocker": {} }];
				const { parts, problems } = madeParts({ ...job, make });
				const at = (n: number) => drawn.scale.bass * drawn.share(n);
				const first = drawn.zeroFret ? 0 : 1;
				if (drawn.frets - first < 2) {
					expect(problems.map((p) => p.code)).toEqual(["too-few-frets-to-rock"]);
					return;
				}
				const edges = parts.flatMap((part) =>
					sizesOf(part).filter((c) => c.id.endsWith("-length")),
				);
				const w = drawn.crown.width;
				for (let n = first; n + 2 <= drawn.frets; n++) {
					const least = at(n + 2) - at(n) + w;
					const right = n + 3 <= drawn.frets ? at(n + 3) - w / 2 - 0.5 : Number.POSITIVE_INFINITY;
					const nut = drawn.zeroFret
						? Math.min(-w / 2, drawn.nutShift + 0.5)
						: drawn.nutShift + 0.5;
					const left = n === first ? nut : at(n - 1) + w / 2 + 0.5;
					const serving = edges.filter(
						({ nominal: e }) => e > least - 1e-9 && e < right - left + 1e-9,
					);
					expect(serving.length, `frets ${n} to ${n + 2}`).toBeGreaterThan(0);
				}
			}),
			RUNS,
		);
	});
});

describe("a rocker is refused", () => {
	it("on a neck that has no three frets", () => {
		expect(codes({ frets: 2 })).toEqual(["too-few-frets-to-rock"]);
	});

	it("where the crowns stand nearer than the clearance, the tightest three named", () => {
		const { problems } = rocker({ frets: 30 }, { "end-clearance": "3 mm" }, { "crown-width": 5 });
		expect(problems).toMatchObject([
			{ code: "three-frets-too-close", facts: { fret: 27, last: 29, line: "" } },
		]);
		expect(problems[0]!.facts.room).toBeCloseTo(647.7 * (2 ** (-29 / 12) - 2 ** (-30 / 12)) - 5, 9);
		expect(codes({ frets: 30 }, { "end-clearance": 0 })).toEqual([]);
	});
});

describe("the plate of a rocker", () => {
	const settings = fc.record(
		{
			"end-clearance": fc.constantFrom("0 mm", "0.3 mm", "0.8 mm"),
			"hanging-hole": fc.constantFrom("none", "3 mm", "12 mm"),
		},
		{ requiredKeys: [] },
	);

	it("is sound on any neck, its claims what is cut", () => {
		expectSound("fret-rocker", settings, { leastGap: 6 });
	});

	it("is two where more than four edges are needed, numbered on", () => {
		const many = { frets: 60, division: 24, scale: 900 };
		const { parts } = rocker(many, {}, { "crown-width": 3.5 });
		const count = parts.flatMap(sizesOf).filter((c) => c.id.endsWith("-length")).length;
		expect(parts.length).toBe(Math.ceil(count / 4));
		expect(parts.length).toBeGreaterThan(1);
		expect(parts.map((p) => p.name)).toEqual(parts.map((_, i) => `fret-rocker-${i + 1}`));
	});

	it("has its corners beside the edges as round as a mill's cutter", async () => {
		const mill = "machine: {kind: mill, cutter: 6 mm, kerf: 0}";
		const text = making("fret-rocker: {hanging-hole: 8 mm}");
		expect(await runFindings(text.replace("make:", `${mill}\nmake:`))).toEqual([]);
	});
});

describe("a written rocker", () => {
	const text = making("fret-rocker").replace("make:", "machine: {kerf: 0.16 mm}\nmake:");
	const fanned = making("fret-rocker").replace(
		"scale: 648 mm",
		"scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}",
	);

	it("is found as promised in every format", async () => {
		expect(await runFindings(text)).toEqual([]);
		expect(await runFindings(fanned)).toEqual([]);
	});

	const isOutline = (feature: string) => feature === "outline";
	const low = (y: number) => y < -15;

	it.each([
		["undamaged", (p) => p, undefined],
		[
			"an edge longer by 0.02 mm",
			(p) => withPoints(p, isOutline, (q) => (low(q.y) && q.x > 30 ? { ...q, x: q.x + 0.02 } : q)),
			"claim-failed",
		],
		[
			"an edge out of true by 0.02 mm",
			(p) => withPoints(p, isOutline, (q) => (low(q.y) && q.x > 30 ? { ...q, y: q.y + 0.02 } : q)),
			"claim-failed",
		],
		["no hole", (p) => lacking(p, "hanging hole"), "feature-missing"],
	] as [string, Parameters<typeof foundAfter>[1], string | undefined][])(
		"is found out where it is damaged: %s",
		async (_, change, code) => {
			const codes = await foundAfter(text, change);
			if (code === undefined) expect(codes).toEqual([]);
			else expect(codes).toContain(code);
		},
	);
});
