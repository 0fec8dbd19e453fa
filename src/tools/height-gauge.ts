import { kerfIn } from "../cutting/index.js";
import type { Mark, Part, SizeClaim } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { gaugeLabels, letterRoom, stepText } from "./height-gauge/labels.js";
import { type GaugeSettings, settings } from "./height-gauge/settings.js";
import { type Shape, type Step, shapeOf, stepsOf } from "./height-gauge/shape.js";
import { cutSize, outOfRange } from "./size.js";
import { cutterRadius } from "./straightedge/cutter.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Heights that differ by less are one step to the eye, mm (common practice, no source). */
const LEAST_RISE = 0.02;
/** Tread that a round cutter must leave flat, mm. */
const LEAST_TREAD = 2;

function refusals(bench: Bench, s: GaugeSettings): Problem[] {
	const heights = stepsOf(s).map(({ height }) => height);
	const rises = heights.slice(1).map((height, i) => ({ height, rise: height - heights[i]! }));
	const alike = rises.find(({ rise }) => rise < LEAST_RISE);
	if (alike) {
		const facts = { one: alike.height - alike.rise, other: alike.height, least: LEAST_RISE };
		return [problem("steps-alike", ["heights"], facts)];
	}
	const low = rises.reduce((a, b) => (b.rise < a.rise ? b : a));
	const beam = (kerfIn(bench.machine, bench.stock) ?? 0) / 2;
	if (low.rise <= beam) {
		const facts = { rise: low.rise, kerf: 2 * beam, least: beam };
		return [problem("steps-below-beam", ["heights"], facts)];
	}
	const radius = cutterRadius(bench);
	if (radius === 0) return [];
	if (low.rise < radius) {
		const facts = { rise: low.rise, cutter: 2 * radius, least: radius };
		return [problem("steps-below-cutter", ["heights"], facts)];
	}
	const least = LEAST_TREAD + radius;
	if (s["step-width"] >= least) return [];
	const allowed = `${trimmed(least, 3)} mm or more with a cutter of ${trimmed(2 * radius, 3)} mm, which rounds the foot of every step`;
	return [outOfRange("step-width", s["step-width"], allowed)];
}

function claims(bench: Bench, shape: Shape): SizeClaim[] {
	const { steps, right, roof, top, wall } = shape;
	const step = ({ height, from, to }: Step, i: number) => {
		// Near the outer end of the tread: a round at the next riser's foot does not reach there.
		const x = from + (to - from) / 4;
		return cutSize(bench, {
			id: `step-${i + 1}`,
			kind: "position",
			feature: `step ${stepText(height)}`,
			datum: "lower edge",
			axis: "y",
			at: [
				{ x, y: 0 },
				{ x, y: height },
			],
			nominal: height,
		});
	};
	return [
		...steps.map(step),
		cutSize(bench, {
			id: "lower-edge",
			kind: "straightness",
			feature: "lower edge",
			datum: "lower edge",
			axis: "line",
			at: shape.lower.points.map(({ x, y }) => ({ x, y })),
			nominal: 0,
		}),
		cutSize(bench, {
			id: "length",
			kind: "length",
			feature: "gauge",
			datum: "open end",
			axis: "x",
			at: [
				{ x: 0, y: (roof + top) / 2 },
				{ x: right, y: (roof + top) / 2 },
			],
			nominal: right,
		}),
		cutSize(bench, {
			id: "height",
			kind: "length",
			feature: "gauge",
			datum: "lower edge",
			axis: "y",
			at: [
				{ x: wall, y: 0 },
				{ x: wall, y: top },
			],
			nominal: top,
		}),
	];
}

function notes(shape: Shape): string[] {
	const [first] = shape.steps;
	return [
		"Stand the lower edge on the frets beside the string, along it. Slide the gauge until the step right over the fret is level with the string's underside, the eye at the height of the string: that is the string's height over the fret.",
		"Read at the fret that you measure: the string rises along the gauge, and only the step over that fret counts.",
		`The jaw is only ${trimmed(first!.height, 3)} mm high at its open end: lift it out of the sheet with care, take off burrs with one light stroke, and do not force it under a string.`,
	];
}

function build(bench: Bench, given: GaugeSettings, name: string): Built {
	const problems = refusals(bench, given);
	if (problems.length > 0) return { parts: [], problems };
	const shape = shapeOf(given, letterRoom(bench.letters, given));
	const labels = gaugeLabels(bench, shape);
	const hole = hangingHole(bench, shape.hole.at, shape.hole.diameter);
	const outline: Mark = { operation: "cut", path: shape.outline, feature: "outline" };
	const part: Part = {
		name,
		tool: "height-gauge",
		title: `String height gauge, ${shape.steps.length} steps`,
		stock: bench.stock,
		marks: [...labels.flatMap((l) => l.marks), ...hole.marks, outline],
		workingEdge: "the steps, and the lower edge that it stands on",
		working: [shape.stair, shape.lower],
		claims: [...claims(bench, shape), ...hole.claims, ...labels.map((l) => l.claim)],
		notes: notes(shape),
	};
	return { parts: [part], problems: [] };
}

export const heightGauge = tool({
	id: "height-gauge",
	title: "Height gauge",
	purpose:
		"Tells how high a string stands over a fret. Stand its lower edge on the frets beside the string and slide it until the step over the fret is level with the string's underside.",
	neckless: true,
	settings,
	defaults: () => ({}),
	build,
});
