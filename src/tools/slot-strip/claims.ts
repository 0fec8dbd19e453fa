import type { SizeClaim } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { isFanned, type Neck, pointOnFret, widthAt } from "../../neck/index.js";
import { cutSize, scoredSize } from "../size.js";
import type { Bench } from "../tool.js";
import { type Ends, type MarkerCentre, nutLine, type Slot } from "./lay.js";
import type { StripSettings } from "./settings.js";

const ORIGIN: Point = { x: 0, y: 0 };
const NUT = "theoretical nut";

/** Promises of every slot: where, how long, how slanted, and how wide if it is cut. */
export function slotClaims(bench: Bench, slots: readonly Slot[], s: StripSettings): SizeClaim[] {
	const { neck, wire } = bench;
	const fanned = isFanned(neck);
	const size = s.slots === "tang" ? cutSize : scoredSize;
	return slots.flatMap(({ fret, bass, treble, length }) => {
		const feature = `slot ${fret.n}`;
		const id = `slot-${fret.n}`;
		const at = { x: fret.x, y: 0 };
		const common = { feature, datum: NUT } as const;
		const claims = [
			size(bench, {
				...common,
				id: `${id}-centre`,
				kind: "position",
				axis: "x",
				at: [ORIGIN, at],
				nominal: fret.x,
			}),
			size(bench, {
				...common,
				id: `${id}-length`,
				datum: feature,
				kind: "width",
				axis: "line",
				at: [bass, treble],
				nominal: length,
				series: "slot length",
			}),
		];
		if (fanned) {
			claims.push(
				...(fret.n > 0 ? endClaims(bench, fret.n, neck, size, [bass, treble]) : []),
				size(bench, {
					...common,
					id: `${id}-slant`,
					datum: "square of the centre line",
					kind: "angle",
					axis: "line",
					at: [ORIGIN, bass, treble],
					nominal: Math.atan(fret.lean),
					series: "slot slant",
				}),
			);
		}
		if (s.slots === "tang") {
			const half = wire.tangWidth / 2 / Math.cos(Math.atan(fret.lean));
			claims.push(
				size(bench, {
					...common,
					id: `${id}-width`,
					datum: feature,
					kind: "width",
					axis: "line",
					at: acrossSlot(at, fret.lean, half),
					nominal: wire.tangWidth,
					series: "slot width",
				}),
			);
		}
		return claims;
	});
}

/** The two flank points of a slot, square across it at the centre line. */
function acrossSlot(at: Point, lean: number, halfAlong: number): Point[] {
	const slant = Math.atan(lean);
	const half = halfAlong * Math.cos(slant);
	const [ux, uy] = [Math.cos(slant) * half, -Math.sin(slant) * half];
	return [
		{ x: at.x - ux, y: at.y - uy },
		{ x: at.x + ux, y: at.y + uy },
	];
}

/** Along a fanned board each slot is also measured on the two outer strings. */
function endClaims(
	bench: Bench,
	n: number,
	neck: Neck,
	size: typeof cutSize,
	ends: readonly [Point, Point],
): SizeClaim[] {
	return (["bass", "treble"] as const).map((side) => {
		const { nut, saddle } = neck.guides[side];
		const dx = saddle.x - nut.x;
		const dy = saddle.y - nut.y;
		const [a, b] = ends;
		const lean = (b.x - a.x) / (b.y - a.y);
		const t = (a.x + (nut.y - a.y) * lean - nut.x) / (dx - dy * lean);
		const at = { x: nut.x + t * dx, y: nut.y + t * dy };
		return size(bench, {
			id: `slot-${n}-${side}-string`,
			kind: "position",
			feature: `slot ${n}`,
			datum: `nut on the outer ${side} string`,
			axis: "line",
			at: [nut, at],
			nominal: Math.hypot(at.x - nut.x, at.y - nut.y),
			series: `slot along the outer ${side} string`,
		});
	});
}

/** Promises of the strip's outline, nut lines and marker centres. */
export function stripClaims(
	bench: Bench,
	ends: Ends,
	s: StripSettings,
	markers: readonly MarkerCentre[],
	lastFret: number,
): SizeClaim[] {
	const { neck } = bench;
	const across = (id: string, feature: string, x: number) => {
		const half = widthAt(neck, x) / 2 + s["edge-margin"];
		return cutSize(bench, {
			id,
			kind: "width",
			feature,
			datum: "strip",
			axis: "y",
			at: [
				{ x, y: -half },
				{ x, y: half },
			],
			nominal: 2 * half,
		});
	};
	const length = cutSize(bench, {
		id: "length",
		kind: "length",
		feature: "strip",
		datum: "nut end",
		axis: "x",
		at: [
			{ x: ends.from, y: 0 },
			{ x: ends.to, y: 0 },
		],
		nominal: ends.to - ends.from,
	});
	return [
		across("width-nut", "strip at the nut", 0),
		across("width-last-fret", "strip at the last fret", lastFret),
		length,
		...movedNutClaim(bench),
		...markers.flatMap((marker) => markerClaims(bench, marker)),
	];
}

function movedNutClaim(bench: Bench): SizeClaim[] {
	const { nutShift } = bench.neck;
	if (nutShift === 0) return [];
	const [a, b] = nutLine(bench.neck, nutShift);
	const at = pointOnFret({ n: 0, x: nutShift, lean: (b.x - a.x) / (b.y - a.y) }, 0);
	return [
		scoredSize(bench, {
			id: "nut-face",
			kind: "position",
			feature: "actual nut face",
			datum: NUT,
			axis: "x",
			at: [ORIGIN, at],
			nominal: nutShift,
		}),
	];
}

function markerClaims(bench: Bench, { id, at, feature }: MarkerCentre): SizeClaim[] {
	const along = scoredSize(bench, {
		id: `${id}-along`,
		kind: "position",
		feature,
		datum: NUT,
		axis: "x",
		at: [ORIGIN, at],
		nominal: at.x,
	});
	const across = scoredSize(bench, {
		id: `${id}-across`,
		kind: "position",
		feature,
		datum: "centre line",
		axis: "y",
		at: [{ x: at.x, y: 0 }, at],
		nominal: at.y,
		series: "marker from the centre line",
	});
	return [along, across];
}
