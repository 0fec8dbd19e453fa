import { lawOf, type StationMap } from "../fields/index.js";
import {
	constant,
	fannedGuides,
	type Neck,
	type Profile,
	type Strings,
	singleScaleGuides,
	stationX,
} from "../neck/index.js";
import type { Problem } from "../problem/index.js";
import { markersOf } from "./markers.js";
import { neckProblems, profileProblems, valueProblems } from "./neck-checks.js";
import type { NeckValues } from "./schema.js";

/** A neck's values with a scale, be it told or read. */
export type ScaledValues = NeckValues & { readonly scale: NonNullable<NeckValues["scale"]> };

/** A neck's values with all that a neck is built from. */
export type SoundValues = ScaledValues & {
	readonly radius: NonNullable<NeckValues["radius"]>;
	readonly width: NonNullable<NeckValues["width"]>;
};

/**
 * The neck of a job's values, or all that its geometry forbids.
 *
 * The shape is sound by now; what is checked here needs several values at once.
 */
export function neckOf(values: SoundValues): Neck | Problem[] {
	const bare = bareNeckOf(values);
	if (Array.isArray(bare)) return bare;
	const stations = profileProblems(bare, values);
	if (stations.length > 0) return stations;
	const neck: Neck = {
		...bare,
		radius: values.radius === "flat" ? "flat" : profileOf(bare, values.radius),
		width: profileOf(bare, values.width),
	};
	const found = neckProblems(neck);
	return found.length > 0 ? found : neck;
}

/** The frets of a neck without its board: flat, and of no width of its own. */
export function bareNeckOf(values: ScaledValues): Neck | Problem[] {
	const scale = scaleOf(values);
	const shorter = Math.min(scale.bass, scale.treble);
	const strings = stringsOf(values);
	const law = lawOf(values.division, shorter);
	const early = valueProblems(values, law, strings);
	if (early.length > 0) return early;

	const trebleSide = values.handed === "left" ? -1 : 1;
	const guides =
		scale.bass !== scale.treble && strings
			? fannedGuides(scale, law, strings, trebleSide)
			: singleScaleGuides(scale.bass, strings, trebleSide);
	return {
		frets: values.frets,
		law,
		guides,
		scale,
		trebleSide,
		zeroFret: values["zero-fret"],
		nutShift: values["nut-shift"],
		scaleUncertainty: values["scale-uncertainty"],
		radius: "flat",
		width: constant(1),
		binding: values.binding,
		strings,
		markers: markersOf(values),
	};
}

function scaleOf({ scale }: ScaledValues): Neck["scale"] {
	if (typeof scale === "number") return { bass: scale, treble: scale, squareFret: 0 };
	return { bass: scale.bass, treble: scale.treble, squareFret: scale["square-fret"] };
}

function stringsOf({ strings }: NeckValues): Strings | null {
	if (!strings) return null;
	return {
		count: strings.count ?? strings.courses ?? 1,
		pairGap: strings["pair-gap"] ?? 0,
		atNut: strings["at-nut"],
		atSaddle: strings["at-saddle"],
	};
}

export function profileOf(neck: Neck, given: number | StationMap<number>): Profile {
	if (typeof given === "number") return constant(given);
	const knots = given.map(({ station, value }) => ({ x: stationX(neck, station), value }));
	return { knots: knots.sort((a, b) => a.x - b.x) };
}
