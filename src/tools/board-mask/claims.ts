import type { SizeClaim } from "../../drawing/index.js";
import { isFanned } from "../../neck/index.js";
import { cutSize } from "../size.js";
import type { Slot } from "../slot-strip/lay.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import { type MaskPiece, sideAt } from "./pieces.js";
import { onCentre, turnOf } from "./sheet.js";

/** From a rounded corner, however slanted, to where the height is measured, mm. */
const OFF_CORNER = 4 * CORNER_RADIUS;

/** What distances along a piece are measured from: the nut, or a later piece's own end. */
interface Datum {
	readonly name: string;
	readonly x: number;
}

/** Promises of a piece: each window's place, length, width and slant, and the piece's own size. */
export function pieceClaims(
	bench: Bench,
	piece: MaskPiece,
	width: number,
	isFirst: boolean,
): SizeClaim[] {
	const datum = isFirst
		? { name: "theoretical nut", x: 0 }
		: { name: "nut end of the piece", x: piece.from };
	return [
		...piece.windows.flatMap((window) => windowClaims(bench, window, width, datum)),
		cutSize(bench, {
			id: "length",
			kind: "length",
			feature: "mask",
			datum: "nut end",
			axis: "x",
			at: [
				{ x: piece.from, y: 0 },
				{ x: piece.to, y: 0 },
			],
			nominal: piece.to - piece.from,
		}),
		...heightClaim(bench, piece),
	];
}

/** The height just before the far corners; a short piece with slanted ends may have none. */
function heightClaim(bench: Bench, { lower, upper }: MaskPiece): SizeClaim[] {
	const from = Math.max(lower[0]!.x, upper[0]!.x) + OFF_CORNER;
	const to = Math.min(lower.at(-1)!.x, upper.at(-1)!.x) - OFF_CORNER;
	if (from > to) return [];
	const x = to;
	const [low, high] = [sideAt(lower, x), sideAt(upper, x)];
	const height = cutSize(bench, {
		id: "height",
		kind: "length",
		feature: "mask",
		datum: "mask",
		axis: "y",
		at: [
			{ x, y: low },
			{ x, y: high },
		],
		nominal: high - low,
	});
	return [height];
}

function windowClaims(bench: Bench, window: Slot, width: number, datum: Datum): SizeClaim[] {
	const { fret, bass, treble, length } = window;
	const feature = `window ${fret.n}`;
	const id = `window-${fret.n}`;
	const at = { x: onCentre(window), y: 0 };
	const origin = { x: datum.x, y: 0 };
	const turn = turnOf(window);
	const [ux, uy] = [(Math.cos(turn) * width) / 2, (-Math.sin(turn) * width) / 2];
	const claims = [
		cutSize(bench, {
			id: `${id}-centre`,
			kind: "position",
			feature,
			datum: datum.name,
			axis: "x",
			at: [origin, at],
			nominal: at.x - datum.x,
		}),
		cutSize(bench, {
			id: `${id}-length`,
			kind: "width",
			feature,
			datum: feature,
			axis: "line",
			at: [bass, treble],
			nominal: length,
			series: "window length",
		}),
		cutSize(bench, {
			id: `${id}-width`,
			kind: "width",
			feature,
			datum: feature,
			axis: "line",
			at: [
				{ x: at.x - ux, y: at.y - uy },
				{ x: at.x + ux, y: at.y + uy },
			],
			nominal: width,
			series: "window width",
		}),
	];
	if (!isFanned(bench.neck)) return claims;
	const slant = cutSize(bench, {
		id: `${id}-slant`,
		kind: "angle",
		feature,
		datum: "square of the centre line",
		axis: "line",
		at: [origin, bass, treble],
		nominal: turn,
		series: "window slant",
	});
	return [...claims, slant];
}
