import { stationText } from "../../fields/index.js";
import { arcSagitta } from "../../geometry/index.js";
import {
	isExtrapolated,
	type Neck,
	radiusAt,
	type Station,
	stationX,
	widthAt,
} from "../../neck/index.js";
import { fixed, MM_PER_INCH, trimmed } from "../../units/index.js";

/** Fret that halves the string where an octave has twelve steps. */
const OCTAVE = 12;

/** Where radii are given: nut, octave or middle fret, last fret, saddle. */
export function stationsOf({ frets, law }: Neck): Station[] {
	const twelve = (law.kind !== "equal" || law.steps === OCTAVE) && frets > OCTAVE;
	const fret = twelve ? OCTAVE : Math.round(frets / 2);
	return [
		{ kind: "nut" },
		...(fret > 0 && fret < frets ? [{ kind: "fret" as const, fret }] : []),
		{ kind: "last-fret" },
		{ kind: "saddle" },
	];
}

/** The radii as a grid, heads first, and what is to be said of them; null on a flat board. */
export function stationTexts(neck: Neck): { rows: string[][]; notes: string[] } | null {
	const { radius: profile } = neck;
	if (profile === "flat") return null;
	let beyond = false;
	const rows = stationsOf(neck).map((station) => {
		const x = stationX(neck, station);
		const [radius, width] = [radiusAt(neck, x)!, widthAt(neck, x)];
		const far = station.kind === "saddle" || isExtrapolated(profile, x);
		beyond ||= far;
		const fits = radius >= width / 2;
		return [
			`${stationText(station)}${far ? " *" : ""}`,
			fixed(x, 3),
			fits ? fixed(radius, 3) : "none",
			fits ? trimmed(radius / MM_PER_INCH, 2) : "none",
			fixed(width, 3),
			fits ? fixed(arcSagitta(radius, width), 3) : "none",
		];
	});
	return {
		rows: [["at", "from nut", "radius", "inch", "width", "sagitta"], ...rows],
		notes: [...(beyond ? ["* radius and width go on in a straight line."] : [])],
	};
}
