import type { Neck, Profile, Station } from "../neck/index.js";
import { stationX } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import type { Estimate } from "./estimate.js";
import { spreadOf } from "./spread.js";
import { lineThrough, meanOf, outOf, type Place, straight } from "./width-line.js";

/** Board widths read at one place, square to the centre line. */
export interface WidthPlace {
	readonly at: Station;
	readonly values: readonly number[];
}

export interface WidthReading {
	readonly places: readonly WidthPlace[];
	/** Step of the caliper. */
	readonly resolution: number;
}

/** One place against the fitted edges. */
export interface FittedWidth {
	/** From the theoretical nut. */
	readonly x: number;
	readonly mean: number;
	readonly count: number;
	readonly fitted: number;
	/** mean − fitted. */
	readonly residual: number;
	/** Whether it leaves the line of all the others by more than the readings allow. */
	readonly out: boolean;
}

/** The board's width: straight edges. */
export interface BoardWidth {
	readonly law: "constant" | "taper";
	/** In the order given. A place that is out stands beside the fit, not in it. */
	readonly places: readonly FittedWidth[];
	/** At the theoretical nut. */
	readonly atNut: Estimate;
	/** Growth per mm toward the saddle; null from one place. */
	readonly slope: Estimate | null;
	/** @param x - mm from the theoretical nut */
	readonly at: (x: number) => Estimate;
	/** For a neck: knots at the outermost places. */
	readonly profile: Profile;
	readonly notes: readonly Problem[];
}

const LEAST = 10;
const MOST = 200;
const MOST_RESOLUTION = 1;
/** Two places nearer than this tell no taper. */
const LEAST_APART = 20;
function widthProblems({ places, resolution }: WidthReading, neck: Neck): Problem[] {
	if (!(resolution > 0 && resolution <= MOST_RESOLUTION)) {
		const facts = { given: resolution, most: MOST_RESOLUTION };
		return [problem("width-resolution", ["width", "resolution"], facts)];
	}
	if (places.length === 0) return [problem("width-unread", ["width"])];
	return places.flatMap(({ at, values }, i) => {
		const path = ["width", i];
		if (at.kind === "fret" && !(at.fret >= 0 && at.fret <= neck.frets)) {
			const facts = { fret: at.fret, frets: neck.frets };
			return [problem("width-fret-not-on-neck", path, facts)];
		}
		if (values.length === 0) return [problem("width-unread", path)];
		return values.flatMap((given, k) =>
			given >= LEAST && given <= MOST
				? []
				: [problem("width-range", [...path, k], { given, least: LEAST, most: MOST })],
		);
	});
}

/** Places read twice are one place. */
function gathered(reading: WidthReading, neck: Neck): Place[] {
	const read = reading.places.map(({ at, values }) => ({ x: stationX(neck, at), values }));
	const xs = [...new Set(read.map(({ x }) => x))];
	return xs.map((x) => ({
		x,
		values: read.filter((place) => place.x === x).flatMap(({ values }) => values),
	}));
}

/**
 * The board's straight taper from widths at two places or more; from one place a constant width,
 * said in a note.
 *
 * A place leaves the line of the others where it is off it by more than four standard errors and what
 * two steps in each reading allow. From four places on, the only one without which the others lie on
 * a line is named and left out. Three places that lie on no
 * line do not tell which is out; that is said instead.
 *
 * @returns the width, or what is wrong with the readings, paths from `width`
 */
export function fitWidth(reading: WidthReading, neck: Neck): BoardWidth | Problem[] {
	const wrong = widthProblems(reading, neck);
	if (wrong.length > 0) return wrong;
	const { resolution } = reading;
	const places = gathered(reading, neck);
	if (places.length === 1) return constantWidth(places[0]!, resolution);
	const xs = places.map(({ x }) => x);
	const [first, last] = [Math.min(...xs), Math.max(...xs)];
	if (last - first < LEAST_APART) {
		const facts = { apart: last - first, least: LEAST_APART };
		return [problem("width-places-too-near", ["width"], facts)];
	}
	const out = outOf(places, resolution);
	const kept = places.filter((place) => place !== out);
	const { combine } = lineThrough(kept, resolution);
	const at = (x: number) => combine([1, x]);
	const fitted = places.map((place) => {
		const mean = meanOf(place.values);
		const { value } = at(place.x);
		return {
			x: place.x,
			mean,
			count: place.values.length,
			fitted: value,
			residual: mean - value,
			out: place === out,
		};
	});
	return {
		law: "taper",
		places: fitted,
		atNut: at(0),
		slope: combine([0, 1]),
		at,
		profile: { knots: [first, last].map((x) => ({ x, value: at(x).value })) },
		notes: notesOf(places, fitted, resolution),
	};
}

function constantWidth({ x, values }: Place, resolution: number): BoardWidth {
	const { mean, standard, low, high, count } = spreadOf(values, resolution);
	const width = { value: mean, standard, low, high };
	return {
		law: "constant",
		places: [{ x, mean, count, fitted: mean, residual: 0, out: false }],
		atNut: width,
		slope: null,
		at: () => width,
		profile: { knots: [{ x, value: mean }] },
		notes: [note("width-one-place", ["width"], { at: x })],
	};
}

function notesOf(
	places: readonly Place[],
	fitted: readonly FittedWidth[],
	resolution: number,
): Problem[] {
	const path = ["width"];
	const out = fitted.find((place) => place.out);
	if (out) {
		return [note("width-place-out", path, { at: out.x, width: out.mean, off: out.residual })];
	}
	if (places.length < 3 || straight(places, resolution)) return [];
	const off = Math.max(...fitted.map(({ residual }) => Math.abs(residual)));
	return [note("width-not-straight", path, { count: places.length, off })];
}
