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

/**
 * The neck of a job's values, or all that its geometry forbids.
 *
 * The shape is sound by now; what is checked here needs several values at once.
 */
export function neckOf(values: NeckValues): Neck | Problem[] {
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
	const bare: Neck = {
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

function scaleOf({ scale }: NeckValues): Neck["scale"] {
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

function profileOf(neck: Neck, given: number | StationMap<number>): Profile {
	if (typeof given === "number") return constant(given);
	const knots = given.map(({ station, value }) => ({ x: stationX(neck, station), value }));
	return { knots: knots.sort((a, b) => a.x - b.x) };
}
