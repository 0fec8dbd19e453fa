import { type Ink, inkOf, NOTHING, stroke, strokes, TEXT, writing } from "../../drawing/index.js";
import {
	circle,
	type Extents,
	extentsOfPoints,
	open,
	type Point,
	vertex,
} from "../../geometry/index.js";
import type { Lettering } from "../../lettering/index.js";
import {
	edgePoint,
	type FretLine,
	fretLine,
	fretNumbers,
	type Neck,
	pointOnFret,
	saddleLine,
	widthAt,
} from "../../neck/index.js";
import { fixed } from "../../units/index.js";
import { type MarkerCentre, markerCentres } from "../marker-centres.js";
import type { Bench } from "../tool.js";
import { HANG, type Line } from "./lines.js";

/** Radius of a marker as drawn on the neck, mm (common practice, no source). */
const MARKER = 3;
/** The saddle is drawn this far beyond the outer strings, mm. */
const BEYOND = 4;
/** Strip over and under the board for its names and the numbers of frets, mm. */
const NAMES = 4.2;
/** Between the picture and what stands below it, mm. */
const UNDER = 1;
/** From the board to a text beside it, mm. */
const AIR = 1;
/** Between two numbers of frets, mm. */
const BETWEEN = 1;

/** The neck as it lies: everything in its own millimetres. */
interface Shape {
	readonly nuts: readonly FretLine[];
	readonly frets: readonly FretLine[];
	readonly edges: readonly (readonly Point[])[];
	readonly saddle: readonly [Point, Point];
	readonly end: Point;
	readonly markers: readonly MarkerCentre[];
	readonly box: Extents;
}

function shapeOf(bench: Bench): Shape {
	const { neck } = bench;
	const nut = fretLine(neck, 0);
	const face: FretLine = { ...nut, x: nut.x + neck.nutShift };
	const nuts = [...(neck.zeroFret ? [] : [nut]), ...(neck.nutShift === 0 ? [] : [face])];
	const frets = fretNumbers(neck).map((n) => fretLine(neck, n));
	const first = neck.nutShift < 0 ? face : nut;
	const edges = ([-1, 1] as const).map((side) => edgeOf(neck, first, frets.at(-1)!, side));
	const saddle = saddleOf(neck);
	const last = frets.at(-1)!;
	return {
		nuts,
		frets,
		edges,
		saddle,
		end: pointOnFret(last, 0),
		markers: markerCentres(neck),
		box: extentsOfPoints([...edges.flat(), ...saddle]),
	};
}

/** One edge of the board from the nut to the last fret. */
function edgeOf(neck: Neck, first: FretLine, last: FretLine, side: 1 | -1): Point[] {
	const [from, to] = [edgePoint(neck, first, side), edgePoint(neck, last, side)];
	const bends = neck.width.knots.filter(({ x }) => x > from.x + 1e-6 && x < to.x - 1e-6);
	const sign = side * neck.trebleSide;
	return [from, ...bends.map(({ x }) => ({ x, y: (sign * widthAt(neck, x)) / 2 })), to];
}

/** The saddle's line, a little wider than the strings or, without any, than the last fret. */
function saddleOf(neck: Neck): [Point, Point] {
	const line = saddleLine(neck);
	const last = fretLine(neck, neck.frets);
	const half = neck.strings ? neck.strings.atSaddle / 2 + BEYOND : widthAt(neck, last.x) / 2;
	return [pointOnFret(line, -half), pointOnFret(line, half)];
}

/** Least room that a picture is drawn in, mm. */
export const LEAST_PICTURE = 60;

/**
 * A picture of the whole neck from nut to saddle, as large as the width allows but not over 1:1,
 * its scale written over it. The treble side lies above on a right-handed neck, below on a left-handed.
 */
