import {
	distanceTo,
	type Path,
	pointAt,
	type Segment,
	segmentLength,
	segments,
	tangentAt,
} from "../geometry/index.js";

/** Where a tab may stand on a contour. */
export interface TabPlace {
	/** Of the contour. */
	readonly segment: number;
	/** Way along the contour to the tab's middle, mm. */
	readonly along: number;
	/** To the nearest working edge, mm. */
	readonly clear: number;
}

/** What tabs must keep to, mm. */
export interface TabRules {
	/** Length of a gap in the contour, from end to end. */
	readonly gap: number;
	/** Least distance from the contour to a working edge. */
	readonly off: number;
	readonly working: readonly Path[];
}

/** From a tab's end to the end of its segment, mm: a stub in a corner cannot be dressed. */
const FROM_CORNER = 1;
/** Arcs below this radius are corners, mm. */
const GENTLE = 10;
/** Between neighbouring places that are tried, mm. */
const STEP = 0.5;
/** Between the points of a tab whose distance from a working edge is looked at, mm. */
const LOOK = 0.1;
/** Turns below this are none, radians: rounding. */
const STRAIGHT_ON = 1e-6;

/** How far along a segment a gap reaches: on an arc its ends are `gap` apart straight across. */
export function gapAlong(piece: Segment, gap: number): number {
	return piece.kind === "line" ? gap : 2 * piece.radius * Math.asin(gap / 2 / piece.radius);
}

/**
 * Every place, half a millimetre apart, at which a tab may stand: on a line or a gentle arc, a
 * millimetre clear of its ends, off the working edges, and not in a notch.
 */
export function tabPlaces(contour: Path, rules: TabRules): TabPlace[] {
	const all = segments(contour);
	const working = rules.working.flatMap(segments);
	let start = 0;
	return all.flatMap((piece, segment) => {
		const from = start;
		const size = segmentLength(piece);
		start += size;
		if (piece.kind === "arc" && piece.radius < Math.max(GENTLE, rules.gap)) return [];
		const half = gapAlong(piece, rules.gap) / 2;
		const free = size - 2 * (half + FROM_CORNER);
		if (free < 0 || isInNotch(all, segment)) return [];
		const count = Math.ceil(free / STEP);
		return Array.from({ length: count + 1 }, (_, k): TabPlace => {
			const s = half + FROM_CORNER + (count === 0 ? 0 : (free * k) / count);
			const clear = clearOf(piece, (s - half) / size, (s + half) / size, working);
			return { segment, along: from + s, clear };
		}).filter(({ clear }) => clear >= rules.off);
	});
}

/** Least distance between a stretch of a segment and some others, mm: never more than it is. */
function clearOf(piece: Segment, from: number, to: number, others: readonly Segment[]): number {
	if (others.length === 0) return Number.POSITIVE_INFINITY;
	const size = segmentLength(piece) * (to - from);
	const count = Math.ceil(size / LOOK);
	let least = Number.POSITIVE_INFINITY;
	for (let k = 0; k <= count; k++) {
		const p = pointAt(piece, from + ((to - from) * k) / count);
		for (const other of others) least = Math.min(least, distanceTo(other, p));
	}
	// Between two points looked at it may be nearer by half the way between them.
	return least - size / count / 2;
}

/** Whether a segment is a side or the floor of a notch: the contour turns right at an end of it. */
function isInNotch(all: readonly Segment[], i: number): boolean {
	const n = all.length;
	const [before, piece, after] = [all[(i + n - 1) % n]!, all[i]!, all[(i + 1) % n]!];
	return turnsRight(before, piece, before) || turnsRight(piece, after, after);
}

/** Whether a contour turns right between two segments: at a corner, or along the arc beside it. */
function turnsRight(first: Segment, second: Segment, beside: Segment): boolean {
	const [a, b] = [tangentAt(first, 1), tangentAt(second, 0)];
	const turn = Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
	if (Math.abs(turn) > STRAIGHT_ON) return turn < 0;
	return beside.kind === "arc" && beside.sweep < 0;
}
