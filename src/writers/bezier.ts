import { type Path, type Point, type Segment, segments } from "../geometry/index.js";
import { inPieces } from "./pieces.js";

/**
 * How far a curve may leave the circle that it stands for, mm: a tenth of the micrometre that is
 * promised from formula to file. Rounding of the written points comes on top, under 1e-6.
 */
export const OFF_CIRCLE = 1e-4;

/** Sine and cosine of θ/4 at a quarter turn. */
const SIN_LARGEST = Math.sin(Math.PI / 8);
const COS_LARGEST = Math.cos(Math.PI / 8);

/** A straight piece of a contour, or one cubic Bézier curve. */
export type Piece =
	| { readonly kind: "line"; readonly end: Point }
	| { readonly kind: "curve"; readonly one: Point; readonly two: Point; readonly end: Point };

/**
 * Largest sweep of an arc, radians, whose cubic stays within `OFF_CIRCLE`; a quarter turn at most.
 *
 * The curve meets its circle in position and direction at both ends and at its middle. |B|² − r²
 * is of sixth degree in t, so that these three double roots are all it has:
 * |B|² − r² = K·t²(1 − t)²(1 − 2t)². With s and c the sine and cosine of θ/4, the term of t³ in B
 * is −8r·s³/c long, hence K = (8r·s³/c)²/4 = 16r²·s⁶/c². t(1 − t)(1 − 2t) is √3/18 at most, its
 * square 1/108; so the curve lies outside its circle, never inside, and by no more than
 * (2/27)·r·s⁶/c². Here c is taken at a quarter turn, where it is least, and s is solved for.
 *
 * @param radius - greater than 0
 * @example longestSweep(0.3) // 1.5707963…
 */
export function longestSweep(radius: number): number {
	const sixth = (13.5 * OFF_CIRCLE * COS_LARGEST ** 2) / radius;
	return 4 * Math.asin(Math.min(SIN_LARGEST, sixth ** (1 / 6)));
}

/**
 * A path as lines and cubic Bézier curves, from its first point on; a closed path comes back to it.
 *
 * Ends of segments stay exactly as they are.
 *
 * @throws RangeError if the ends of an arc coincide
 */
export function piecesOf(path: Path): Piece[] {
	return segments(path).flatMap((segment): Piece[] =>
		segment.kind === "line" ? [{ kind: "line", end: segment.end }] : curvesOf(segment),
	);
}

function curvesOf({ start, end, radius, sweep }: Extract<Segment, { kind: "arc" }>): Piece[] {
	const points = [
		{ ...start, bulge: Math.tan(sweep / 4) },
		{ ...end, bulge: 0 },
	];
	const arcs = inPieces({ points, closed: false }, longestSweep(radius)).points;
	return arcs.slice(1).map((to, i) => curve(arcs[i]!, to, arcs[i]!.bulge));
}

/**
 * The cubic of an arc of bulge b = tan(θ/4): both handles are 4/3·b·r long, which for a chord d is
 * |d|(1 + b²)/3, and lean by θ/2 from it, where cos = (1 − b²)/(1 + b²) and sin = 2b/(1 + b²). So
 * along the chord a handle reaches (1 − b²)/3 of it and beside it 2b/3, and the centre, which may be
 * kilometres away, is not needed.
 */
function curve(from: Point, to: Point, bulge: number): Piece {
	const [x, y] = [to.x - from.x, to.y - from.y];
	const along = (1 - bulge * bulge) / 3;
	const beside = (2 * bulge) / 3;
	return {
		kind: "curve",
		one: { x: from.x + along * x + beside * y, y: from.y + along * y - beside * x },
		two: { x: to.x - along * x + beside * y, y: to.y - along * y - beside * x },
		end: { x: to.x, y: to.y },
	};
}
