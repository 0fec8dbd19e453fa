import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import { type Move, movedPoint, type Point } from "../../geometry/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { heightToFit, type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import type { IndexEdge } from "./lay.js";
import type { IndexingSettings } from "./settings.js";

/** Heights of letters, mm. */
const LARGE = 2.5;
const SMALL = 1.8;
/** Least air between two numbers, mm. */
const AIR = 0.8;
/** Between the nut's line, letters, hole and ends, mm. */
const BESIDE = 3;
/** What g and p hang below the baseline, and air below that, mm. */
const HANG = 1;
/** What round digits hang below it, mm. */
const ROUND = 0.05;

/** From an edge to where the line of its nut begins: over notches and numbers, mm. */
export function bandOf(depth: number): number {
	return depth + OFF_WORKING_EDGE + LARGE + HANG;
}

/** What a line of letters and the nut's line take over the band, mm. */
const PANEL = HANG + LARGE + HANG;

/** The lowest strip that has room for notches, letters and hole, mm. */
export function leastHeight(depth: number, edges: number, hole: number): number {
	const inner = edges > 1 ? Math.max(2 * PANEL, hole + 1) : PANEL + HANG;
	const single = edges > 1 ? 0 : hole + 2 * OFF_WORKING_EDGE;
	return Math.max(edges * bandOf(depth) + inner, single);
}

/** Where the hole is: at the last fret's end, or in the middle of a strip with two edges. */
export function holeAt(edges: readonly IndexEdge[], s: IndexingSettings, hole: number): Point {
	const { left, right } = edges[0]!;
	const x = edges.length > 1 ? (left + right) / 2 : right - 5 - hole / 2;
	return { x, y: s["strip-height"] / 2 };
}

/** From where to where an edge's own letters and its nut's line may stand over it. */
export function panelOf(s: IndexingSettings, edges: number) {
	const height = s["strip-height"];
	return { low: bandOf(s["notch-depth"]), high: edges > 1 ? height / 2 - 0.5 : height - HANG };
}

function place(
	{ letters }: Bench,
	move: Move,
	id: string,
	text: string,
	at: Point,
	height: number,
) {
	return label(letters, id, text, { at: movedPoint(at, move), height, turn: move.turn });
}

/** Number of every notch over it, small where there is little room; those without room by number. */
export function numberLabels(bench: Bench, edge: IndexEdge, s: IndexingSettings, prefix: string) {
	const { letters } = bench;
	const middles = edge.notches.map(({ flank, to }) => (flank + to) / 2);
	const labels: Label[] = [];
	const unnumbered: number[] = [];
	edge.notches.forEach(({ fret }, i) => {
		const middle = middles[i]!;
		const beside = [middles[i - 1], middles[i + 1]].filter((m) => m !== undefined);
		const room = Math.min(...beside.map((m) => Math.abs(m - middle))) - AIR;
		const text = String(fret);
		const height = heightToFit(letters, text, room, LARGE);
		if (height === null) {
			unnumbered.push(fret);
			return;
		}
		const x = middle - letters.width(text, height) / 2;
		const y = s["notch-depth"] + OFF_WORKING_EDGE + ROUND;
		labels.push(place(bench, edge.move, `${prefix}number-${fret}`, text, { x, y }, height));
	});
	return { labels, unnumbered };
}

/** "NUT" beside the nut's line, and job and scale on the side of it that has more room. */
export function edgeLabels(
	bench: Bench,
	edge: IndexEdge,
	s: IndexingSettings,
	{
		prefix,
		edges,
		hole,
	}: { readonly prefix: string; readonly edges: number; readonly hole: number },
): Label[] | Problem {
	const { letters, job } = bench;
	const { low, high } = panelOf(s, edges);
	const y = (low + high - LARGE) / 2;
	const nut = letters.width("NUT", SMALL);
	const taken = hole > 0 ? hole + 2 * BESIDE : 0;
	const end = edges > 1 ? (edge.left + edge.right - taken) / 2 : edge.right - taken;
	const before = { from: edge.left + BESIDE, to: -2 * BESIDE - nut };
	const after = { from: BESIDE, to: end - BESIDE };
	const { from, to } = after.to - after.from >= before.to - before.from ? after : before;
	const scale = `${edge.scale}   ${edge.frets} fret${edge.frets === 1 ? "" : "s"}`;
	const texts = [`${job}   ${scale}`, scale, edge.scale];
	const text = texts.find((t) => letters.width(t, SMALL) <= to - from);
	if (text === undefined) {
		return problem("label-too-long", [], { text: scale, room: Math.max(0, to - from) });
	}
	const height = heightToFit(letters, text, to - from, LARGE)!;
	return [
		place(bench, edge.move, `${prefix}nut`, "NUT", { x: -1.5 - nut, y }, SMALL),
		place(bench, edge.move, `${prefix}scale`, text, { x: from, y }, height),
	];
}
