import { MATERIALS, type MaterialName } from "../shop/index.js";

/** A straightedge of even section, standing on edge. */
export interface Straightedge {
	readonly material: MaterialName;
	/** Cancels out of the sag: twice as thick is twice as heavy and twice as stiff. */
	readonly thickness?: number;
	readonly height: number;
	readonly length: number;
	/** How far it reaches beyond its first contact; half of what is over where it is not told. */
	readonly overhang?: number;
}

/** How a bar lies on its two contacts. */
export interface BarSpan {
	/** Between the contacts. */
	readonly span: number;
	/** Beyond the first contact, and beyond the second. */
	readonly before: number;
	readonly after: number;
}

/** A bar over its contacts, mm; `after` is negative on a bar that does not reach. */
export function spanOf(bar: Straightedge, span: number): BarSpan {
	const before = bar.overhang ?? (bar.length - span) / 2;
	return { span, before, after: bar.length - span - before };
}

/** Whether a bar's middle lies between its contacts; beyond them it tips. */
export function rests(bar: Straightedge, span: number): boolean {
	const middle = bar.length / 2 - spanOf(bar, span).before;
	return middle > 0 && middle < span;
}

const GRAVITY = 9.80665;

/**
 * Sag of a bar on edge under its own weight below the line through its two contacts, mm; negative
 * where long overhangs lift it.
 *
 * Beam on two supports with overhangs c₁, c₂, by superposition (formula handbooks): even load
 * w·x(L³ − 2Lx² + x³)/24EI, less what the overhangs' moments w·c²/2 at the supports lift,
 * M₁·x(L − x)(2L − x)/6EIL and M₂·x(L² − x²)/6EIL. For a rectangle w/EI = 12ρg/Eh². In the middle
 * of equal overhangs that is w·L²(5L² − 24c²)/384EI.
 *
 * @param at - mm from the first contact, 0 to the span
 * @throws RangeError beyond the contacts
 * @example acrylic 480 × 40 mm on its ends, at 240: 0.0202
 */
export function sagAt(bar: Straightedge, span: number, at: number): number {
	if (!(at >= 0 && at <= span)) throw new RangeError(`${at} is not between contacts ${span} apart`);
	const { density, modulus } = MATERIALS[bar.material];
	const [l, x] = [span / 1000, at / 1000];
	const { before, after } = spanOf(bar, span);
	const load = (x * (l ** 3 - 2 * l * x ** 2 + x ** 3)) / 24;
	const first = ((before / 1000) ** 2 * x * (l - x) * (2 * l - x)) / (12 * l);
	const second = ((after / 1000) ** 2 * x * (l ** 2 - x ** 2)) / (12 * l);
	const stiffness = (modulus * 1e9 * (bar.height / 1000) ** 2) / (12 * density * GRAVITY);
	return ((load - first - second) / stiffness) * 1000;
}
