import type { Neck } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import {
	type DressPlan,
	type FretHeights,
	fitFretHeights,
	fitRelief,
	planDressing,
	type Relief,
	type StraightnessReading,
} from "../readings/index.js";
import type { MaterialName } from "../shop/index.js";
import type { Unit } from "../units/index.js";
import { fitNeck, type NeckFit, within } from "./fit-neck.js";
import { neckOf, type SoundValues } from "./neck-of.js";
import type { ReadingsValues } from "./readings-schema.js";
import type { NeckValues } from "./schema.js";
import { slotsOf } from "./slots-of.js";

/** What the readings say of the board's face and its frets. */
export interface SurfaceFit {
	readonly relief: Relief | null;
	readonly heights: FretHeights | null;
	readonly plan: DressPlan | null;
}

/** A neck, and what readings made of it. */
export interface NeckRead {
	readonly neck: Neck;
	/** Null for a neck of numbers alone. */
	readonly fit: (NeckFit & SurfaceFit) | null;
	/** What it was built from: what was read stands in its place. */
	readonly values: SoundValues;
}

/** What readings need besides. */
export interface ReadingContext {
	readonly unit: Unit;
	/** Texts of files that the readings name. */
	readonly files: ReadonlyMap<string, string>;
	readonly crownHeight: number;
}

/** A neck from its values, its readings fitted first; or all that is wrong with either. */
export function readNeck(given: NeckValues, context: ReadingContext): NeckRead | Problem[] {
	const { readings } = given;
	if (!readings) {
		const values = given as SoundValues;
		const neck = neckOf(values);
		return Array.isArray(neck) ? neck : { neck, fit: null, values };
	}
	const slots = slotsOf(readings, context.files, context.unit);
	if (Array.isArray(slots)) return slots;
	const fitted = fitNeck({ ...given, readings }, slots, context.crownHeight);
	if (Array.isArray(fitted)) return fitted;
	const neck = neckOf(fitted.values);
	if (Array.isArray(neck)) return neck;
	const surface = surfaceOf(readings, neck);
	if (Array.isArray(surface)) return surface.map(within);
	return { neck, fit: { ...fitted.fit, ...surface }, values: fitted.values };
}

function surfaceOf(readings: ReadingsValues, neck: Neck): SurfaceFit | Problem[] {
	const straightness = readings.straightness;
	const relief = straightness ? fitRelief(straightnessOf(straightness), neck) : null;
	if (Array.isArray(relief)) return relief;
	const given = readings["fret-heights"];
	if (!given) return { relief, heights: null, plan: null };
	const read = {
		frets: given.heights,
		resolution: given.resolution,
		relief: given.relief,
		leastCrown: given.least,
	};
	const heights = fitFretHeights(read, neck, relief);
	if (Array.isArray(heights)) return heights;
	return { relief, heights, plan: planDressing(heights) };
}

function straightnessOf(given: NonNullable<ReadingsValues["straightness"]>): StraightnessReading {
	const { along, on, from, to, gaps, resolution, straightedge } = given;
	const contacts = from && to ? { contacts: [from, to] as const } : {};
	return {
		along,
		on,
		...contacts,
		gaps: gaps.flatMap(({ station, value }) => value.map((gap) => ({ at: station, gap }))),
		resolution,
		bar: straightedge
			? {
					material: straightedge.material as MaterialName,
					height: straightedge.height,
					length: straightedge.length,
				}
			: null,
	};
}

/** Values of a neck for which there is neither a number nor a reading that counts. */
export function missingValues(value: unknown, ranges: Readonly<Record<string, string>>): Problem[] {
	const neck = (value as { neck?: Record<string, unknown> } | null)?.neck;
	if (typeof neck !== "object" || neck === null || Array.isArray(neck)) return [];
	const given = neck.use === "numbers" ? null : neck.readings;
	const readings = given as Readonly<Record<string, unknown>> | null | undefined;
	return Object.entries(READ_AS).flatMap(([key, names]) => {
		if (neck[key] !== undefined || names.some((name) => readings?.[name] !== undefined)) {
			return [];
		}
		const facts = { key: `"${key}"`, allowed: ranges[key] ?? "" };
		return [problem("missing", ["neck", key], facts)];
	});
}

/** The readings that stand for a value. */
const READ_AS: Readonly<Record<string, readonly string[]>> = {
	scale: ["slots", "bass-slots", "treble-slots"],
	radius: ["radius"],
	width: ["width"],
};
