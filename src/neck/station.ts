import { fretLine, type Neck, saddleLine } from "./neck.js";

/** A place along the neck as a job names it. */
export type Station =
	| { readonly kind: "nut" | "last-fret" | "saddle" }
	| { readonly kind: "fret"; readonly fret: number }
	| { readonly kind: "distance"; readonly mm: number };

/**
 * Where a station lies on the centre line, mm from the theoretical nut.
 *
 * @throws RangeError for a fret that the division does not have
 */
export function stationX(neck: Neck, station: Station): number {
	switch (station.kind) {
		case "nut":
			return 0;
		case "saddle":
			return saddleLine(neck).x;
		case "last-fret":
			return fretLine(neck, neck.frets).x;
		case "fret":
			return fretLine(neck, station.fret).x;
		case "distance":
			return station.mm;
	}
}
