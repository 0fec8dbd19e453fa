import { fretFraction, type Law, TWELVE } from "../neck/index.js";

/** Which law a fit follows. */
export type LawKind = "told" | "twelve" | "rule-of-18" | "ratio" | "two-ratios";

/** A law of the frets with what is free in it: how the share of the string follows from the fret. */
export interface Shape {
	readonly kind: LawKind | "mixture";
	/** Where the free parameters start; none for a fixed law. */
	readonly start: readonly number[];
	/** Share of the string between nut and fret, 0 to 1. */
	readonly share: (fret: number, free: readonly number[]) => number;
	/** Derivatives of the share by each free parameter. */
	readonly slopes: (fret: number, free: readonly number[]) => number[];
	readonly isSound: (free: readonly number[]) => boolean;
	/** Last fret of the first ratio; null but for two ratios. */
	readonly join: number | null;
}

/** Rates −ln q that a fretted string can have: steps of 0.1 to 8 semitones. */
const RATES = { from: 0.006, to: 0.46 } as const;

/** Rate of twelve equal steps, −ln 2^(−1/12): where a free ratio starts. */
const START_RATE = Math.LN2 / 12;

/** A law without anything free. */
export function fixedShape(kind: LawKind, law: Law): Shape {
	const share = (fret: number) => fretFraction(law, fret);
	return { kind, start: [], share, slopes: () => [], isSound: () => true, join: null };
}

/** u(n) = 1 − q^n with q = e^−r, r free. */
export const RATIO: Shape = {
	kind: "ratio",
	start: [START_RATE],
	share: (fret, [rate]) => -Math.expm1(-rate! * fret),
	slopes: (fret, [rate]) => [fret * Math.exp(-rate! * fret)],
	isSound: (free) => free.every(isRate),
	join: null,
};

function isRate(rate: number): boolean {
	return rate > RATES.from && rate < RATES.to;
}

/** One ratio up to a fret, the rest of the string divided by another; both rates free. */
export function twoRatios(join: number, rate: number): Shape {
	const rest = (fret: number, free: readonly number[]) =>
		Math.exp(-free[0]! * Math.min(fret, join) - free[1]! * Math.max(0, fret - join));
	return {
		kind: "two-ratios",
		start: [rate, rate],
		share: (fret, free) => 1 - rest(fret, free),
		slopes: (fret, free) => [
			Math.min(fret, join) * rest(fret, free),
			Math.max(0, fret - join) * rest(fret, free),
		],
		isSound: (free) => free.every(isRate),
		join,
	};
}

/**
 * A listed law mixed with the best free ratio: contains both, so that laws of which neither contains
 * the other can be tested (Davidson and MacKinnon, Econometrica 49, 1981, 781-793; from memory).
 */
export function mixture(told: Shape, rate: number): Shape {
	const other = (fret: number) => RATIO.share(fret, [rate]);
	return {
		kind: "mixture",
		start: [0.5],
		share: (fret, [m]) => (1 - m!) * told.share(fret, []) + m! * other(fret),
		slopes: (fret) => [other(fret) - told.share(fret, [])],
		isSound: () => true,
		join: null,
	};
}

/** Whether two laws put every fret in the same place. */
export function isSameLaw(a: Law, b: Law): boolean {
	if (a.kind === "equal" && b.kind === "equal") return a.steps === b.steps;
	return a.kind === b.kind && a.kind === "rule-of-18";
}

/** The fixed laws to try: the told one first, then those of the usual two that differ from it. */
export function fixedShapes(told: Law): Shape[] {
	const usual: [LawKind, Law][] = [
		["twelve", TWELVE],
		["rule-of-18", { kind: "rule-of-18" }],
	];
	const others = usual.filter(([, law]) => !isSameLaw(law, told));
	return [fixedShape("told", told), ...others.map(([kind, law]) => fixedShape(kind, law))];
}

/** A fitted shape as a neck's law; two ratios are listed up to a fret. */
export function lawOf(shape: Shape, free: readonly number[], told: Law, frets: number): Law {
	if (shape.kind === "told") return told;
	if (shape.kind === "twelve") return TWELVE;
	if (shape.kind === "rule-of-18") return { kind: "rule-of-18" };
	if (shape.kind === "ratio") return { kind: "equal", steps: Math.LN2 / free[0]! };
	const ratios = Array.from({ length: frets }, (_, i) => 1 / (1 - shape.share(i + 1, free)));
	return { kind: "listed", ratios };
}
