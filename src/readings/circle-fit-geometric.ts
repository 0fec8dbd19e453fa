import { inverse, Matrix } from "ml-matrix";
import type { Point } from "../geometry/index.js";
import { type CircleForm, circleFitTaubin } from "./circle-fit-taubin.js";

/** The circle with the least sum of squared distances from points. */
export interface CircleFit {
	/** 1/R, above 0 where the circle bulges towards +y by the points' centroid; 0 for a line. */
	readonly curvature: number;
	/** Infinite for a line. */
	readonly radius: number;
	/** Null for a line. */
	readonly centre: Point | null;
	/** Distance of each point from the circle, above 0 on its +y side by the centroid. */
	readonly residuals: readonly number[];
	/** What the curvature gains by a mm of each point along its normal, 1/mm². */
	readonly leverage: readonly number[];
	/** Across the circle at each point, as a unit. */
	readonly normals: readonly Point[];
}

/** Curvature half (A), offset (D) and direction of the gradient: regular where a circle turns into a line. */
type Parameters = readonly [a: number, d: number, angle: number];

interface State {
	readonly at: Parameters;
	readonly distances: readonly number[];
	readonly slopes: readonly Parameters[];
	readonly sum: number;
}

/** Steps after which the fit stops; a dozen is usual. */
const MOST_STEPS = 200;

/** Rounding of the sum of squares: a step that changes it by less is judged by its length alone. */
const ROUNDING = 4 * Number.EPSILON;

/** Steps, of points that reach out to 1, below which nothing moves. */
const SETTLED = 1e-14;

/**
 * Circle through points by least squared orthogonal distances.
 *
 * Levenberg's and Marquardt's steps on A(x² + y²) + E(x cos θ + y sin θ) + D = 0, E = √(1 + 4AD)
 * (Chernov and Lesort, J. Math. Imaging Vision 23, 2005): lines, flat arcs and full circles alike.
 * Starts are Taubin's circle and the points' line; the better end counts. Moving or turning the points
 * moves and turns the circle alone.
 *
 * @param points - three or more, not all in one place
 * @throws RangeError for fewer than three points
 * @example circleFitGeometric([(1, 7), (2, 6), (5, 8), (7, 7), (9, 5), (3, 7)]).radius // 4.714226
 */
export function circleFitGeometric(points: readonly Point[]): CircleFit {
	if (points.length < 3) throw new RangeError(`a circle needs three points, not ${points.length}`);
	const { middle, size } = frameOf(points);
	const unit = points.map((p) => ({ x: (p.x - middle.x) / size, y: (p.y - middle.y) / size }));
	const taubin = circleFitTaubin(unit);
	const starts = [lineThrough(unit), ...(taubin ? [parametersOf(taubin)] : [])];
	const [best] = starts.map((s) => descend(unit, s)).sort((a, b) => a.sum - b.sum);
	return fitOf(upward(best!, unit), unit, middle, size);
}

function frameOf(points: readonly Point[]) {
	const n = points.length;
	const middle = {
		x: points.reduce((s, p) => s + p.x, 0) / n,
		y: points.reduce((s, p) => s + p.y, 0) / n,
	};
	const size = Math.max(...points.map((p) => Math.hypot(p.x - middle.x, p.y - middle.y)));
	if (!(size > 0)) throw new RangeError("all points lie in one place");
	return { middle, size };
}

/** The line of least squared distances through the origin. */
function lineThrough(points: readonly Point[]): Parameters {
	const xy = points.reduce((s, { x, y }) => s + 2 * x * y, 0);
	const difference = points.reduce((s, { x, y }) => s + (x * x - y * y), 0);
	return [0, 0, Math.atan2(xy, difference) / 2 + Math.PI / 2];
}

function parametersOf({ a, b, c, d }: CircleForm): Parameters {
	return [a, d, Math.atan2(c, b)];
}

/** Distances and their derivatives by the parameters. */
function stateAt(points: readonly Point[], at: Parameters): State {
	const [a, d, angle] = at;
	const e = Math.sqrt(1 + 4 * a * d);
	const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
	const distances: number[] = [];
	const slopes: Parameters[] = [];
	for (const { x, y } of points) {
		const z = x * x + y * y;
		const u = x * cos + y * sin;
		const p = a * z + e * u + d;
		const q = Math.sqrt(Math.max(0, 1 + 4 * a * p));
		const distance = (2 * p) / (1 + q);
		// At the very centre (q = 0) the distance has no slope; no step is taken from there.
		const r = (2 * (1 - (a * distance) / q)) / (1 + q);
		distances.push(distance);
		slopes.push([
			(z + (2 * d * u) / e) * r - distance ** 2 / q,
			((2 * a * u) / e + 1) * r,
			(y * cos - x * sin) * e * r,
		]);
	}
	return { at, distances, slopes, sum: distances.reduce((s, v) => s + v * v, 0) };
}

function descend(points: readonly Point[], start: Parameters): State {
	let state = stateAt(points, start);
	let damping = 1e-3;
	for (let i = 0; i < MOST_STEPS && damping < 1e12; i++) {
		const next = stateAt(points, stepFrom(state, damping));
		if (!(next.sum <= state.sum * (1 + ROUNDING))) {
			damping *= 10;
			continue;
		}
		const step = Math.max(...next.at.map((v, k) => Math.abs(v - state.at[k]!)));
		state = next;
		damping /= 10;
		if (step < SETTLED) break;
	}
	return state;
}

function stepFrom({ at, distances, slopes }: State, damping: number): Parameters {
	const j = new Matrix(slopes.map((s) => [...s]));
	const normal = j.transpose().mmul(j);
	for (let k = 0; k < 3; k++) normal.set(k, k, normal.get(k, k) * (1 + damping) + Number.MIN_VALUE);
	const right = j.transpose().mmul(Matrix.columnVector([...distances]));
	const step = inverse(normal, true).mmul(right).to1DArray();
	return [at[0] - step[0]!, at[1] - step[1]!, at[2] - step[2]!];
}

/** The same circle, its gradient at the origin towards +y. */
function upward(state: State, points: readonly Point[]): State {
	const [a, d, angle] = state.at;
	return Math.sin(angle) < 0 ? stateAt(points, [-a, -d, angle + Math.PI]) : state;
}

function fitOf(state: State, points: readonly Point[], middle: Point, size: number): CircleFit {
	const [a, d, angle] = state.at;
	const e = Math.sqrt(1 + 4 * a * d);
	const j = new Matrix(state.slopes.map((s) => [...s]));
	const solver = inverse(j.transpose().mmul(j), true).mmul(j.transpose());
	const centre =
		a === 0
			? null
			: {
					x: middle.x - (size * e * Math.cos(angle)) / (2 * a),
					y: middle.y - (size * e * Math.sin(angle)) / (2 * a),
				};
	return {
		curvature: (2 * a) / size,
		radius: a === 0 ? Number.POSITIVE_INFINITY : size / Math.abs(2 * a),
		centre,
		residuals: state.distances.map((v) => v * size),
		leverage: solver.getRow(0).map((v) => (-2 * v) / size ** 2),
		normals: points.map((p) => {
			const x = 2 * a * p.x + e * Math.cos(angle);
			const y = 2 * a * p.y + e * Math.sin(angle);
			return { x: x / Math.hypot(x, y), y: y / Math.hypot(x, y) };
		}),
	};
}
