import { around, type Extents, extents, type Point } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { fixed, inches } from "../units/index.js";
import type { SizeClaim } from "./claim.js";
import { clearOfText } from "./clear-of-text.js";
import { arrow, arrowed, type Ink, inkBoxes, inkOf, stroke, TEXT, writing } from "./ink.js";
import type { Part } from "./part.js";
import { runningDimensions } from "./running.js";

/** Distance between a part and what is written next to it, mm. */
export const GAP = 1;
/** Distance between stacked dimension lines, mm. */
const TIER = 8;

/** A length as dimensions give it: "221.220 (8.7094 in)". */
export function dimensionText(mm: number): string {
	return `${fixed(mm, 3)} (${inches(mm)} in)`;
}

/** The box of what is cut, scored and engraved of a part. */
export function partExtents(part: Part): Extents {
	return around(part.marks.map((m) => extents(m.path)));
}

/**
 * Dimensions of a part in the manner of ISO 129-1, drawn from its claims and nothing else:
 * positions as running dimensions from their datum, sizes once per series, radii with leaders,
 * lines interrupted at texts.
 */
export function dimensions(part: Part, letters: Lettering): Ink {
	const box = partExtents(part);
	const sizes = part.claims.filter((c): c is SizeClaim => c.kind !== "label");
	const series = sizes.filter((c) => c.series !== undefined && c.kind !== "position");
	const plain = sizes.filter((c) => c.series === undefined);
	const running = runningDimensions(
		sizes.filter((c) => c.kind === "position" && c.axis === "x"),
		series,
		box,
		letters,
	);
	const written = around([box, ...inkBoxes(running)]);
	const both = written.maxY > box.maxY && written.minY < box.minY;
	const overall = plain.filter(
		(c) => (c.kind === "length" || c.kind === "width") && c.axis === "x",
	);
	const upright = plain.filter(
		(c) => c.axis === "y" && ["length", "width", "sagitta"].includes(c.kind),
	);
	const arcUp = plain.some((c) => c.kind === "radius" && c.at[1]!.y > (box.minY + box.maxY) / 2);
	const holes = plain.filter((c) => c.kind === "diameter");
	const right = both
		? Math.max(0, ...holes.map((c) => letters.width(holeText(c), TEXT) + TIER))
		: 0;
	const ink = inkOf(
		running,
		...overall.map((c, i) =>
			overallDimension(
				c,
				arcUp ? box.minY : written.maxY,
				(TIER * i + 12) * (arcUp ? -1 : 1),
				letters,
			),
		),
		...uprightDimensions(upright, { ...box, maxX: box.maxX + right }, box, letters),
		...plain.filter((c) => c.kind === "radius").map((c) => radiusLeader(c, box, letters)),
		...holes.map((c) => (both ? sideLeader : holeLeader)(c, box, letters)),
	);
	return clearOfText(ink);
}

/**
 * A horizontal dimension over the part, or under it where `rise` is negative.
 *
 * @param edge - where the part and what is already written over it end
 */
function overallDimension(claim: SizeClaim, edge: number, rise: number, letters: Lettering): Ink {
	const [a, b] = claim.at as [Point, Point];
	const sign = Math.sign(rise);
	const y = edge + rise;
	const out = (x: number) =>
		stroke(claim.id, { x, y: edge + sign * GAP }, { x, y: y + sign * GAP });
	const text = dimensionText(claim.nominal);
	const wide = letters.width(text, TEXT) > Math.abs(b.x - a.x) - 2 * GAP;
	const below = wide && sign < 0;
	const baseline = below ? y - 2 * GAP - TEXT : y + (wide ? 2 : 1) * GAP;
	return inkOf(
		out(a.x),
		out(b.x),
		arrowed(claim.id, { x: a.x, y }, { x: b.x, y }),
		writing(letters, text, { x: (a.x + b.x) / 2, y: baseline }, { align: "centre" }),
	);
}

/**
 * Vertical dimensions, each beside the end of the part that it is nearer to; sagittas left.
 *
 * @param taken - the part and what is already written beside it
 */
