import type { Mark, SizeClaim } from "../drawing/index.js";
import { circle, type Point, reversed } from "../geometry/index.js";
import { cutSize } from "./size.js";
import type { Bench } from "./tool.js";

/** A hole to hang a part by: what is cut and what is promised of it; a diameter of 0 is none. */
export interface HangingHole {
	readonly marks: readonly Mark[];
	readonly claims: readonly SizeClaim[];
}

const FEATURE = "hanging hole";

/** The hole of this diameter about a point. */
export function hangingHole(bench: Bench, at: Point, diameter: number): HangingHole {
	if (diameter === 0) return { marks: [], claims: [] };
	return {
		marks: [{ operation: "cut", path: reversed(circle(at, diameter / 2)), feature: FEATURE }],
		claims: [
			cutSize(bench, {
				id: "hanging-hole",
				kind: "diameter",
				feature: FEATURE,
				datum: FEATURE,
				axis: "line",
				at: [at],
				nominal: diameter,
			}),
		],
	};
}
