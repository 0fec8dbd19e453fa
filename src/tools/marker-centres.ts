import { lengthField } from "../fields/index.js";
import type { Point } from "../geometry/index.js";
import { fretLine, type Neck, pointOnFret, widthAt } from "../neck/index.js";
import type { Unit } from "../units/index.js";

/** Between the two centres of a double marker, as a share of the board's width (common practice, no source). */
const USUAL_SPREAD = 0.4;

/** How far apart the centres of double markers are, for every tool that shows them. */
export function doubleSpreadField(unit: Unit) {
	return lengthField(
		unit,
		{ above: 0, to: 100 },
		{
			text: "Between the two centres of a double marker",
			derived: "two fifths of the board's width there",
		},
	).optional();
}

/** Centre of a marker, or of one of a double one. */
export interface MarkerCentre {
	readonly fret: number;
	readonly id: string;
	/** As people call it: "marker 12 bass". */
	readonly feature: string;
	readonly at: Point;
}

/**
 * Marker centres: midway between a fret and the one before, along the neck.
 *
 * @param spread - between the two centres of a double marker, mm
 */
export function markerCentres(neck: Neck, spread?: number): MarkerCentre[] {
	return neck.markers.flatMap(({ fret, double }) => {
		const here = fretLine(neck, fret);
		const before = fretLine(neck, fret - 1);
		const centre = (y: number): Point => ({
			x: (pointOnFret(here, y).x + pointOnFret(before, y).x) / 2,
			y,
		});
		const feature = `marker ${fret}`;
		if (!double) return [{ fret, id: `marker-${fret}`, feature, at: centre(0) }];
		const middle = (here.x + before.x) / 2;
		const half = (spread ?? widthAt(neck, middle) * USUAL_SPREAD) / 2;
		return (["bass", "treble"] as const).map((side) => ({
			fret,
			id: `marker-${fret}-${side}`,
			feature: `${feature} ${side}`,
			at: centre((side === "bass" ? -half : half) * neck.trebleSide),
		}));
	});
}
