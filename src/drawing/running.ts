import { circle, type Extents, type Point } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { fixed, inches } from "../units/index.js";
import type { SizeClaim } from "./claim.js";
import { ARROW, arrowed, type Ink, inkOf, stroke, strokes, TEXT, writing } from "./ink.js";
import { spread } from "./spread.js";

/** From the part to the first written line, mm. */
const GAP = 1;
/** Straight run of an extension line before it may lean aside, mm. */
const STRAIGHT = 9;
const LEAN = 5;
/** From a notch to the dimension of its depth: clear of the arrow at its flank, mm. */
const ASIDE = 2 * ARROW + 1.5;
/** Between the baselines of neighbouring values, mm. */
const PITCH = 1.7 * TEXT;

/**
 * Running dimensions (ISO 129-1): every position from one origin, values along the extension
 * lines, moved apart where they would touch. Positions in the upper half of the part are
 * written above it. One notch or slot shows the sizes that it shares with its series.
 */
export function runningDimensions(
	claims: readonly SizeClaim[],
	series: readonly SizeClaim[],
	box: Extents,
	letters: Lettering,
): Ink {
	const data = [...new Set(claims.map((c) => c.datum))];
	return inkOf(
		...data.map((datum) => {
			const own = claims.filter((c) => c.datum === datum);
			return inkOf(oneDatum(own, box, letters), sharedSizes(own, series, box, letters));
		}),
	);
}

/** Whether a group is written above the part. */
function isAbove(claims: readonly SizeClaim[], box: Extents): boolean {
	return claims[0]!.at[0]!.y > (box.minY + box.maxY) / 2 + 1e-6;
}

function oneDatum(claims: readonly SizeClaim[], box: Extents, letters: Lettering): Ink {
	const origin = claims[0]!.at[0]!;
	const sign = isAbove(claims, box) ? 1 : -1;
	const start = sign > 0 ? box.maxY + GAP : box.minY - GAP;
	const items = [
		{ id: "datum", x: origin.x, text: `0 ${claims[0]!.datum}` },
		...places(claims).map(({ claim: c, feature }) => ({
			id: c.id,
			x: c.at[1]!.x,
			text: `${feature}: ${fixed(c.nominal, 3)} (${inches(c.nominal)} in)`,
		})),
	].sort((a, b) => a.x - b.x);
	const asides = spread(
		items.map(({ x }) => x),
		PITCH,
	);
	const inks = items.map(({ id, x, text }, i) => {
		const aside = { x: asides[i]!, y: start + sign * (STRAIGHT + LEAN) };
		const knee = { x, y: start + sign * STRAIGHT };
		const baseline = { x: aside.x + TEXT / 2, y: aside.y + sign * GAP };
		return inkOf(
			stroke(id, { x, y: start }, knee),
			stroke(id, knee, aside),
			writing(letters, text, baseline, {
				turn: Math.PI / 2,
				align: sign > 0 ? "left" : "right",
			}),
		);
	});
	const ring = circle({ x: origin.x, y: start + sign * 2 }, 0.8);
	return inkOf(strokes("datum", ring), ...inks);
}

/**
 * Claims by place, those at one place as one: a double marker's two centres share their distance
 * and the words that their names have in common.
 */
function places(claims: readonly SizeClaim[]) {
	const groups: SizeClaim[][] = [];
	for (const claim of claims) {
		const group = groups.find(([g]) => Math.abs(g!.at[1]!.x - claim.at[1]!.x) < 1e-6);
		if (group) group.push(claim);
		else groups.push([claim]);
	}
	return groups.map((group) => ({ claim: group[0]!, feature: sharedName(group) }));
}

function sharedName(claims: readonly SizeClaim[]): string {
	const [first = [], ...others] = claims.map(({ feature }) => feature.split(" "));
	const end = first.findIndex((word, i) => others.some((words) => words[i] !== word));
	return (end > 0 ? first.slice(0, end) : first).join(" ");
}

/** Width and depth of one feature, written where its neighbours leave room. */
function sharedSizes(
	running: readonly SizeClaim[],
	series: readonly SizeClaim[],
	box: Extents,
	letters: Lettering,
): Ink {
	const features = new Set(running.map((c) => c.feature));
	const widths = series.filter(
		(c) => c.kind === "width" && c.axis === "x" && features.has(c.feature),
	);
	const sign = isAbove(running, box) ? 1 : -1;
	const y = (sign > 0 ? box.maxY : box.minY) + sign * 5;
	const lines = [running[0]!.at[0]!.x, ...running.map((c) => c.at[1]!.x)];
	for (const width of widths) {
		const [left, right] = width.at.map((p) => p.x).sort((a, b) => a - b) as [number, number];
		const depth = series.find((c) => c.kind === "depth" && c.feature === width.feature);
		const text = sharedText(width, widths);
		const deep = depth
			? sharedText(
					depth,
					series.filter((c) => c.series === depth.series),
				)
			: "";
		const room = roomBeside(lines, left, right);
		const needed = letters.width(text, TEXT) + 8;
		const neededLeft = depth ? letters.width(deep, TEXT) + ASIDE + 3 : 0;
		if (room.right < needed || room.left < neededLeft) continue;
		return inkOf(
			...[left, right].map((x) =>
				stroke(width.id, { x, y: y - sign * 4 }, { x, y: y + sign * GAP }),
			),
			arrowed(width.id, { x: left, y }, { x: right, y }),
			writing(letters, text, { x: right + 2 * TEXT + GAP, y: y - TEXT / 2 }),
			depth ? depthBeside(depth, deep, left, y, letters) : { marks: [], notes: [] },
		);
	}
	return { marks: [], notes: [] };
}

/** Free way to the next extension line on either side. */
function roomBeside(lines: readonly number[], left: number, right: number) {
	const after = lines.filter((x) => x > right + 1e-6);
	const before = lines.filter((x) => x < left - 1e-6);
	return {
		right: Math.min(...after, Number.POSITIVE_INFINITY) - right,
		left: left - Math.max(...before, Number.NEGATIVE_INFINITY),
	};
}

/** "22x 4.200": how many of a series share the size. */
function sharedText(claim: SizeClaim, series: readonly SizeClaim[]): string {
	const own = series.filter((c) => c.series === claim.series);
	const same = own.filter((c) => Math.abs(c.nominal - claim.nominal) < 1e-9).length;
	return `${same > 1 ? `${same}x ` : ""}${fixed(claim.nominal, 3)}`;
}

function depthBeside(
	claim: SizeClaim,
	text: string,
	left: number,
	y: number,
	letters: Lettering,
): Ink {
	const x = left - ASIDE;
	const [low, high] = claim.at.map((p) => p.y).sort((a, b) => a - b) as [number, number];
	const floor: Point = claim.at[1]!;
	return inkOf(
		stroke(claim.id, { x: x - GAP, y: floor.y }, { x: left, y: floor.y }),
		arrowed(claim.id, { x, y: low }, { x, y: high }),
		writing(letters, text, { x: x - GAP, y: y - TEXT / 2 }, { align: "right" }),
	);
}
