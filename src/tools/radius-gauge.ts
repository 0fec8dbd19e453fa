import { z } from "zod";
import type { Mark, Part, SizeClaim } from "../drawing/index.js";
import {
	choiceField,
	describe,
	lengthField,
	lengthOrWord,
	stationField,
	stationText,
} from "../fields/index.js";
import { arcSagitta, bulgeOf, circle, type Path, type Point, reversed } from "../geometry/index.js";
import { isExtrapolated, isFanned, radiusAt, stationX, widthAt } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { inches, inchLabel, trimmed, type Unit } from "../units/index.js";
import { type Label, label } from "./label.js";
import { outlineOf } from "./outline.js";
import { cutSize } from "./size.js";
import { heightToFit } from "./straightedge/labels.js";
import {
	type Bench,
	type Built,
	CORNER_RADIUS,
	OFF_WORKING_EDGE,
	type Settled,
	tool,
} from "./tool.js";

/** Least height that has room for a hole and two lines of letters over the arc, mm. */
const LETTER_ROOM = 26;
/** Plate that must remain behind the arc, mm. */
const LEAST_BACK = 8;

const FACES = ["concave", "convex"] as const;
type Face = (typeof FACES)[number];

function settings(unit: Unit) {
	return z.strictObject({
		at: z
			.array(stationField(unit, { text: "station" }))
			.min(1)
			.max(60)
			.optional()
			.meta({
				...describe({
					text: "Stations whose radius is wanted, a gauge each",
					derived: "one gauge on a cylinder; nut, middle fret and last fret on a compound board",
				}),
				kind: "list of stations",
				range: "[nut, 7, last-fret, 120 mm]",
			}),
		radii: z
			.array(lengthField(unit, { above: 0, to: 10_000 }, { text: "radius" }))
			.min(1)
			.max(60)
			.optional()
			.meta({
				...describe({ text: "Radii of your own instead of the neck's, a gauge each" }),
				kind: "list of lengths",
				range: "[7.25 in, 9.5 in, 12 in]",
			}),
		faces: z
			.array(choiceField(FACES, { text: "face" }))
			.min(1)
			.max(2)
			.default(["concave"])
			.meta({
				...describe({
					text: "concave lies on the board; convex checks blocks and cauls",
				}),
				kind: "list",
				range: "[concave, convex]",
			}),
		"gauge-width": lengthField(
			unit,
			{ from: 10, to: 300 },
			{
				text: "Width of the gauge: the arc runs over all of it",
				derived: "the board's greatest width up to the last fret, in whole mm",
			},
		).optional(),
		"gauge-height": lengthField(
			unit,
			{ from: 12, to: 200 },
			{
				text: "Height of the gauge",
				derived: `the arc's sagitta and ${LETTER_ROOM} mm for its letters, in whole mm`,
			},
		).optional(),
		"gauge-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{
				text: "Diameter of the hole to hang it by",
			},
		).prefault("5 mm"),
	});
}

type Given = z.output<ReturnType<typeof settings>>;
type Settings = Settled<Given, "gauge-width">;

/** One gauge to be made. */
interface Wanted {
	readonly radius: number;
	/** Where on the neck, or null for a radius of the user's own. */
	readonly place: string | null;
	/** For the part's name. */
	readonly tag: string;
}

function greatestWidth(bench: Bench): number {
	const { neck } = bench;
	const last = stationX(neck, { kind: "last-fret" });
	const places = [0, last, ...neck.width.knots.map((k) => k.x).filter((x) => x > 0 && x < last)];
	return Math.max(...places.map((x) => widthAt(neck, x)));
}

function defaults(bench: Bench, given: Given): Partial<Given> {
	return { "gauge-width": given["gauge-width"] ?? Math.ceil(greatestWidth(bench) - 1e-9) };
}

/** The gauges asked for: own radii, stations, or what the board needs. */
function wantedGauges(bench: Bench, given: Given): Wanted[] {
	const { neck } = bench;
	if (given.radii) {
		return given.radii.map((radius) => ({
			radius,
			place: null,
			tag: `${inches(radius, 3)
				.replace(/\.?0+$/, "")
				.replace(".", "-")}in`,
		}));
	}
	if (neck.radius === "flat") return [];
	const cylinder = neck.radius.knots.length === 1;
	if (cylinder && !given.at) return [{ radius: radiusAt(neck, 0)!, place: null, tag: "" }];
	const middle = Math.round(neck.frets / 2);
	const stations = given.at ?? [
		{ kind: "nut" as const },
		{ kind: "fret" as const, fret: middle },
		{ kind: "last-fret" as const },
	];
	return stations.map((station) => ({
		radius: radiusAt(neck, stationX(neck, station))!,
		place: stationText(station),
		tag: stationText(station).replace(/[ .]/gu, "-"),
	}));
}

