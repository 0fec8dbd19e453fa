import { arcSagitta } from "../../geometry/index.js";
import { edgePoint, fretLine, type Neck, radiusAt, widthAt } from "../../neck/index.js";
import type { Bench } from "../tool.js";
import type { RailSettings } from "./settings.js";

/** The rails reach so far beyond where the sled bears over the board's edges, mm. */
const BEYOND = 10;

/** Where the board lies along the centre line, mm from the theoretical nut. */
export interface BoardEnds {
	readonly from: number;
	readonly to: number;
}

/** Farthest place of the last fret from the nut, on either edge, mm. */
export function lastFretReach(neck: Neck): number {
	const last = fretLine(neck, neck.frets);
	return Math.max(edgePoint(neck, last, -1).x, edgePoint(neck, last, 1).x);
}

/** The board from the foremost corner of its nut end to its far end. */
export function boardEnds(neck: Neck, s: RailSettings): BoardEnds {
	const nut = fretLine(neck, 0);
	const corners = ([-1, 1] as const).map((side) => edgePoint(neck, nut, side).x);
	return { from: Math.min(...corners) + Math.min(0, neck.nutShift), to: s["board-end"] };
}

/**
 * Greatest y/R at the board's edges: the sine of the angle from the centre of curvature; 0 of a
 * flat board. Width and radius are straight between their knots, so it is greatest at one.
 */
export function greatestShare(neck: Neck, { from, to }: BoardEnds): number {
	if (neck.radius === "flat") return 0;
	return Math.max(
		...placesOf(neck, { from, to }).map((x) => widthAt(neck, x) / 2 / radiusAt(neck, x)!),
	);
}

/** Both ends of the board, and the knots of width and radius between them. */
export function placesOf(neck: Neck, { from, to }: BoardEnds): number[] {
	const profiles = neck.radius === "flat" ? [neck.width] : [neck.width, neck.radius];
	const knots = profiles.flatMap((p) => p.knots.map((k) => k.x));
	return [from, ...knots.filter((x) => x > from && x < to), to];
}

/** One rail as it stands on the bench: x across the neck, y up from the bench. */
export interface Rail {
	readonly tag: "nut" | "end";
	/** Its middle on the centre line, mm from the theoretical nut. */
	readonly x: number;
	/** The board's at that place, drawn out along it; null on a flat board. */
	readonly board: number | null;
	/** Of the rail's edge; null of a level one. */
	readonly radius: number | null;
	readonly half: number;
	/** Height of its edge on the centre line. */
	readonly crown: number;
	/** Height of its edge at both ends. */
	readonly side: number;
}

/**
 * A rail at a place. Its edge is the board's own surface drawn out to there and lifted by h:
 * parallel surfaces of a cone keep its half angle, so that a section of radius R(x) becomes one
 * of R(x) + h with the same centre. Points of both correspond at equal angle from that centre: over
 * a board's edge at y the sled bears at (R + h)·y/R.
 */
export function railAt(bench: Bench, s: RailSettings, tag: Rail["tag"], ends: BoardEnds): Rail {
	const { neck } = bench;
	const x = tag === "nut" ? ends.from - s["before-nut"] : ends.to + s["past-end"];
	const board = radiusAt(neck, x);
	const radius = board === null ? null : board + s["rail-height"];
	const half =
		radius === null
			? Math.max(...placesOf(neck, ends).map((place) => widthAt(neck, place))) / 2 + BEYOND
			: radius * greatestShare(neck, ends) + BEYOND;
	const crown = s["foot-height"] + s["rail-height"];
	const fits = radius !== null && radius > 0 && half <= radius;
	const side = fits ? crown - arcSagitta(radius, 2 * half) : crown;
	return { tag, x, board, radius, half, crown, side };
}