function uprightDimensions(
	claims: readonly SizeClaim[],
	taken: Extents,
	box: Extents,
	letters: Lettering,
): Ink[] {
	const middle = (box.minX + box.maxX) / 2;
	const reached = { left: 2, right: 2 };
	return [...claims]
		.sort((a, b) => a.nominal - b.nominal)
		.map((claim) => {
			const [low, high] = yRange(claim);
			const left = claim.kind === "sagitta" || claim.at[0]!.x < middle - 1e-9;
			const side = left ? "left" : "right";
			const sign = left ? -1 : 1;
			reached[side] += TIER;
			const x = (left ? taken.minX : taken.maxX) + sign * reached[side];
			const edge = (left ? box.minX : box.maxX) + sign * GAP;
			const from = claim.kind === "width" ? claim.at[0]!.x : edge;
			const top = claim.kind === "sagitta" ? claim.at[1]!.x : from;
			const text = dimensionText(claim.nominal);
			const width = letters.width(text, TEXT);
			const short = high - low < width;
			if (short) reached[side] += width + GAP;
			const y = (low + high) / 2;
			const written = short
				? writing(
						letters,
						text,
						{ x: x + sign * 2 * GAP, y: y - TEXT / 2 },
						{
							align: left ? "right" : "left",
						},
					)
				: writing(letters, text, { x: x - GAP, y }, { turn: Math.PI / 2, align: "centre" });
			return inkOf(
				stroke(claim.id, { x: from, y: low }, { x: x + sign * GAP, y: low }),
				stroke(claim.id, { x: top, y: high }, { x: x + sign * GAP, y: high }),
				arrowed(claim.id, { x, y: low }, { x, y: high }),
				written,
			);
		});
}

function yRange(claim: SizeClaim): readonly [number, number] {
	const ys = claim.at.map((p) => p.y);
	return [Math.min(...ys), Math.max(...ys)];
}

/** A leader to the middle of an arc, from the side on which the part is not. */
function radiusLeader(claim: SizeClaim, box: Extents, letters: Lettering): Ink {
	const [start, middle] = claim.at as [Point, Point, Point];
	const below = middle.y < (box.minY + box.maxY) / 2;
	const sign = below ? -1 : 1;
	const edge = below ? Math.min(box.minY, start.y) : box.maxY;
	const turn = { x: middle.x, y: edge + sign * 6 };
	const knee = { x: middle.x + 4, y: edge + sign * 9 };
	const end = { x: knee.x + 3, y: knee.y };
	return inkOf(
		arrow(claim.id, middle, (-sign * Math.PI) / 2),
		stroke(claim.id, middle, turn),
		stroke(claim.id, turn, knee),
		stroke(claim.id, knee, end),
		writing(letters, `R ${dimensionText(claim.nominal)}`, { x: end.x + GAP, y: end.y - TEXT / 2 }),
	);
}

function holeText(claim: SizeClaim): string {
	return `dia ${fixed(claim.nominal, 3)}`;
}

/** A leader from a hole to the nearer long side of the part, or past its end if it is short. */
function holeLeader(claim: SizeClaim, box: Extents, letters: Lettering): Ink {
	const centre = claim.at[0]!;
	const up = centre.y >= (box.minY + box.maxY) / 2 - 1e-9;
	const sign = up ? 1 : -1;
	const text = holeText(claim);
	const reach = 6 + letters.width(text, TEXT) + GAP;
	const right = centre.x + reach < box.maxX || centre.x - reach < box.minX;
	const way = right ? 1 : -1;
	const rim = { x: centre.x, y: centre.y + (sign * claim.nominal) / 2 };
	const knee = { x: centre.x + way * 2, y: (up ? box.maxY : box.minY) + sign * 4 };
	const short = centre.x + reach >= box.maxX && right;
	const end = { x: short ? box.maxX + 2 : knee.x + way * 3, y: knee.y };
	const align = right ? "left" : "right";
	return inkOf(
		arrow(claim.id, rim, (-sign * Math.PI) / 2),
		stroke(claim.id, rim, knee),
		stroke(claim.id, knee, end),
		writing(letters, text, { x: end.x + way * GAP, y: end.y - TEXT / 2 }, { align }),
	);
}

/** A leader from a hole past the part's right end, between what is written over and under it. */
function sideLeader(claim: SizeClaim, box: Extents, letters: Lettering): Ink {
	const centre = claim.at[0]!;
	const rim = { x: centre.x + claim.nominal / 2, y: centre.y };
	const end = { x: box.maxX + 3, y: centre.y };
	return inkOf(
		arrow(claim.id, rim, Math.PI),
		stroke(claim.id, rim, end),
		writing(letters, holeText(claim), { x: end.x + GAP, y: end.y - TEXT / 2 }),
	);
}
