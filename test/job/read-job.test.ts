import { describe, expect, it } from "vitest";
import { type Job, readJob } from "../../src/job/index.js";
import type { Problem } from "../../src/problem/index.js";
import { JOB, jobText, making, placeOf, withBlock } from "../support/job-text.js";

function jobOf(text: string, options = {}): Job {
	const read = readJob(text, options);
	if (!read.ok) throw new Error(JSON.stringify(read.problems));
	return read.job;
}

function problemsOf(text: string, options = {}): readonly Problem[] {
	const read = readJob(text, options);
	return read.ok ? [] : read.problems;
}

describe("readJob", () => {
	it("reads a job with its defaults in place", () => {
		const { bench, wanted, fileName, font } = jobOf(JOB);
		expect(bench).toMatchObject({
			job: "Test neck",
			date: null,
			wire: { crownWidth: 2.7, crownHeight: 1.3, tangWidth: 0.53, tangDepth: 1.6 },
			stock: { material: "acrylic", thickness: 3 },
			machine: { kind: "laser", tolerance: 0.05 },
			temperatureSwing: 10,
		});
		expect(bench.neck).toMatchObject({
			frets: 22,
			zeroFret: false,
			nutShift: 0,
			scaleUncertainty: 0,
			binding: 0,
			trebleSide: 1,
			markers: [],
		});
		expect(wanted.map(({ name }) => name)).toEqual([
			"notched-straightedge",
			"radius-gauge",
			"slot-strip",
		]);
		expect(fileName).toBe("test-neck");
		expect(font).toBeNull();
	});

	it("keeps name and date as they stand in the file", () => {
		const { bench } = jobOf(withBlock("date: 1.10").replace("Test neck", "007"));
		expect([bench.job, bench.date]).toEqual(["007", "1.10"]);
	});

	it("keeps own colours and widths, the usual ones beside them", () => {
		const { pens } = jobOf(
			withBlock('machine: {pens: {cut: {colour: "#ABCDEF"}, score: {width: 0.3}}}'),
		).bench.machine;
		expect(pens.cut).toEqual({ colour: "#abcdef", width: 0.25 });
		expect(pens.score).toEqual({ colour: "#b5530d", width: 0.3 });
	});

	it("takes a number without unit in the job's unit, also in a tool", () => {
		const text = making("radius-gauge: {gauge-width: 2.5, radii: [12]}")
			.replace("format: 1", "format: 1\nunits: in")
			.replace("scale: 648 mm", "scale: 25.5");
		const { bench, wanted } = jobOf(text);
		expect(bench.neck.scale.bass).toBeCloseTo(647.7, 9);
		expect(wanted[0]!.settings).toMatchObject({ "gauge-width": 63.5 });
		expect((wanted[0]!.settings.radii as number[])[0]).toBeCloseTo(304.8, 9);
	});

	it("gives a tool its own sheet or the job's", () => {
		const { wanted } = jobOf(
			making("radius-gauge: {stock: {material: steel, thickness: 0.5 mm}}", "slot-strip"),
		);
		expect(wanted.map(({ stock }) => stock.material)).toEqual(["steel", "acrylic"]);
	});

	it("takes a tool's name with nothing behind it", () => {
		expect(jobOf(making("radius-gauge:", "slot-strip: {}")).wanted).toHaveLength(2);
	});

	it("makes only what is asked for, by tool or by part", () => {
		const text = making(
			"radius-gauge: {name: first}",
			"radius-gauge: {name: second}",
			"slot-strip",
		);
		const names = (only: string[]) => jobOf(text, { only }).wanted.map(({ name }) => name);
		expect(names(["radius-gauge"])).toEqual(["first", "second"]);
		expect(names(["second", "slot-strip"])).toEqual(["second", "slot-strip"]);
		expect(problemsOf(text, { only: ["third", "slotstrip"] })).toMatchObject([
			{ code: "only-unknown", where: { path: [] }, facts: { given: "third", guess: "" } },
			{ code: "only-unknown", facts: { given: "slotstrip", guess: "slot-strip" } },
		]);
	});

	it("lets an unusual scale pass only when asked to", () => {
		const text = jobText("scale: 648 mm", "scale: 2100 mm");
		expect(problemsOf(text).map(({ code }) => code)).toEqual(["length-range"]);
		expect(jobOf(text, { allowUnusual: true }).bench.neck.scale.bass).toBe(2100);
		expect(problemsOf(jobText("648 mm", "0 mm"), { allowUnusual: true })).toHaveLength(1);
	});

	it("tells all problems of shape at once, each with its place", () => {
		const text = making("radius-gauge: {fases: [convex], gauge-width: wide}", "slot-stripe")
			.replace("frets: 22", "frets: 0")
			.replace("crown-width: 2.7 mm", "crown-width: 2.7 in")
			.replace("acrylic", "PVC")
			.replace("nut: 43 mm", "nut: 43 ft")
			.replace("job: Test neck\n", "");
		const found = problemsOf(text);
		const places = found.map(({ code, where: { line, column } }) => ({ code, line, column }));
		const at = (code: string, piece: string) => ({ code, ...placeOf(text, piece) });
		expect(places).toHaveLength(8);
		expect(places).toEqual(
			expect.arrayContaining([
				at("missing", "format"),
				at("count", "0\n"),
				at("unknown-unit", "43 ft"),
				at("length-range", "2.7 in"),
				at("material-never", "PVC"),
				at("not-a-length", "wide"),
				at("unknown-key", "fases"),
				at("unknown-tool", "slot-stripe"),
			]),
		);
	});

	it("tells all problems of the neck at once", () => {
		const text = jobText(
			"radius: 12 in",
			"radius: {nut: 20, last-fret: 22}\n  nut-shift: 19\n  binding: 1",
		).replace("at-nut: 35.5 mm", "at-nut: 55 mm");
		expect(problemsOf(text).map(({ code, where }) => `${code} ${where.path.join(".")}`)).toEqual([
			"radius-below-half-board neck.radius",
			"radius-below-half-board neck.radius",
			"strings-beside-board neck.strings.at-nut",
			"nut-past-first-fret neck.nut-shift",
		]);
	});
});
