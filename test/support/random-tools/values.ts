import fc from "fast-check";
import { type Drawn, reading } from "../random-neck.js";

/** A tool's entry in a job. */
export type Entry = Readonly<Record<string, object>>;

/** An entry for the neck that was drawn beside it. */
export type EntryFor = (drawn: Drawn) => Entry;

type Settings = Readonly<Record<string, unknown>>;

/** Leaves a setting out as often as it gives it. */
export function maybe<T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
	return fc.option(value, { nil: undefined });
}

/** A length as a job gives it, with its unit. */
export const mm = (min: number, max: number, digits = 1) =>
	reading(min, max, digits).map((x) => `${x} mm`);

/** The diameter of a hole, or that there is none. */
export const hole = (most: number) => fc.oneof(fc.constant("none"), mm(1, most));

/** The settings that are given, as an entry of their tool. */
function entryOf(tool: string, settings: Settings): Entry {
	const given = Object.entries(settings).filter(([, value]) => value !== undefined);
	return { [tool]: Object.fromEntries(given) };
}

/** A tool with settings of any neck. */
export function entry(tool: string, settings: Record<string, fc.Arbitrary<unknown>>) {
	return fc.record(settings).map((all) => entryOf(tool, all));
}

/**
 * A tool with settings that follow the neck: shares of what it has are drawn, and what they come to
 * there is given.
 */
export function entryFor<T extends Settings>(
	tool: string,
	values: { [K in keyof T]: fc.Arbitrary<T[K]> },
	settings: (drawn: Drawn, values: T) => Settings,
): fc.Arbitrary<EntryFor> {
	return fc.record(values).map((all) => (drawn: Drawn) => entryOf(tool, settings(drawn, all as T)));
}

/** A share of something, 0 to 1. */
export const share = reading(0, 1, 3);

/** A length between two, by a share, in tenths of a millimetre. */
export function between(from: number, to: number, part: number): string {
	return `${Math.round(10 * (from + part * (to - from))) / 10} mm`;
}

/** A fret by its share of all, the first one at least. */
export function fretAt({ frets }: Drawn, part: number): number {
	return 1 + Math.round(part * (frets - 1));
}

/** Distance of the highest two frets on the shorter scale, mm. */
export function tightestGap({ scale, share: at, frets }: Drawn): number {
	return scale.treble * (at(frets) - at(frets - 1));
}
