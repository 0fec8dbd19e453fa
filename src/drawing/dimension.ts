import { around, type Extents, extents, type Point } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { fixed, inches } from "../units/index.js";
import type { SizeClaim } from "./claim.js";
import { arrow, arrowed, type Ink, inkOf, NOTHING, stroke, TEXT, writing } from "./ink.js";
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
 * positions as running dimensions from their datum, sizes once per series, radii with leaders.
 */
export function dimensions(part: Part, letters: Lettering): Ink {
	const box = partExtents(part);
	const sizes = part.claims.filter((c): c is SizeClaim => c.kind !== "label");
	const running = sizes.filter((c) => c.kind === "position" && c.axis === "x");
	const series = sizes.filter((c) => c.series !== undefined && c.kind !== "position");
	const plain = sizes.filter((c) => c.series === undefined);
	const overall = plain.filter(
		(c) => (c.kind === "length" || c.kind === "width") && c.axis === "x",
	);
	const upright = plain.filter(
		(c) => c.axis === "y" && ["length", "width", "sagitta"].includes(c.kind),
	);
	const arcUp = sizes.some((c) => c.kind === "radius" && c.at[1]!.y > (box.minY + box.maxY) / 2);
	return inkOf(
		runningDimensions(running, series, box, letters),
		...overall.map((c, i) =>
			overallDimension(c, box, (TIER * (i + 1) + 4) * (arcUp ? -1 : 1), letters),
		),
		...uprightDimensions(upright, box, letters),
		...plain.filter((c) => c.kind === "radius").map((c) => radiusLeader(c, box, letters)),
		...plain.filter((c) => c.kind === "diameter").map((c) => diameterLeader(c, box, letters)),
	);
}

/** A horizontal dimension over the part, or under it where `rise` is negative. */
function overallDimension(claim: SizeClaim, box: Extents, rise: number, letters: Lettering): Ink {
	const [a, b] = claim.at as [Point, Point];
	const sign = Math.sign(rise);
	const edge = rise > 0 ? box.maxY : box.minY;
	const y = edge + rise;
	const out = (x: number) =>
		stroke(claim.id, { x, y: edge + sign * GAP }, { x, y: y + sign * GAP });
	const text = dimensionText(claim.nominal);
	const middle = { x: (a.x + b.x) / 2, y: y + GAP };
	return inkOf(
		out(a.x),
		out(b.x),
		arrowed(claim.id, { x: a.x, y }, { x: b.x, y }),
		writing(letters, text, middle, { align: "centre" }),
	);
}

/** Vertical dimensions, each beside the end of the part that it is nearer to; sagittas left. */
function uprightDimensions(claims: readonly SizeClaim[], box: Extents, letters: Lettering): Ink[] {
	const middle = (box.minX + box.maxX) / 2;
	const reached = { left: 2, right: 2 };
	return [...claims]
		.sort((a, b) => a.nominal - b.nominal)
		.map((claim) => {
			const [low, high] = yRange(claim);
			const left = claim.kind === "sagitta" || claim.at[0]!.x < middle - 1e-9;
			const side = left ? "left" : "right";
			const sign = left ? -1 : 1;
			const edge = left ? box.minX : box.maxX;
			reached[side] += TIER;
			const x = edge + sign * reached[side];
			const from = edge + sign * GAP;
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

/** A leader from a hole to the nearer long side of the part. */
function diameterLeader(claim: SizeClaim, box: Extents, letters: Lettering): Ink {
	const centre = claim.at[0];
	if (!centre) return NOTHING;
	const up = centre.y >= (box.minY + box.maxY) / 2 - 1e-9;
	const sign = up ? 1 : -1;
	const text = `dia ${fixed(claim.nominal, 3)}`;
	const right = centre.x + 6 + letters.width(text, TEXT) < box.maxX - GAP;
	const way = right ? 1 : -1;
	const rim = { x: centre.x, y: centre.y + (sign * claim.nominal) / 2 };
	const knee = { x: centre.x + way * 2, y: (up ? box.maxY : box.minY) + sign * 4 };
	const end = { x: knee.x + way * 3, y: knee.y };
	return inkOf(
		arrow(claim.id, rim, (-sign * Math.PI) / 2),
		stroke(claim.id, rim, knee),
		stroke(claim.id, knee, end),
		writing(
			letters,
			text,
			{ x: end.x + way * GAP, y: end.y - TEXT / 2 },
			{
				align: right ? "left" : "right",
			},
		),
	);
}