function refusals(bench: Bench, s: Settings, wanted: readonly Wanted[]): Problem[] {
	if (wanted.length === 0) return [problem("flat-board", [], { tool: "radius gauge" })];
	const width = s["gauge-width"];
	const field = bench.neck.radius === "flat" || s.radii ? "radii" : "at";
	return wanted.flatMap(({ radius, place, tag }) => {
		const facts = { radius, width, place: place ?? tag };
		if (!(radius > 0)) return [problem("radius-vanishes", [field], facts)];
		if (width > 2 * radius) return [problem("chord-wider-than-circle", ["gauge-width"], facts)];
		const least = arcSagitta(radius, width) + LEAST_BACK;
		const height = s["gauge-height"];
		if (height === undefined || height >= least) return [];
		return [problem("gauge-too-low", ["gauge-height"], { ...facts, height, least })];
	});
}

/** A gauge's shape in its own frame: the arc's ends on y = 0, its top at y = sagitta. */
interface Shape {
	readonly outline: Path;
	readonly arc: readonly [Point, Point, Point];
	readonly sagitta: number;
	readonly bottom: number;
	readonly top: number;
}

function shapeOf(face: Face, radius: number, width: number, height: number): Shape {
	const half = width / 2;
	const sagitta = arcSagitta(radius, width);
	const bulge = bulgeOf(radius, width);
	const left = { x: -half, y: 0 };
	const right = { x: half, y: 0 };
	const arc = [left, { x: 0, y: sagitta }, right] as const;
	const round = CORNER_RADIUS;
	if (face === "concave") {
		const outline = outlineOf([
			{ x: half, y: height, round },
			{ x: -half, y: height, round },
			{ ...left, bulge: -bulge },
			right,
		]);
		return { outline, arc, sagitta, bottom: 0, top: height };
	}
	const bottom = sagitta - height;
	const outline = outlineOf([
		{ x: -half, y: bottom, round },
		{ x: half, y: bottom, round },
		{ ...right, bulge },
		left,
	]);
	return { outline, arc, sagitta, bottom, top: sagitta };
}

function gauge(
	bench: Bench,
	s: Settings,
	wanted: Wanted,
	face: Face,
	name: string,
): Part | Problem {
	const { radius, place } = wanted;
	const width = s["gauge-width"];
	const sagitta = arcSagitta(radius, width);
	const height = s["gauge-height"] ?? Math.ceil(sagitta + LETTER_ROOM - 1e-9);
	const shape = shapeOf(face, radius, width, height);
	const diameter = s["gauge-hole"] === "none" ? 0 : s["gauge-hole"];
	const far = face === "concave" ? shape.top : shape.bottom;
	const inward = face === "concave" ? -1 : 1;
	const hole = { x: 0, y: far + inward * (OFF_WORKING_EDGE + diameter / 2) };
	const labels = gaugeLabels(bench, wanted, face, { shape, width, diameter });
	if (!Array.isArray(labels)) return labels;
	const marks: Mark[] = labels.flatMap((l) => l.marks);
	if (diameter > 0) {
		const path = reversed(circle(hole, diameter / 2));
		marks.push({ operation: "cut", path, feature: "hanging hole" });
	}
	marks.push({ operation: "cut", path: shape.outline, feature: "outline" });
	return {
		name,
		tool: "radius-gauge",
		title: `Radius gauge, ${face}, ${inchLabel(radius)}${place ? `, at ${place}` : ""}`,
		stock: bench.stock,
		marks,
		workingEdge: `the ${face} arc, over its whole width`,
		claims: [
			...gaugeClaims(bench, radius, width, shape),
			...(diameter > 0 ? [holeClaim(bench, hole, diameter)] : []),
			...labels.map((l) => l.claim),
		],
		notes: gaugeNotes(bench, wanted, face),
	};
}

