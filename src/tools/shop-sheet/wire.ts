import { arcLengthOfChord } from "../../geometry/index.js";
import {
	edgePoint,
	type FretLine,
	fretLength,
	fretLine,
	fretNumbers,
	type Neck,
	radiusAt,
	type Stretch,
	stretches,
} from "../../neck/index.js";
import { MM_PER_INCH } from "../../units/index.js";
import type { ShopSheetSettings } from "./settings.js";

/** Parts of Simpson's rule over a smooth stretch of a fret: exact to 1e-9 mm unless the board is nearly half a circle. */
const PARTS = 64;

/**
 * Length of a fret over the crown of the board, edge to edge, mm.
 *
 * Square to the centre line the board's section is a circle: 2R·asin(w/2R). Along a slanted fret it
 * is an ellipse, or less regular on a compound board: ∫√(1 + m² + z'²)dy, m the fret's lean dx/dy
 * and z = √(R² − y²) − R, R that of the board under each point. Flat boards: the straight length.
 *
 * @throws RangeError where half the board is wider than its radius
 * @example a fret 56 mm wide on 304.8 mm: 56.0790…
 */
export function overCrown(neck: Neck, fret: FretLine): number {
	if (neck.radius === "flat") return fretLength(neck, fret);
	const [from, to] = ends(neck, fret);
	const pieces = stretches(neck.radius);
	if (fret.lean === 0) {
		const here = pieces.find((s) => fret.x <= s.to)!;
		return arcLengthOfChord(radiusOn(here, fret.x), to - from);
	}
	return pieces.reduce((sum, piece) => {
		const inside = [piece.from, piece.to].map((x) => (x - fret.x) / fret.lean);
		const low = Math.max(from, Math.min(...inside));
		const high = Math.min(to, Math.max(...inside));
		return high > low ? sum + simpson((y) => steepness(piece, fret, y), low, high) : sum;
	}, 0);
}

/** How a fret's end lies beside its circle: half the board, and the radius there, mm. */
export interface OffCrown {
	readonly fret: number;
	readonly half: number;
	readonly radius: number;
}

/** The first fret that ends where the board's radius is less than half the board, or null. */
export function offCrown(neck: Neck): OffCrown | null {
	for (const n of fretNumbers(neck)) {
		for (const side of [-1, 1] as const) {
			const end = edgePoint(neck, fretLine(neck, n), side);
			const radius = radiusAt(neck, end.x);
			const half = Math.abs(end.y);
			if (radius !== null && !(radius > half)) return { fret: n, half, radius };
		}
	}
	return null;
}

/** Heights of the fret's two ends over the centre line, the lower first. */
function ends(neck: Neck, fret: FretLine): [number, number] {
	const [a, b] = [edgePoint(neck, fret, -1).y, edgePoint(neck, fret, 1).y];
	return a < b ? [a, b] : [b, a];
}

function radiusOn({ x, value, slope }: Stretch, at: number): number {
	return value + slope * (at - x);
}

/** Wire over a millimetre of y. */
function steepness(piece: Stretch, { x, lean }: FretLine, y: number): number {
	const radius = radiusOn(piece, x + y * lean);
	if (!(radius > Math.abs(y))) throw new RangeError(`no board at ${y} on a radius of ${radius}`);
	const growth = piece.slope * lean;
	const fall = (radius * growth - y) / Math.sqrt((radius - y) * (radius + y)) - growth;
	return Math.sqrt(1 + lean * lean + fall * fall);
}

function simpson(f: (t: number) => number, from: number, to: number): number {
	const step = (to - from) / PARTS;
	let sum = f(from) + f(to);
	for (let i = 1; i < PARTS; i++) sum += (i % 2 === 0 ? 2 : 4) * f(from + i * step);
	return (sum * step) / 3;
}

/** The wire of one fret, mm. */
export interface WirePiece {
	readonly fret: number;
	readonly length: number;
}

/** The wire that a neck takes, mm. */
export interface WireList {
	readonly pieces: readonly WirePiece[];
	/** Of all pieces. */
	readonly total: number;
	/** The total and the waste. */
	readonly order: number;
}

/** A piece for every fret: its length over the crown and the overhang at both ends. */
export function wireList(neck: Neck, { overhang, waste }: ShopSheetSettings): WireList {
	const pieces = fretNumbers(neck).map((fret) => ({
		fret,
		length: overCrown(neck, fretLine(neck, fret)) + 2 * overhang,
	}));
	const total = pieces.reduce((sum, { length }) => sum + length, 0);
	return { pieces, total, order: total * (1 + waste / 100) };
}

/** Shorter than this is the noise of a sum, no wire: nothing is rounded up for it, inch. */
const NOISE = 1e-9;

/**
 * A length to be bought, rounded up to whole inches.
 *
 * @example feetAndInches(1524) // "5 ft 0 in"
 * @example feetAndInches(1525) // "5 ft 1 in"
 */
export function feetAndInches(mm: number): string {
	const whole = Math.ceil(mm / MM_PER_INCH - NOISE);
	return `${Math.floor(whole / 12)} ft ${whole % 12} in`;
}
