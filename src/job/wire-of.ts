import type { Problem } from "../problem/index.js";
import { fitWire, type WireFit } from "../readings/index.js";
import type { Wire } from "../tools/index.js";
import { type JobValues, meanOf } from "./schema.js";

/** Step of the caliper that wire is read with, mm. */
const CALIPER = 0.01;

/** A wire, and what its readings came to. */
export interface WireRead {
	readonly wire: Wire;
	/** Null where every size is one number. */
	readonly fit: WireFit | null;
}

/** The wire by the mean of its readings, and what they came to where there are several. */
export function wireOf(given: JobValues["wire"]): WireRead | Problem[] {
	const read = {
		crownWidth: given["crown-width"],
		crownHeight: given["crown-height"],
		tangWidth: given["tang-width"],
		tangDepth: given["tang-depth"],
	};
	const wire = {
		crownWidth: meanOf(read.crownWidth),
		crownHeight: meanOf(read.crownHeight),
		tangWidth: meanOf(read.tangWidth),
		tangDepth: meanOf(read.tangDepth),
	};
	const several = Object.entries(read).filter(([, readings]) => readings.length > 1);
	if (several.length === 0) return { wire, fit: null };
	const found = fitWire({ resolution: CALIPER, ...Object.fromEntries(several) });
	return Array.isArray(found) ? found : { wire, fit: found };
}