export function pictureLine(bench: Bench, width: number): Line {
	const { letters, neck } = bench;
	const shape = shapeOf(bench);
	const { box } = shape;
	const nutName = neck.nutShift !== 0 || !neck.zeroFret ? "nut" : "";
	const left = nutName === "" ? 0 : letters.width(nutName, TEXT) + AIR;
	// Rounded up to a tenth, so that the scale that is written is the scale that is drawn.
	const tenths = Math.ceil(((box.maxX - box.minX) / (width - left)) * 10 - 1e-9);
	const scale = Math.max(1, tenths / 10);
	const high = (box.maxY - box.minY) / scale;
	const size = high + 2 * NAMES + UNDER;
	return {
		size,
		ink: (corner) => {
			const top = corner.y - NAMES;
			const at = ({ x, y }: Point): Point => ({
				x: corner.x + left + (x - box.minX) / scale,
				y: top - (box.maxY - y) / scale,
			});
			return inkOf(
				drawn(neck, shape, at, scale),
				names(bench, shape, at, corner, { width, size, scale, nutName }),
			);
		},
	};
}

function drawn(neck: Neck, shape: Shape, at: (p: Point) => Point, scale: number): Ink {
	const across = (feature: string, line: FretLine) =>
		stroke(feature, at(edgePoint(neck, line, -1)), at(edgePoint(neck, line, 1)));
	const edge = (points: readonly Point[]) =>
		open(...points.map(at).map(({ x, y }) => vertex(x, y)));
	const [low, high] = shape.saddle;
	return inkOf(
		strokes("picture of the board", ...shape.edges.map(edge)),
		...shape.nuts.map((nut) => across("picture of the nut", nut)),
		...shape.frets.map((fret) => across(`picture of fret ${fret.n}`, fret)),
		...shape.markers.map((m) =>
			strokes(`picture of ${m.feature}`, circle(at(m.at), MARKER / scale)),
		),
		stroke("picture of the saddle", at(low), at(high)),
		stroke("picture of the centre line", at(shape.end), at({ x: saddleLine(neck).x, y: 0 })),
	);
}

interface Frame {
	readonly width: number;
	readonly size: number;
	readonly scale: number;
	readonly nutName: string;
}

/** What the picture says: its scale, the two sides, nut and saddle, the numbers of some frets. */
function names(
	{ letters, neck }: Bench,
	shape: Shape,
	at: (p: Point) => Point,
	corner: Point,
	{ width, size, scale, nutName }: Frame,
): Ink {
	const sides = neck.trebleSide === 1 ? ["treble side", "bass side"] : ["bass side", "treble side"];
	const [over, under] = [corner.y - TEXT - AIR / 2, corner.y - size + UNDER + HANG * TEXT];
	const left = at({ x: shape.box.minX, y: 0 });
	const right = corner.x + width;
	const free = left.x + letters.width(sides[1]!, TEXT) + 2 * BETWEEN;
	const saddle = Math.min(right, at(shape.saddle[0]).x + letters.width("saddle", TEXT) / 2);
	const until = saddle - letters.width("saddle", TEXT) - BETWEEN;
	return inkOf(
		writing(letters, sides[0]!, { x: left.x, y: over }),
		writing(letters, sides[1]!, { x: left.x, y: under }),
		writing(
			letters,
			`picture 1:${fixed(scale, 1)}, not for measuring`,
			{ x: right, y: over },
			{ align: "right" },
		),
		nutName === ""
			? NOTHING
			: writing(letters, nutName, { x: left.x - AIR, y: left.y - TEXT / 2 }, { align: "right" }),
		writing(letters, "saddle", { x: saddle, y: under }, { align: "right" }),
		fretNames(letters, neck, at, { from: free, to: until, y: under }),
	);
}

/** The numbers of the frets with markers and of the last, as far as there is room. */
function fretNames(
	letters: Lettering,
	neck: Neck,
	at: (p: Point) => Point,
	{ from, to, y }: { readonly from: number; readonly to: number; readonly y: number },
): Ink {
	const wanted = [neck.frets, ...neck.markers.map(({ fret }) => fret)];
	const taken: [number, number][] = [];
	return inkOf(
		...[...new Set(wanted)].map((n) => {
			const text = String(n);
			const half = letters.width(text, TEXT) / 2;
			const fret = fretLine(neck, n);
			const low = ([-1, 1] as const)
				.map((side) => edgePoint(neck, fret, side))
				.reduce((a, b) => (a.y < b.y ? a : b));
			const { x } = at(low);
			const [a, b] = [x - half, x + half];
			const free = taken.every(([p, q]) => b + BETWEEN <= p || a - BETWEEN >= q);
			if (!free || a < from || b > to) return NOTHING;
			taken.push([a, b]);
			return writing(letters, text, { x, y }, { align: "centre" });
		}),
	);
}
