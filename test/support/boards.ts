import type { SlotReading } from "../../src/readings/index.js";
import { normal } from "./seeded.js";

/** Share of the string between the nut and a fret. */
export type Share = (fret: number) => number;

/** 1 … count. */
export function fretsTo(count: number): number[] {
	return Array.from({ length: count }, (_, i) => i + 1);
}

export const TWELVE_SHARE: Share = (n) => 1 - 2 ** (-n / 12);
export const EIGHTEEN_SHARE: Share = (n) => 1 - (17 / 18) ** n;

/** Each space 1/17.6 of what remains. */
export const RATIO_SHARE: Share = (n) => 1 - (1 - 1 / 17.6) ** n;

/** 1/18.3 of what remains up to fret 10, 1/17.5 beyond it. */
export const TWO_RATIOS_SHARE: Share = (n) =>
	1 - (1 - 1 / 18.3) ** Math.min(n, 10) * (1 - 1 / 17.5) ** Math.max(0, n - 10);

/** An error of a reading from a stream of numbers, mm. */
export type ReadingError = (next: () => number) => number;

export const GAUSS: ReadingError = (next) => 0.1 * normal(next);
export const UNIFORM: ReadingError = (next) => 0.2 * (next() - 0.5);

/** A board of 22 frets and 650 mm read once, its nut's end some mm behind the theoretical nut. */
export function readBoard(
	next: () => number,
	share: Share,
	error: ReadingError,
	behind = 0,
): SlotReading[] {
	return fretsTo(22).map((fret) => ({ fret, at: behind + 650 * share(fret) + error(next) }));
}

/** Share of so many trials in which something holds, percent. */
export function percent(trials: number, holds: () => boolean): number {
	let count = 0;
	for (let i = 0; i < trials; i++) if (holds()) count++;
	return (100 * count) / trials;
}

/** A fit, not problems. */
export function sound<T>(found: T): Exclude<T, readonly unknown[]> {
	if (Array.isArray(found)) throw new Error(JSON.stringify(found));
	return found as Exclude<T, readonly unknown[]>;
}
