import { lawOf } from "../../fields/index.js";
import {
	centreLine,
	type Neck,
	type StringLine,
	singleScaleGuides,
	stringLines,
} from "../../neck/index.js";
import type { Bench } from "../tool.js";
import { archRound, cutterRadius } from "./cutter.js";
import { type Notches, notchesAlong, USUAL_CLEARANCE } from "./edge.js";
import { type Edge, GLUE_CHAMFER } from "./outline.js";
import type { Given, StraightedgeSettings } from "./settings.js";

/** The line the bar is laid along, or null if the neck has no such string. */
export function lineOf(neck: Neck, along: Given["along"]): StringLine | null {
	if (along === "centre") return centreLine(neck);
	const strings = neck.strings ? stringLines(neck) : [];
	if (along === "bass") return strings[0] ?? null;
	if (along === "treble") return strings.at(-1) ?? null;
	return strings[strings.length - along] ?? null;
}

/** How the line is called; "" for the centre line. */
export function lineName(along: Given["along"]): string {
	if (along === "centre") return "";
	return typeof along === "number" ? `string ${along}` : `${along} string`;
}

/** The neck of the second scale: one scale length, nothing moved. */
function secondNeck(neck: Neck, given: Given): Neck | null {
	const second = given["second-edge"];
	if (second === "plain") return null;
	const { scale, frets } = second;
	return {
		...neck,
		frets,
		law: second.division ? lawOf(second.division, scale) : neck.law,
		guides: singleScaleGuides(scale, null, neck.trebleSide),
		scale: { bass: scale, treble: scale, squareFret: 0 },
		zeroFret: false,
		nutShift: 0,
		scaleUncertainty: 0,
		strings: null,
	};
}

/** One edge with the neck and the line that it serves. */
export interface Laid {
	readonly neck: Neck;
	readonly line: StringLine;
	readonly cut: Notches;
	readonly edge: Edge;
}

/** One edge of the bar: its notches and its two ends. */
function layEdge(
	bench: Bench,
	neck: Neck,
	line: StringLine,
	s: StraightedgeSettings,
	nutEnd: Edge["nutEnd"],
): Laid {
	const clearedTo = neck.nutShift + USUAL_CLEARANCE;
	const start = nutEnd === "cleared" ? clearedTo : neck.nutShift + GLUE_CHAMFER;
	const cut = notchesAlong(bench, {
		neck,
		line,
		stock: bench.stock,
		clearance: s["side-clearance"] ?? null,
		leastLand: s["least-land"],
		landStart: neck.zeroFret ? null : start,
	});
	const last = cut.notches.at(-1)!;
	const zero = neck.zeroFret ? cut.notches[0]! : null;
	const left = neck.nutShift - (nutEnd === "cleared" ? s["arch-reach"] : 0);
	const archEnd = zero ? zero.centre + zero.width / 2 : clearedTo;
	const cutter = cutterRadius(bench);
	const edge: Edge = {
		left,
		nutEnd,
		archEnd,
		archDepth: s["arch-depth"],
		archRound: archRound(cutter, s["arch-depth"], archEnd - left),
		notches: cut.notches,
		zeroInArch: zero !== null && nutEnd === "cleared",
		depth: bench.wire.crownHeight + s["depth-clearance"] + s["lapping-allowance"],
		lapping: s["lapping-allowance"],
		relief: bench.machine.relief === "floor" ? cutter : 0,
		right: last.centre + last.width / 2 + s["beyond-last-fret"],
	};
	return { neck, line, cut, edge };
}

/** Both edges, the shorter one drawn out so that the bar has two square ends. */
export function layEdges(bench: Bench, s: StraightedgeSettings, line: StringLine) {
	const first = layEdge(bench, bench.neck, line, s, s["nut-end"]);
	const other = secondNeck(bench.neck, s);
	if (!other) return { first, second: null };
	const second = layEdge(bench, other, centreLine(other), s, s["nut-end"]);
	const size = Math.max(first.edge.right - first.edge.left, second.edge.right - second.edge.left);
	const stretched = (laid: Laid): Laid => ({
		...laid,
		edge: { ...laid.edge, right: laid.edge.left + size },
	});
	return { first: stretched(first), second: stretched(second) };
}
