import type { SizeClaim } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { crossingOf, isFanned, widthAt } from "../../neck/index.js";
import type { MarkerCentre } from "../marker-centres.js";
import { cutSize, scoredSize } from "../size.js";
import type { Bench } from "../tool.js";
import type { Ends, Slot } from "./lay.js";
import type { StripSettings } from "./settings.js";

const ORIGIN: Point = { x: 0, y: 0 };
const NUT = "theoretical nut";

/** Promises of every slot: where, how long, how slanted, and how wide if it is cut to a width. */
export function slotClaims(
	bench: Bench,
	slots: readonly Slot[],
	s: Pick<StripSettings, "slots">,
): SizeClaim[] {
	const { neck, wire } = bench;
	const fanned = isFanned(neck);
	const size = s.slots === "scored" ? scoredSize : cutSize;
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
				...(fret.n > 0 ? endClaims(bench, fret.n, size) : []),
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
			claims.push(
				size(bench, {
					...common,
					id: `${id}-width`,
					datum: feature,
					kind: "width",
					axis: "line",
					at: acrossSlot(at, fret.lean, wire.tangWidth),
					nominal: wire.tangWidth,
					series: "slot width",
				}),
			);
		}
		return claims;
	});
}

/** The two flank points of a slot, square across it at the centre line. */
function acrossSlot(at: Point, lean: number, width: number): Point[] {
	const slant = Math.atan(lean);
	const [ux, uy] = [(Math.cos(slant) * width) / 2, (-Math.sin(slant) * width) / 2];
	return [
		{ x: at.x - ux, y: at.y - uy },
		{ x: at.x + ux, y: at.y + uy },
	];
}

/** Along a fanned board each slot is also measured on the two outer strings. */
function endClaims(bench: Bench, n: number, size: typeof cutSize): SizeClaim[] {
	return (["bass", "treble"] as const).map((side) => {
		const string = bench.neck.guides[side];
		const { at, along } = crossingOf(bench.neck, string, n);
		return size(bench, {
			id: `slot-${n}-${side}-string`,
			kind: "position",
			feature: `slot ${n}`,
			datum: `nut on the outer ${side} string`,
			axis: "line",
			at: [string.nut, at],
			nominal: along,
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
	return [
		scoredSize(bench, {
			id: "nut-face",
			kind: "position",
			feature: "actual nut face",
			datum: NUT,
			axis: "x",
			at: [ORIGIN, { x: nutShift, y: 0 }],
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
