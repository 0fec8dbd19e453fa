import { type Point, type Vertex, vertex } from "./path.js";

/**
 * Height of a circular arc above its chord.
 *
 * h²/(r + √(r² − h²)) with h = half the chord: the form r − √… loses digits on flat arcs.
 *
 * @param radius - greater than 0
 * @param chord - 0 to 2·radius
 * @throws RangeError if the chord does not fit; nothing is clamped
 * @example arcSagitta(304.8, 56) // 1.28881…
 */
export function arcSagitta(radius: number, chord: number): number {
	const half = chord / 2;
	if (!(radius > 0) || !(half >= 0) || half > radius) {
		throw new RangeError(`chord ${chord} does not fit a circle of radius ${radius}`);
	}
	return (half * half) / (radius + Math.sqrt((radius - half) * (radius + half)));
}

/**
 * Radius of the arc with this chord and sagitta: (c² + 4h²)/8h (Machinery's Handbook,
 * circular segments).
 *
 * @param chord - greater than 0
 * @param sagitta - greater than 0
 * @example radiusFromSagitta(16, 6) // 8.3333…
 */
export function radiusFromSagitta(chord: number, sagitta: number): number {
	if (!(chord > 0) || !(sagitta > 0)) throw new RangeError("chord and sagitta must be above 0");
	return (chord * chord + 4 * sagitta * sagitta) / (8 * sagitta);
}

/** Length of the arc over a chord: 2r·asin(c/2r). @throws RangeError if the chord does not fit */
export function arcLengthOfChord(radius: number, chord: number): number {
	if (!(radius > 0) || !(chord >= 0) || chord > 2 * radius) {
		throw new RangeError(`chord ${chord} does not fit a circle of radius ${radius}`);
	}
	return 2 * radius * Math.asin(chord / (2 * radius));
}

/**
 * Bulge of the minor arc of this radius over a chord: 2h/c, unsigned.
 *
 * @example bulgeOf(254, 56) // 0.0552866…
 */
export function bulgeOf(radius: number, chord: number): number {
	if (!(chord > 0)) throw new RangeError(`chord must be above 0: ${chord}`);
	return (2 * arcSagitta(radius, chord)) / chord;
}

/**
 * The vertex from which the minor arc of `radius` leaves for `end`.
 *
 * @param turn - +1 counter-clockwise, −1 clockwise
 */
export function arcVertex(start: Point, end: Point, radius: number, turn: 1 | -1): Vertex {
	const chord = Math.hypot(end.x - start.x, end.y - start.y);
	return vertex(start.x, start.y, turn * bulgeOf(radius, chord));
}
