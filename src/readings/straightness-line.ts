import {
	centreLine,
	crossingOf,
	dropAt,
	lineLength,
	type Neck,
	pointAlong,
	radiusAt,
	type Station,
	type StringLine,
	stringLines,
} from "../neck/index.js";

/** The line a straightedge lies along: a string by its number counts from the outer treble string, 1. */
export type ReadLine = "centre" | "bass" | "treble" | number;

/** The line a straightedge lies along, null for a string that the neck does not have. */
export function readLine(neck: Neck, along: ReadLine): StringLine | null {
	if (along === "centre") return centreLine(neck);
	if (!neck.strings) return null;
	const lines = stringLines(neck);
	if (along === "bass") return lines[0]!;
	if (along === "treble") return lines.at(-1)!;
	return Number.isInteger(along) && along > 0 ? (lines[lines.length - along] ?? null) : null;
}

/**
 * Where a station lies on a line, mm along it from the theoretical nut. `nut` is the nut's actual
 * face, where the board begins; a distance is taken along the line.
 *
 * @throws RangeError for a fret that the division does not have
 */
export function alongOf(neck: Neck, line: StringLine, station: Station): number {
	switch (station.kind) {
		case "nut":
			return neck.nutShift;
		case "saddle":
			return lineLength(line);
		case "last-fret":
			return crossingOf(neck, line, neck.frets).along;
		case "fret":
			return crossingOf(neck, line, station.fret).along;
		case "distance":
			return station.mm;
	}
}

/**
 * How high the board's own shape stands over the chord between two places of a line, mm: what a
 * straightedge on them reads too small. Negative in a hollow; 0 on a flat board.
 *
 * @param at - mm along the line, as `from` and `to`
 */
export function camberOver(
	neck: Neck,
	line: StringLine,
	from: number,
	to: number,
	at: number,
): number {
	if (neck.radius === "flat") return 0;
	const height = (along: number) => {
		const { x, y } = pointAlong(line, along);
		return -dropAt(radiusAt(neck, x)!, y);
	};
	const share = (at - from) / (to - from);
	return height(at) - (height(from) * (1 - share) + height(to) * share);
}
