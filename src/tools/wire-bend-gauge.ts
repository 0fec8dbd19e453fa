import { OFF_WORKING_EDGE, type Part } from "../drawing/index.js";
import { arcSagitta } from "../geometry/index.js";
import { fretNumbers } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { inchLabel, trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { stackLabels, stackOf } from "./label-stack.js";
import { gaugeClaims } from "./radius-gauge/claims.js";
import { arcPath, shapeOf } from "./radius-gauge/shape.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, builtOf, tool } from "./tool.js";
import { longestFret } from "./wire-bend-gauge/longest.js";
import { bendNotes } from "./wire-bend-gauge/notes.js";
import { type BendSettings, type Given, settings } from "./wire-bend-gauge/settings.js";
import { type Bend, wantedBends } from "./wire-bend-gauge/wanted.js";

/** How far letters stay from sides, back and hole, mm. */
const BESIDE_LETTERS = 2;

function defaults({ neck }: Bench, given: Given): Partial<Given> {
	return { "gauge-width": given["gauge-width"] ?? Math.ceil(longestFret(neck) - 1e-9) };
}

function holeOf(s: BendSettings): number {
	return s["gauge-hole"] === "none" ? 0 : s["gauge-hole"];
}

/** Settings that say nothing on this board, and frets that it lacks. */
function refusals({ neck }: Bench, s: BendSettings): Problem[] {
	const flat = neck.radius === "flat";
	const idle = flat ? (["over-bend", "bend-for"] as const) : (["rise"] as const);
	const frets = fretNumbers(neck);
	const hole = holeOf(s);
	const widest = s["gauge-width"] - 2 * OFF_WORKING_EDGE;
	return [
		...idle
			.filter((key) => s[key] !== undefined)
			.map((key) => problem("bend-not-of-this-board", [key], { key, flat: flat ? "yes" : "no" })),
		...(flat ? [] : (s["bend-for"] ?? [])).flatMap((fret, i) => {
			const facts = { fret, first: frets[0]!, last: neck.frets };
			return frets.includes(fret) ? [] : [problem("bend-for-no-fret", ["bend-for", i], facts)];
		}),
		...(hole > widest
			? [
					outOfRange(
						"gauge-hole",
						hole,
						`none, or at most ${trimmed(widest, 3)} mm on a gauge this narrow`,
					),
				]
			: []),
	];
}

function gauge(bench: Bench, s: BendSettings, bend: Bend, name: string): Part | Problem {
	const { radius, serves, by } = bend;
	const width = s["gauge-width"];
	if (width >= 2 * radius) {
		return problem("chord-wider-than-circle", ["gauge-width"], { radius, width, place: serves });
	}
	const texts = [
		{ id: "job", pieces: bench.job.split(/\s+/u), between: " ", most: 2.5 },
		{ id: "bend", pieces: ["wire bend", by], between: ", ", most: 2.5 },
		{ id: "serves", pieces: [serves], between: " ", most: 2.5 },
		{
			id: "radius",
			pieces: [inchLabel(radius), `R ${trimmed(radius, 2)} mm`],
			between: "   ",
			most: 3.5,
		},
	];
	const room = width - 2 * BESIDE_LETTERS;
	const stack = stackOf(bench.letters, texts, room);
	if (typeof stack === "string") {
		return problem("label-too-long", ["gauge-width"], { text: stack, room });
	}
	const diameter = holeOf(s);
	const bottom = arcSagitta(radius, width) + OFF_WORKING_EDGE;
	const back = diameter > 0 ? BESIDE_LETTERS + diameter + OFF_WORKING_EDGE : BESIDE_LETTERS;
	const least = bottom + stack.height + back;
	const height = s["gauge-height"] ?? Math.ceil(least - 1e-9);
	if (height < least - 1e-9) {
		const facts = { height, least: Math.ceil(least * 10 - 1e-9) / 10 };
		return problem("gauge-too-low", ["gauge-height"], { ...facts, radius, width, place: serves });
	}
	const shape = shapeOf("concave", radius, width, height);
	const labels = stackLabels(bench.letters, stack, bottom);
	const holeAt = { x: 0, y: height - OFF_WORKING_EDGE - diameter / 2 };
	const hole = hangingHole(bench, holeAt, diameter);
	return {
		name,
		tool: "wire-bend-gauge",
		title: `Wire-bend gauge, ${inchLabel(radius)}, ${serves}`,
		stock: bench.stock,
		marks: [
			...labels.flatMap((l) => l.marks),
			...hole.marks,
			{ operation: "cut", path: shape.outline, feature: "outline" },
		],
		workingEdge: "the concave arc, over its whole width",
		working: [arcPath(shape)],
		claims: [
			...gaugeClaims(bench, radius, width, shape),
			...hole.claims,
			...labels.map((l) => l.claim),
		],
		notes: bendNotes(bench, bend),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as BendSettings;
	const problems = refusals(bench, s);
	if (problems.length > 0) return { parts: [], problems };
	const made = wantedBends(bench, s).map((bend) =>
		gauge(bench, s, bend, [name, bend.tag].filter(Boolean).join("-")),
	);
	const { parts, problems: found } = builtOf(made);
	return { parts, problems: found.slice(0, 1) };
}

export const wireBendGauge = tool({
	id: "wire-bend-gauge",
	title: "Wire-bend gauge",
	purpose:
		"Shows whether fret wire is bent enough before it is cut and pressed: a little tighter than the board, so that its ends seat first. Lay its hollow on the crown of the bent wire and look for light.",
	settings,
	defaults,
	build,
});
