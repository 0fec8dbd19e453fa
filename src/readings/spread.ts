import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import { estimate } from "./statistics.js";

/** Some readings of one thing. */
export interface Spread {
	readonly mean: number;
	/** Standard error of the mean. */
	readonly standard: number;
	/** Ends of the mean's 95 % interval. */
	readonly low: number;
	readonly high: number;
	/** Greatest reading less the least. */
	readonly spread: number;
	readonly count: number;
}

/**
 * Mean of some readings of one thing, with its interval by Student's t. A reading to a step r has a
 * standard error of r/√12 at least, however well the readings agree; where that decides, the
 * interval is the normal one.
 *
 * @param readings - one or more
 * @param resolution - step of the instrument, greater than 0
 * @throws RangeError without readings or resolution
 * @example spreadOf([2.6, 2.7], 0.1) // mean 2.65, standard 0.05, spread 0.1
 */
export function spreadOf(readings: readonly number[], resolution: number): Spread {
	const count = readings.length;
	if (count === 0 || !(resolution > 0)) throw new RangeError("no readings, or no resolution");
	const mean = readings.reduce((sum, reading) => sum + reading, 0) / count;
	const squares = readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0);
	const scatter = count > 1 ? squares / (count - 1) : 0;
	const floor = resolution ** 2 / 12;
	const df = scatter > floor ? count - 1 : Number.POSITIVE_INFINITY;
	const { standard, low, high } = estimate(mean, Math.sqrt(Math.max(scatter, floor) / count), df);
	return {
		mean,
		standard,
		low,
		high,
		spread: Math.max(...readings) - Math.min(...readings),
		count,
	};
}

/** What may be read at a wire. */
export type WireSize = "crownWidth" | "crownHeight" | "tangWidth" | "tangDepth";

/** Caliper readings at some places of the wire. */
export interface WireReading extends Partial<Readonly<Record<WireSize, readonly number[]>>> {
	readonly resolution: number;
}

/** The wire as read; only what was read. */
export interface WireFit {
	readonly sizes: Partial<Readonly<Record<WireSize, Spread>>>;
	readonly notes: readonly Problem[];
}

/** Names as a job writes them, and what any fret wire keeps within, mm. */
const WIRE: Readonly<Record<WireSize, { key: string; name: string; least: number; most: number }>> =
	{
		crownWidth: { key: "crown-width", name: "crown width", least: 0.5, most: 8 },
		crownHeight: { key: "crown-height", name: "crown height", least: 0.1, most: 4 },
		tangWidth: { key: "tang-width", name: "tang width", least: 0.2, most: 2 },
		tangDepth: { key: "tang-depth", name: "tang depth", least: 0.5, most: 6 },
	};

const MOST_RESOLUTION = 0.1;
/** Readings that differ by more steps than this are not one wire, or not one place of it. */
const MOST_STEPS = 10;

/**
 * The wire from readings at some places.
 *
 * @returns sizes and notes, or what is wrong with the readings, paths from `wire`
 */
export function fitWire(reading: WireReading): WireFit | Problem[] {
	const { resolution } = reading;
	if (!(resolution > 0 && resolution <= MOST_RESOLUTION)) {
		const facts = { given: resolution, most: MOST_RESOLUTION };
		return [problem("wire-resolution", ["wire", "resolution"], facts)];
	}
	const read = (Object.keys(WIRE) as WireSize[]).flatMap((size) => {
		const readings = reading[size];
		return readings ? [{ size, readings, ...WIRE[size] }] : [];
	});
	const wrong = read.flatMap(({ readings, key, name, least, most }) => {
		if (readings.length === 0) return [problem("wire-unread", ["wire", key], { name })];
		return readings.flatMap((given, i) =>
			given >= least && given <= most
				? []
				: [problem("wire-size-range", ["wire", key, i], { name, given, least, most })],
		);
	});
	if (wrong.length > 0) return wrong;
	const spreads = read.map((r) => ({ ...r, spread: spreadOf(r.readings, resolution) }));
	return {
		sizes: Object.fromEntries(spreads.map(({ size, spread }) => [size, spread])),
		notes: spreads
			.filter(({ spread }) => spread.spread > MOST_STEPS * resolution + 1e-9)
			.map(({ key, name, spread, readings }) =>
				note("wire-uneven", ["wire", key], {
					name,
					least: Math.min(...readings),
					greatest: Math.max(...readings),
					spread: spread.spread,
					resolution,
				}),
			),
	};
}
