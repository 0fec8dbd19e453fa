import type { Problem } from "../../src/problem/index.js";
import { type RadiusEstimate, type RadiusReading, radiusFrom } from "../../src/readings/index.js";

/** Steps of a caliper and a dial, on wood. */
export const STEPS = { resolution: 0.01, chordResolution: 0.1, on: "wood" } as const;

/** A reading's radius; throws if it is refused. */
export function found<T>(result: T | Problem[]): T {
	if (Array.isArray(result)) throw new Error(JSON.stringify(result));
	return result;
}

export function readRadius(reading: RadiusReading): RadiusEstimate {
	return found(radiusFrom(reading));
}

/** Drop of a circle of this radius at y under its top. */
export function dropOf(radius: number, y: number): number {
	return radius - Math.sqrt(radius * radius - y * y);
}

/** Heights across a board of this radius over a line tilted by `tilt` radians. */
export function heightsAcross(radius: number, ys: readonly number[], tilt = 0) {
	const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];
	return ys.map((y) => {
		const z = 3 - dropOf(radius, y);
		return { y: y * cos - z * sin, height: y * sin + z * cos };
	});
}
