import { type Mark, OFF_WORKING_EDGE, type Part } from "../drawing/index.js";
import { stationProblems } from "../fields/index.js";
import { arcSagitta } from "../geometry/index.js";
import { stationX, widthAt } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { inchLabel, trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { gaugeClaims } from "./radius-gauge/claims.js";
import { besideLetters, gaugeLabels, LEAST_LETTERS, lettersHeight } from "./radius-gauge/labels.js";
import { gaugeNotes } from "./radius-gauge/notes.js";
import {
	type Face,
	type GaugeSettings,
	type Given,
	LETTER_ROOM,
	settings,
} from "./radius-gauge/settings.js";
import { arcPath, shapeOf } from "./radius-gauge/shape.js";
import { type Wanted, wantedGauges } from "./radius-gauge/wanted.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, builtOf, tool } from "./tool.js";

/** Plate that must remain behind the arc, mm. */
const LEAST_BACK = 8;

function greatestWidth(bench: Bench): number {
	const { neck } = bench;
	const last = stationX(neck, { kind: "last-fret" });
	const places = [0, last, ...neck.width.knots.map((k) => k.x).filter((x) => x > 0 && x < last)];
	return Math.max(...places.map((x) => widthAt(neck, x)));
}

function defaults(bench: Bench, given: Given): Partial<Given> {
	return { "gauge-width": given["gauge-width"] ?? Math.ceil(greatestWidth(bench) - 1e-9) };
}

/** Stations off the neck, and stations beside radii of one's own. */
function placeProblems(bench: Bench, { at = [], radii }: Given): Problem[] {
	if (radii && at.length > 0) return [problem("at-or-radii", ["radii"])];
	return at.flatMap((station, i) => stationProblems(bench.neck, station, ["at", i]));
}

/** Diameter of the hanging hole, 0 without. */
function holeOf(s: GaugeSettings): number {
	return s["gauge-hole"] === "none" ? 0 : s["gauge-hole"];
}

function refusals(bench: Bench, s: GaugeSettings, wanted: readonly Wanted[]): Problem[] {
	if (wanted.length === 0) return [problem("flat-board", [], { tool: "radius gauge" })];
	const width = s["gauge-width"];
	const field = bench.neck.radius === "flat" || s.radii ? "radii" : "at";
	const hole = holeOf(s);
	const widest = width - 2 * OFF_WORKING_EDGE;
	if (hole > widest) {
		const allowed = `none, or at most ${trimmed(widest, 3)} mm on a gauge this narrow`;
		return [outOfRange("gauge-hole", hole, allowed)];
	}
	return wanted.flatMap(({ radius, place, tag }) => {
		const facts = { radius, width, place: place ?? tag };
		if (!(radius > 0)) return [problem("radius-vanishes", [field], facts)];
		if (width > 2 * radius) return [problem("chord-wider-than-circle", ["gauge-width"], facts)];
		const plate = Math.max(LEAST_BACK, besideLetters(hole) + LEAST_LETTERS);
		const least = arcSagitta(radius, width) + plate;
		const height = s["gauge-height"];
		if (height === undefined || height >= least) return [];
		return [problem("gauge-too-low", ["gauge-height"], { ...facts, height, least })];
	});
}

function gauge(
	bench: Bench,
	s: GaugeSettings,
	wanted: Wanted,
	face: Face,
	name: string,
): Part | Problem {
	const { radius, place } = wanted;
	const width = s["gauge-width"];
	const sagitta = arcSagitta(radius, width);
	const diameter = holeOf(s);
	const letters = lettersHeight(bench, wanted, face, width);
	const plate = Math.max(LETTER_ROOM, besideLetters(diameter) + letters);
	const height = s["gauge-height"] ?? Math.ceil(sagitta + plate - 1e-9);
	const shape = shapeOf(face, radius, width, height);
	const far = face === "concave" ? shape.top : shape.bottom;
	const inward = face === "concave" ? -1 : 1;
	const holeAt = { x: 0, y: far + inward * (OFF_WORKING_EDGE + diameter / 2) };
	const hole = hangingHole(bench, holeAt, diameter);
	const labels = gaugeLabels(bench, wanted, face, { shape, width, diameter });
	if (!Array.isArray(labels)) return labels;
	const outline: Mark = { operation: "cut", path: shape.outline, feature: "outline" };
	return {
		name,
		tool: "radius-gauge",
		title: `Radius gauge, ${face}, ${inchLabel(radius)}${place ? `, at ${place}` : ""}`,
		stock: bench.stock,
		marks: [...labels.flatMap((l) => l.marks), ...hole.marks, outline],
		workingEdge: `the ${face} arc, over its whole width`,
		working: [arcPath(shape)],
		claims: [
			...gaugeClaims(bench, radius, width, shape),
			...hole.claims,
			...labels.map((l) => l.claim),
		],
		notes: gaugeNotes(bench, wanted, face),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as GaugeSettings;
	const unsound = placeProblems(bench, given);
	if (unsound.length > 0) return { parts: [], problems: unsound };
	const wanted = wantedGauges(bench, s);
	const problems = refusals(bench, s, wanted);
	if (problems.length > 0) return { parts: [], problems };
	const made = wanted.flatMap((one) =>
		[...new Set(s.faces)].map((face) => {
			const full = [name, one.tag, face].filter(Boolean).join("-");
			return gauge(bench, s, one, face, full);
		}),
	);
	return builtOf(made);
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
