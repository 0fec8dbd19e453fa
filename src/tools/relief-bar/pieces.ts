import type { Mark, Part, SizeClaim } from "../../drawing/index.js";
import { circle, line, type Path, reversed } from "../../geometry/index.js";
import { hangingHole } from "../hanging-hole.js";
import { outlineOf } from "../outline.js";
import { cutSize } from "../size.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import { holeSize } from "./claims.js";
import { pieceLabels } from "./labels.js";
import type { Laid } from "./lay.js";
import { type Hole, RELIEF } from "./measures.js";
import { pieceNotes } from "./notes.js";
import type { Dowels, Stem } from "./stem.js";

/** What is cut for a round hole. */
export function holeMark(hole: Hole, feature: string): Mark {
	return { operation: "cut", path: reversed(circle(hole, hole.diameter / 2)), feature };
}

/** Dowel holes by the numbers that they have in every sheet, from the left. */
function numbered(dowels: Dowels | null): { readonly hole: Hole; readonly n: number }[] {
	return (dowels?.flat() ?? []).map((hole, i) => ({ hole, n: i + 1 }));
}

const dowelName = (n: number) => `dowel hole ${n}`;

/** Holes of some dowels and what is promised of them; one leader stands for all. */
function dowelHoles(bench: Bench, own: readonly { readonly hole: Hole; readonly n: number }[]) {
	return {
		marks: own.map(({ hole, n }) => holeMark(hole, dowelName(n))),
		claims: own.map(({ hole, n }, i) =>
			holeSize(bench, dowelName(n), hole, i === 0 ? undefined : "dowel hole diameter"),
		),
	};
}

/** All dowel holes of a cheek, and how far the two beside the channel are apart. */
export function cheekDowels(bench: Bench, { dowels }: Laid) {
	const { marks, claims } = dowelHoles(bench, numbered(dowels));
	if (!dowels) return { marks, claims };
	const [[, left], [right]] = dowels;
	return {
		marks,
		claims: [...claims, between(bench, dowelName(2), dowelName(3), edgesOf(left, right))],
	};
}

/** From the side of one hole to the side of the next, at their height. */
function edgesOf(left: Hole, right: Hole) {
	return [
		{ x: left.x + left.diameter / 2, y: left.y },
		{ x: right.x - right.diameter / 2, y: right.y },
	] as const;
}

/** Sheet between two sides that face away from each other; in the table alone. */
function between(
	bench: Bench,
	datum: string,
	feature: string,
	at: ReturnType<typeof edgesOf>,
): SizeClaim {
	const name = `from ${datum} to ${feature}`;
	return cutSize(bench, {
		id: `${datum}-to-${feature}`.replaceAll(" ", "-"),
		kind: "length",
		feature: name,
		datum,
		axis: "x",
		at,
		nominal: at[1].x - at[0].x,
		series: name,
	});
}

/** A middle piece's stretches along the bar. */
interface Reach {
	readonly side: "left" | "right";
	/** The foot's outer and inner side. */
	readonly outer: number;
	readonly inner: number;
	/** The side of the channel. */
	readonly flank: number;
}

function reachOf({ foot, span }: Laid, stem: Stem, side: "left" | "right"): Reach {
	if (side === "left") return { side, outer: -foot / 2, inner: foot / 2, flank: stem.from };
	return { side, outer: span + foot / 2, inner: span - foot / 2, flank: stem.to };
}

function pieceOutline({ side, outer, inner, flank }: Reach, height: number): Path {
	const round = CORNER_RADIUS;
	const corners = [
		{ x: outer, y: 0 },
		{ x: inner, y: 0 },
		{ x: inner, y: RELIEF },
		{ x: flank, y: RELIEF },
		{ x: flank, y: height },
		{ x: outer, y: height, round },
	];
	return outlineOf(side === "left" ? corners : corners.reverse());
}

/** Promises of a middle piece: its foot, its place beside the channel, its heights. */
function pieceClaims(bench: Bench, laid: Laid, { side, outer, inner, flank }: Reach): SizeClaim[] {
	const { height, dowels } = laid;
	const over = (inner + flank) / 2;
	const length = (
		id: string,
		feature: string,
		datum: string,
		a: readonly [number, number],
		b: readonly [number, number],
		axis: "x" | "y",
	) => {
		const ends = [
			{ x: a[0], y: a[1] },
			{ x: b[0], y: b[1] },
		];
		const at = axis === "x" ? ends.sort((p, q) => p.x - q.x) : ends;
		const nominal = at[1]![axis] - at[0]![axis];
		return cutSize(bench, { id, kind: "length", feature, datum, axis, at, nominal });
	};
	const own = dowels?.[side === "left" ? 0 : 1];
	const near = own?.[side === "left" ? 1 : 0];
	const channel = "the channel";
	return [
		length("foot-width", "foot", "foot", [outer, RELIEF / 2], [inner, RELIEF / 2], "x"),
		length(
			"length",
			"outer side to the channel",
			"outer side",
			[outer, height / 2],
			[flank, height / 2],
			"x",
		),
		length("height", "piece", "foot", [(outer + inner) / 2, 0], [over, height], "y"),
		length(
			"height-over-relief",
			"piece over the relief",
			"relief",
			[over, RELIEF],
			[over, height],
			"y",
		),
		...(near
			? side === "left"
				? [between(bench, dowelName(2), channel, edgesOf(near, { ...near, x: flank, diameter: 0 }))]
				: [between(bench, channel, dowelName(3), edgesOf({ ...near, x: flank, diameter: 0 }, near))]
			: []),
	];
}

function piece(bench: Bench, laid: Laid, stem: Stem, side: "left" | "right", name: string): Part {
	const reach = reachOf(laid, stem, side);
	const own = numbered(laid.dowels).filter(({ n }) => (side === "left" ? n < 3 : n > 2));
	const dowels = dowelHoles(bench, own);
	const { hole } = laid;
	const hanging =
		hole && side === "right"
			? hangingHole(bench, hole, hole.diameter)
			: hangingHole(bench, { x: 0, y: 0 }, 0);
	const labels = pieceLabels(bench, laid, side);
	const [from, to] = [reach.outer, reach.inner].sort((a, b) => a - b);
	return {
		name: `${name}-${side}`,
		tool: "relief-bar",
		title: `Relief bar, middle piece ${side} of the stem`,
		stock: bench.stock,
		...(stem.layers > 1 && { layers: stem.layers }),
		marks: [
			...labels.flatMap((l) => l.marks),
			...hanging.marks,
			...dowels.marks,
			{ operation: "cut", path: pieceOutline(reach, laid.height), feature: "outline" },
		],
		workingEdge: "the underside of the foot",
		working: [line({ x: from!, y: 0 }, { x: to!, y: 0 })],
		claims: [
			...pieceClaims(bench, laid, reach),
			...dowels.claims,
			...hanging.claims,
			...labels.map((l) => l.claim),
		],
		notes: pieceNotes(laid, stem),
	};
}

/** The pieces left and right of the channel, which lie between two cheeks. */
export function middlePieces(bench: Bench, laid: Laid, name: string): Part[] {
	const { stem } = laid;
	if (!stem) return [];
	return (["left", "right"] as const).map((side) => piece(bench, laid, stem, side, name));
}
