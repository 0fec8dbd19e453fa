import type { RadiusReading } from "../readings/index.js";
import type { ReadingsValues } from "./readings-schema.js";

type Given = NonNullable<ReadingsValues["radius"]>[number];

/**
 * A reading of a radius as it is fitted; which way it was read shows by its keys.
 *
 * @param board - width of the board there, null where it is not known
 */
export function radiusReadingOf(
	given: Given,
	board: number | null,
	crownHeight: number,
): RadiusReading {
	const common = {
		resolution: given.resolution,
		chordResolution: given["chord-resolution"],
		on: given.on,
		crownHeight,
		...(board === null ? {} : { board }),
	};
	if (given.chord !== undefined) {
		return { ...common, kind: "chord", chord: given.chord, sagitta: given.sagitta! };
	}
	if (given.feet !== undefined) {
		const ball = given.ball === undefined ? {} : { ball: given.ball };
		return { ...common, kind: "bar", chord: given.feet, dial: given.dial!, ...ball };
	}
	if (given.heights) return { ...common, kind: "heights", heights: given.heights };
	const width = given["gauge-width"]!;
	return {
		...common,
		kind: "light",
		gauge: given.gauge!,
		width,
		board: board ?? width,
		where: given.light!,
		gap: given.gap ?? 0,
		...(given.rolled === undefined ? {} : { rolled: given.rolled }),
	};
}
