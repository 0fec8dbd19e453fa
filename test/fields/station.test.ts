import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	parseStation,
	stationField,
	stationMapField,
	stationProblems,
	stationText,
} from "../../src/fields/index.js";
import type { Station } from "../../src/neck/index.js";
import { faultsOf } from "../support/faults-of.js";
import { neckOfJob } from "../support/neck-of-job.js";

const text = { text: "a station" };

describe("parseStation", () => {
	it.each<[string | number, Station | null]>([
		["nut", { kind: "nut" }],
		["last-fret", { kind: "last-fret" }],
		["saddle", { kind: "saddle" }],
		[7, { kind: "fret", fret: 7 }],
		["7.5", { kind: "fret", fret: 7.5 }],
		[" 12 ", { kind: "fret", fret: 12 }],
		[0, { kind: "fret", fret: 0 }],
		["120 mm", { kind: "distance", mm: 120 }],
		["5 in", { kind: "distance", mm: 127 }],
		['4-1/2"', { kind: "distance", mm: 114.3 }],
		["4 ½″", { kind: "distance", mm: 114.3 }],
		["-5 mm", { kind: "distance", mm: -5 }],
		["-3", null],
		["4 1/2", null],
		["4 ½", null],
		["1e3", null],
		["12th", null],
		["Nut", null],
		["", null],
		["7 ft", null],
	])("reads %j", (given, station) => {
		const read = parseStation(given, "mm");
		if (station?.kind !== "distance") expect(read).toEqual(station);
		else {
			expect(read?.kind).toBe("distance");
			expect(read?.kind === "distance" && read.mm).toBeCloseTo(station.mm, 9);
		}
	});

	it("takes a bare number for a fret whatever the file's unit", () => {
		for (const unit of ["mm", "cm", "in"] as const) {
			expect(parseStation("5", unit)).toEqual({ kind: "fret", fret: 5 });
		}
	});

	it("reads back what it writes, but for the last fret's hyphen", () => {
		const station = fc.oneof(
			fc.constantFrom<Station>({ kind: "nut" }, { kind: "saddle" }),
			fc.integer({ min: 0, max: 9000 }).map((n): Station => ({ kind: "fret", fret: n / 1000 })),
			fc.integer({ min: 0, max: 2e6 }).map((n): Station => ({ kind: "distance", mm: n / 1000 })),
		);
		fc.assert(
			fc.property(station, (s) => {
				expect(parseStation(stationText(s).replace("fret ", ""), "in")).toEqual(s);
			}),
			{ seed: 3, numRuns: 200 },
		);
	});
});

describe("stationField", () => {
	it("refuses what is no station, and says what is", () => {
		expect(faultsOf(stationField("mm", text), "-3")).toMatchObject([
			{
				code: "station",
				facts: { given: "-3", allowed: expect.stringContaining("with its unit") },
			},
		]);
	});
});

describe("stationMapField", () => {
	const field = stationMapField("mm", { above: 0, to: 200 }, text);

	it("reads a length at each station", () => {
		expect(field.parse({ nut: 43, "12": "5 cm" })).toEqual([
			{ station: { kind: "fret", fret: 12 }, value: 50 },
			{ station: { kind: "nut" }, value: 43 },
		]);
	});

	it("refuses every key that is no station, and an empty map", () => {
		const codes = faultsOf(field, { nutt: 43, "12th": 50, nut: 43 });
		expect(codes.map(({ facts }) => facts)).toMatchObject([{ given: "nutt" }, { given: "12th" }]);
		expect(faultsOf(field, {})).toMatchObject([{ code: "station-map-empty" }]);
	});
});

describe("stationProblems", () => {
	const neck = neckOfJob("{scale: 640, frets: 20, radius: flat, width: 50}");
	const codes = (station: Station, of = neck) =>
		stationProblems(of, station, ["at", 0]).map((p) => p.code);

	it("takes the whole neck from nut to saddle", () => {
		const good: Station[] = [
			{ kind: "nut" },
			{ kind: "saddle" },
			{ kind: "last-fret" },
			{ kind: "fret", fret: 36 },
			{ kind: "distance", mm: 0 },
			{ kind: "distance", mm: 640 },
		];
		for (const station of good) expect(codes(station)).toEqual([]);
	});

	it("refuses what lies before the nut or beyond the saddle", () => {
		expect(codes({ kind: "distance", mm: -0.001 })).toEqual(["station-off-neck"]);
		expect(codes({ kind: "distance", mm: 640.001 })).toEqual(["station-off-neck"]);
	});

	it("begins at the nut's actual face where that comes first", () => {
		const moved = neckOfJob("{scale: 640, frets: 20, radius: flat, width: 50, nut-shift: -2}");
		expect(codes({ kind: "distance", mm: -2 }, moved)).toEqual([]);
		expect(codes({ kind: "distance", mm: -2.1 }, moved)).toEqual(["station-off-neck"]);
	});

	it("refuses a fret that a list does not have", () => {
		const listed = neckOfJob(
			"{scale: 640, frets: 2, radius: flat, width: 50, division: {cents: [200, 400, 700]}}",
		);
		expect(codes({ kind: "fret", fret: 3 }, listed)).toEqual([]);
		expect(codes({ kind: "fret", fret: 3.1 }, listed)).toEqual(["no-such-fret"]);
	});
});
