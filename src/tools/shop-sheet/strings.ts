import { crossingOf, type Neck, stringLines } from "../../neck/index.js";
import { fixed } from "../../units/index.js";

/** Distances of the strings from the centre line at one place, bass first, treble positive, mm. */
export interface Spread {
	readonly place: string;
	readonly positions: readonly number[];
}

/** The strings at nut, last fret and saddle, square to the centre line. */
export function spreadsOf(neck: Neck): Spread[] {
	const lines = stringLines(neck);
	const at = (place: string, heights: readonly number[]): Spread => ({
		place,
		positions: heights.map((y) => y * neck.trebleSide),
	});
	return [
		at(
			"nut",
			lines.map(({ nut }) => nut.y),
		),
		at(
			`fret ${neck.frets}`,
			lines.map((line) => crossingOf(neck, line, neck.frets).at.y),
		),
		at(
			"saddle",
			lines.map(({ saddle }) => saddle.y),
		),
	];
}

/**
 * The strings as a grid: heads, a row a string from bass to treble, the whole spread. Of courses the
 * middles, and how far from its middle the strings of each lie.
 */
export function stringTexts(neck: Neck): string[][] {
	const spreads = spreadsOf(neck);
	const { pairGap } = neck.strings!;
	const each = pairGap > 0 ? 2 : 1;
	const what = each === 2 ? "course" : "string";
	const count = spreads[0]!.positions.length / each;
	const row = (name: string, value: (positions: readonly number[]) => number, sign = "") => [
		name,
		...spreads.map(({ positions }) => `${sign}${fixed(value(positions), 3)}`),
	];
	const middle = (p: readonly number[], i: number) => (p[each * i]! + p[each * (i + 1) - 1]!) / 2;
	return [
		[what, ...spreads.map(({ place }) => `at ${place}`)],
		...Array.from({ length: count }, (_, i) => row(nameOf(i, count), (p) => middle(p, i))),
		...(each === 2 ? [row("its strings", (p) => (p[1]! - p[0]!) / 2, "±")] : []),
		row("overall", (p) => p.at(-1)! - p[0]!),
		...(count > 1 ? [row(`${what} gap`, (p) => middle(p, 1) - middle(p, 0))] : []),
	];
}

/** Strings are counted from the treble side; the outer two are named. */
function nameOf(index: number, count: number): string {
	const number = String(count - index);
	if (count > 1 && index === 0) return `${number}, bass`;
	return count > 1 && index === count - 1 ? `${number}, treble` : number;
}
