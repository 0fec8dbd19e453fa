import type { Marker } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { NeckValues } from "./schema.js";

/** Markers of a job: a bare fret is a single one, `{12: double}` says which. */
export function markersOf({ markers }: NeckValues): Marker[] {
	return markers.flatMap((entry) =>
		typeof entry === "number"
			? [{ fret: entry, double: false }]
			: Object.entries(entry).map(([fret, kind]) => ({
					fret: Number(fret),
					double: kind === "double",
				})),
	);
}

/** Every marker stands at a fret of the neck, one at each. */
export function markerProblems(values: NeckValues): Problem[] {
	const seen = new Set<number>();
	return values.markers.flatMap((entry, i) =>
		markersOf({ ...values, markers: [entry] }).flatMap(({ fret }) => {
			const path = ["neck", "markers", i];
			if (fret > values.frets) {
				return [problem("marker-beyond", path, { fret, frets: values.frets })];
			}
			if (seen.has(fret)) return [problem("marker-twice", path, { fret })];
			seen.add(fret);
			return [];
		}),
	);
}
