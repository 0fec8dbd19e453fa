import {
	circle,
	contains,
	distance,
	type Extents,
	extents,
	grown,
	moved,
	type Path,
	type Point,
	rectangle,
	SegmentGrid,
	segments,
} from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { type Ink, inkOf, strokes, TEXT, writing } from "./ink.js";
import { outlineOf } from "./outline.js";
import type { LaidOut } from "./sheet-of-many.js";

/** Least radius of the ring around a number, mm. */
const RING = 2.4;
/** Least distance between a ring and what is drawn beside it, or its number, mm. */
const CLEAR = 0.6;
/** Places looked at for a number, at most, and how near to each other at least, mm. */
const MOST_PLACES = 10_000;
const LEAST_STEP = 0.5;

/** A ring around a number. */
interface Ring {
	readonly at: Point;
	readonly radius: number;
}

/** Every part's number in a ring, clear of all that the machine does. */
export function partNumbers({ placed, bed }: LaidOut, letters: Lettering): Ink {
	const paths = placed.flatMap(({ part, move }) => part.marks.map((m) => moved(m.path, move)));
	const edges = rectangle(0, 0, bed.x, bed.y);
	const grid = new SegmentGrid([...paths, edges].flatMap(segments), RING + CLEAR);
	const outlines = placed.map(({ part, move }) => moved(outlineOf(part), move));
	const rings: Ring[] = [];
	return inkOf(
		...outlines.map((outline, i) => {
			const text = String(i + 1);
			const radius = Math.max(RING, Math.hypot(letters.width(text, TEXT), TEXT) / 2 + CLEAR);
			const isFree = (p: Point) =>
				rings.every((r) => distance(r.at, p) > r.radius + radius + CLEAR) &&
				grid.clearance(p, radius + CLEAR) !== null;
			const isOthers = (p: Point) =>
				!contains(edges, p) || outlines.some((o) => o !== outline && contains(o, p));
			const at = numberPlace(outline, radius, isFree, isOthers);
			rings.push({ at, radius });
			return inkOf(
				strokes(`number ${text}`, circle(at, radius)),
				writing(letters, text, { x: at.x, y: at.y - TEXT / 2 }, { align: "centre" }),
			);
		}),
	);
}

/**
 * Where a part's number goes: the free place within its outline that is nearest to the lower left
 * corner of its box, or else the nearest one beside it, or else that corner.
 */
function numberPlace(
	outline: Path,
	radius: number,
	isFree: (p: Point) => boolean,
	isOthers: (p: Point) => boolean,
): Point {
	const box = extents(outline);
	const corner = { x: box.minX + radius, y: box.minY + radius };
	return (
		nearestPlace(box, corner, (p) => isFree(p) && contains(outline, p)) ??
		nearestPlace(grown(box, 3 * radius), corner, (p) => isFree(p) && !isOthers(p)) ??
		corner
	);
}

/** Of the places spread over a box the nearest to a point that is fit, or null. */
function nearestPlace(box: Extents, near: Point, isFit: (p: Point) => boolean): Point | null {
	const far = (p: Point) => distance(p, near);
	for (const ring of ringsOf(box, near)) {
		const place = ring?.sort((a, b) => far(a) - far(b)).find(isFit);
		if (place) return place;
	}
	return null;
}

/** Places spread over a box in rings around a point, from the inside out; some may be empty. */
function ringsOf({ minX, minY, maxX, maxY }: Extents, centre: Point): (Point[] | undefined)[] {
	const [width, height] = [maxX - minX, maxY - minY];
	const step = Math.max(LEAST_STEP, Math.sqrt((width * height) / MOST_PLACES));
	const rings: (Point[] | undefined)[] = [];
	for (let x = minX + step / 2; x < maxX; x += step) {
		for (let y = minY + step / 2; y < maxY; y += step) {
			const place = { x, y };
			const ring = Math.floor(distance(place, centre) / step);
			rings[ring] ??= [];
			rings[ring].push(place);
		}
	}
	return rings;
}
