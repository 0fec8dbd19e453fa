import { type Extents, segmentExtents, segments } from "../geometry/index.js";
import type { TilePage } from "./print-page.js";
import { boxInPart } from "./print-tiles.js";
import type { ReadStroke } from "./types.js";

/** How far a seam keeps from corners and from lines that run beside it, mm. */
const CLEAR = 0.002;
/** Steps in which a clear place for a seam is looked for, mm, and how many. */
const STEP = 0.005;
const STEPS = 100;
/** Two sides nearer than this are one seam, mm. */
const ONE = 1e-6;
/** How far beyond a part's outermost sides its strokes are still taken, mm. */
const BEYOND = 10;

type Axis = "x" | "y";

/** Of each page the piece of its part that is taken from it, in the part's frame. */
export interface Pieces {
	readonly boxes: readonly Extents[];
	/** Coordinates of the seams. */
	readonly seams: Readonly<Record<Axis, readonly number[]>>;
}

interface Side {
	readonly axis: Axis;
	readonly key: keyof Extents;
	readonly opposite: keyof Extents;
	readonly out: 1 | -1;
}

const SIDES: readonly Side[] = [
	{ axis: "x", key: "minX", opposite: "maxX", out: -1 },
	{ axis: "x", key: "maxX", opposite: "minX", out: 1 },
	{ axis: "y", key: "minY", opposite: "maxY", out: -1 },
	{ axis: "y", key: "maxY", opposite: "minY", out: 1 },
];

/**
 * Boxes up to the seams, which are moved off corners and lines along them within what both pages
 * show: numbers of 32 bits would put such a line on either side, or on both.
 *
 * @param work - what each page shows of the part, in the part's frame
 */
export function seamPieces(
	pages: readonly TilePage[],
	work: readonly (readonly ReadStroke[])[],
): Pieces {
	const own = pages.map(({ tile }) => boxInPart(tile, tile.own));
	const windows = pages.map(({ tile }) => boxInPart(tile, tile.window));
	const boxes = work.flat().flatMap(({ path }) => segments(path).map(segmentExtents));
	const placed: Record<Axis, Map<number, number>> = { x: new Map(), y: new Map() };
	const placeOf = (axis: Axis, at: number) => {
		const known = [...placed[axis].keys()].find((seam) => Math.abs(seam - at) < ONE);
		if (known !== undefined) return placed[axis].get(known)!;
		const place = clearPlace(at, roomAt(axis, at, own, windows), valuesOf(axis, boxes));
		placed[axis].set(at, place);
		return place;
	};
	return {
		boxes: own.map((box) => {
			const result = { ...box } as Record<keyof Extents, number>;
			for (const { axis, key, opposite, out } of SIDES) {
				const isSeam = own.some((b) => b !== box && Math.abs(b[opposite] - box[key]) < ONE);
				result[key] = isSeam ? placeOf(axis, box[key]) : box[key] + out * BEYOND;
			}
			return result;
		}),
		seams: { x: [...placed.x.values()], y: [...placed.y.values()] },
	};
}

/** How far past a seam all pages beside it show the part, mm. */
function roomAt(
	axis: Axis,
	at: number,
	own: readonly Extents[],
	windows: readonly Extents[],
): number {
	const rooms = own.flatMap((box, i) =>
		SIDES.filter((side) => side.axis === axis && Math.abs(box[side.key] - at) < ONE).map(
			({ key, out }) => out * (windows[i]![key] - box[key]),
		),
	);
	return Math.max(0, Math.min(...rooms));
}

function valuesOf(axis: Axis, boxes: readonly Extents[]): number[] {
	return boxes.flatMap((b) => (axis === "x" ? [b.minX, b.maxX] : [b.minY, b.maxY]));
}

function clearPlace(at: number, room: number, values: readonly number[]): number {
	const near = values.filter((v) => Math.abs(v - at) <= STEPS * STEP + CLEAR);
	for (let i = 0; i <= STEPS; i++) {
		if (i * STEP >= room) break;
		for (const place of [at + i * STEP, at - i * STEP]) {
			if (!near.some((v) => Math.abs(v - place) < CLEAR)) return place;
		}
	}
	return at;
}
