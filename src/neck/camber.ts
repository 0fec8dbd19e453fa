import { type Neck, radiusAt, type StringLine } from "./neck.js";
import { pointAlong } from "./strings.js";

/**
 * Radius of the section along a fret slanted by φ: R/cos²φ (Euler's theorem for a surface
 * that is straight lengthwise).
 *
 * @param radius - section square to the centre line, mm
 * @param slant - radians, below π/2
 */
export function slantedRadius(radius: number, slant: number): number {
	return radius / Math.cos(slant) ** 2;
}

/**
 * How far the board lies under its own crown: y²/(R + √(R² − y²)).
 *
 * @throws RangeError if |y| is beyond the radius
 */
export function dropAt(radius: number, y: number): number {
	if (Math.abs(y) > radius) throw new RangeError(`no board at ${y} on a radius of ${radius}`);
	return (y * y) / (radius + Math.sqrt((radius - y) * (radius + y)));
}

/** Samples along the line; the drop is smooth, so its height is found to better than 1e-5 of it. */
const SAMPLES = 500;

/** How the board leaves the chord between two places on a line along the neck, mm, both 0 or more. */
export interface LineCamber {
	/** Greatest height over the chord: a straightedge rocks on it. */
	readonly hump: number;
	/** Greatest depth under the chord: light shows there. */
	readonly hollow: number;
}

/**
 * What a straightedge meets between two places on a line along the neck: the board's shape, no
 * fault of the neck. Both 0 on a flat board and under the centre line.
 *
 * Second derivative of the drop: (kR₀ − m·y₀)²/(R² − y²)^(3/2) for y = y₀ + k·x, R = R₀ + m·x,
 * never negative: a board whose radius grows evenly has a hump only. Where the radius begins to
 * grow faster at a station, a line beside the centre also meets a hollow.
 *
 * @param from - distance along the line from its nut point, mm
 * @param to - as `from`, greater
 */
export function camberUnder(neck: Neck, line: StringLine, from: number, to: number): LineCamber {
	if (neck.radius === "flat") return { hump: 0, hollow: 0 };
	const height = (along: number) => {
		const { x, y } = pointAlong(line, along);
		return -dropAt(radiusAt(neck, x)!, y);
	};
	const start = height(from);
	const end = height(to);
	let [hump, hollow] = [0, 0];
	for (let i = 1; i < SAMPLES; i++) {
		const share = i / SAMPLES;
		const over = height(from + (to - from) * share) - (start + (end - start) * share);
		hump = Math.max(hump, over);
		hollow = Math.max(hollow, -over);
	}
	return { hump, hollow };
}

/**
 * The hump of `camberUnder` alone.
 *
 * @example on a 184.15 mm cylinder, outer string 17.5 to 26.25 mm out over 647.7 mm, to fret 22: 0.0274
 */
export function humpUnder(neck: Neck, line: StringLine, from: number, to: number): number {
	return camberUnder(neck, line, from, to).hump;
}
