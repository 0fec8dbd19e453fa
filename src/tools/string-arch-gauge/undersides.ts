import type { Point } from "../../geometry/index.js";
import {
	crossingOf,
	dropAt,
	type FretLine,
	fretLine,
	lineLength,
	type Neck,
	pointAlong,
	radiusAt,
	type Station,
	type StringLine,
	saddleLine,
	stationX,
	stringLines,
} from "../../neck/index.js";
import { circleFitGeometric } from "../../readings/index.js";
import type { Bench } from "../tool.js";
import type { ArchSettings } from "./settings.js";

/** What the heights of the strings follow from, mm. */
export type Wanted = Pick<
	ArchSettings,
	"action-bass" | "action-treble" | "action-fret" | "nut-clearance"
>;

/** The line across the strings at a station: along a fret or the saddle, else square to the centre line. */
function lineAt(neck: Neck, station: Station): FretLine {
	switch (station.kind) {
		case "nut":
			return fretLine(neck, 0);
		case "saddle":
			return saddleLine(neck);
		case "last-fret":
			return fretLine(neck, neck.frets);
		case "fret":
			return fretLine(neck, station.fret);
		case "distance":
			return { n: Number.NaN, x: stationX(neck, station), lean: 0 };
	}
}

/** Height of the crowns' level at a place over the top of the board's centre line, mm. */
function crownLevel({ neck, wire }: Bench, { x, y }: Point): number {
	const board = radiusAt(neck, x);
	return wire.crownHeight - (board === null ? 0 : dropAt(board + wire.crownHeight, y));
}

/** Where a string meets a line across it, as its share from the theoretical nut to the saddle. */
function shareAt({ nut, saddle }: StringLine, across: FretLine): number {
	const [dx, dy] = [saddle.x - nut.x, saddle.y - nut.y];
	return (across.x + nut.y * across.lean - nut.x) / (dx - dy * across.lean);
}

/**
 * The undersides of all strings at a station, bass first: x along the line across them, y over the top
 * of the board's centre line, mm.
 *
 * Every string is straight: at the nut's face it stands the clearance over the crowns' level, at the
 * action's fret the action over the crown under it; between the outer strings the action changes
 * evenly across that fret. Crown tops are parallel to the board, so their radius is its own and the
 * crown's height.
 *
 * @throws RangeError where the crowns' arch does not reach as far out as the strings
 */
export function undersides(bench: Bench, wanted: Wanted, station: Station): Point[] {
	const { neck } = bench;
	const lines = stringLines(neck);
	const held = lineAt(neck, station);
	const over = lines.map((line) => crossingOf(neck, line, wanted["action-fret"]));
	const [bass, treble] = [over[0]!.at.y, over.at(-1)!.at.y];
	return lines.map((line, i) => {
		const { at, along } = over[i]!;
		const part = (at.y - bass) / (treble - bass);
		const action = wanted["action-bass"] + part * (wanted["action-treble"] - wanted["action-bass"]);
		const start = crownLevel(bench, pointAlong(line, neck.nutShift)) + wanted["nut-clearance"];
		const slope = (crownLevel(bench, at) + action - start) / (along - neck.nutShift);
		const place = shareAt(line, held) * lineLength(line);
		const { y } = pointAlong(line, place);
		return { x: y * Math.hypot(1, held.lean), y: start + slope * (place - neck.nutShift) };
	});
}

/** The arch through strings' undersides. */
export interface Arch {
	/** Of the circle nearest to all of them, below 0 where they lie in a hollow; infinite in a line. */
	readonly radius: number;
	/** From the lowest string to the highest, straight, mm. */
	readonly spread: number;
	/** Farthest that an underside lies beside the circle, mm. */
	readonly beside: number;
}

/** The circle through undersides, by least squared distances: three lie on it, more nearly so. */
export function archThrough(points: readonly Point[]): Arch {
	const { curvature, residuals } = circleFitGeometric(points);
	const [a, b] = [points[0]!, points.at(-1)!];
	return {
		radius: 1 / curvature,
		spread: Math.hypot(b.x - a.x, b.y - a.y),
		beside: Math.max(...residuals.map(Math.abs)),
	};
}