/** Two lines between hole and arc: the radius, and where and how it is held. */
function gaugeLabels(
	bench: Bench,
	{ radius, place }: Wanted,
	face: Face,
	{ shape, width, diameter }: { shape: Shape; width: number; diameter: number },
): Label[] | Problem {
	const { letters } = bench;
	const first = `${inchLabel(radius)}   R ${trimmed(radius, 2)} mm`;
	const second = place ? `${face}, ${place}` : face;
	const room = width - 2 * OFF_WORKING_EDGE;
	const heights = [heightToFit(letters, first, room, 3.5), heightToFit(letters, second, room, 2.5)];
	const [high, low] = heights as [number | null, number | null];
	if (high === null || low === null) {
		return problem("label-too-long", ["gauge-width"], {
			text: high === null ? first : second,
			room,
		});
	}
	const taken = OFF_WORKING_EDGE + (diameter > 0 ? diameter + 2 : 0);
	const block = high + low + 2;
	const middle =
		face === "concave"
			? (shape.sagitta + OFF_WORKING_EDGE + shape.top - taken) / 2
			: (shape.bottom + taken - OFF_WORKING_EDGE) / 2;
	const y = middle - block / 2;
	return [
		label(letters, "radius", first, {
			at: { x: 0, y: y + low + 2 },
			height: high,
			align: "centre",
		}),
		label(letters, "place", second, { at: { x: 0, y }, height: low, align: "centre" }),
	];
}

function gaugeClaims(bench: Bench, radius: number, width: number, shape: Shape): SizeClaim[] {
	const { arc, sagitta, bottom, top } = shape;
	const edge = "working edge";
	const middle = (bottom + top) / 2;
	return [
		cutSize(bench, {
			id: "radius",
			kind: "radius",
			feature: edge,
			datum: edge,
			axis: "line",
			at: arc,
			nominal: radius,
		}),
		cutSize(bench, {
			id: "sagitta",
			kind: "sagitta",
			feature: edge,
			datum: "its chord",
			axis: "y",
			at: arc,
			nominal: sagitta,
		}),
		cutSize(bench, {
			id: "width",
			kind: "length",
			feature: "gauge",
			datum: "left side",
			axis: "x",
			at: [
				{ x: -width / 2, y: middle },
				{ x: width / 2, y: middle },
			],
			nominal: width,
		}),
		cutSize(bench, {
			id: "height",
			kind: "length",
			feature: "gauge",
			datum: "back",
			axis: "y",
			at: [
				{ x: 0, y: bottom },
				{ x: 0, y: top },
			],
			nominal: top - bottom,
		}),
	];
}

function holeClaim(bench: Bench, at: Point, diameter: number): SizeClaim {
	return cutSize(bench, {
		id: "hanging-hole",
		kind: "diameter",
		feature: "hanging hole",
		datum: "hanging hole",
		axis: "line",
		at: [at],
		nominal: diameter,
	});
}

function gaugeNotes(bench: Bench, { place, radius }: Wanted, face: Face): string[] {
	const { neck } = bench;
	const notes = [
		face === "concave"
			? "Hold it square to the centre line and look for light between arc and board."
			: "Hold it square in the hollow of a block or caul and look for light under the arc.",
		`The arc is a true arc of ${trimmed(radius, 3)} mm over the whole width; nothing is faceted.`,
	];
	if (isFanned(neck)) {
		notes.push(
			"The frets are fanned: along a slanted fret the board is flatter than this radius. Hold the gauge square to the centre line, not along the fret.",
		);
	}
	const outside =
		place === "saddle" ||
		(neck.radius !== "flat" && place === "nut" && isExtrapolated(neck.radius, 0));
	if (outside) notes.push(`The radius at ${place} is extrapolated beyond the measured stations.`);
	return notes;
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as Settings;
	const wanted = wantedGauges(bench, s);
	const problems = refusals(bench, s, wanted);
	if (problems.length > 0) return { parts: [], problems };
	const made = wanted.flatMap((one) =>
		[...new Set(s.faces)].map((face) => {
			const full = [name, one.tag, face].filter(Boolean).join("-");
			return gauge(bench, s, one, face, full);
		}),
	);
	return {
		parts: made.filter((m): m is Part => "marks" in m),
		problems: made.filter((m): m is Problem => "code" in m),
	};
}

export const radiusGauge = tool({
	id: "radius-gauge",
	title: "Radius gauge",
	purpose:
		"Shows whether the board (concave gauge) or a sanding block or caul (convex gauge) has the radius it should. Hold it square to the centre line and look for light along the arc.",
	settings,
	defaults,
	build,
});
