import { chiSquareTail } from "./chi-square.js";
import { fTail } from "./statistics.js";

/** A station's curvature as the fits take it, mm and 1/mm. */
export interface StationCurvature {
	readonly x: number;
	readonly curvature: number;
	readonly sd: number;
}

export type Form = "flat" | "cylinder" | "cone";

/** A form fitted to stations. */
export interface FormFit {
	readonly form: Form;
	/** Free numbers: 0 flat, 1 cylinder, 2 cone. */
	readonly free: number;
	readonly chi2: number;
	/** Curvature at x and its standard error; null where a cone has come to its tip. */
	readonly at: (x: number) => { readonly value: number; readonly sd: number } | null;
	/** Radius gained per mm of x, with its standard error; cones alone. */
	readonly growth?: { readonly value: number; readonly sd: number };
}

export function flatFit(stations: readonly StationCurvature[]): FormFit {
	const at = () => ({ value: 0, sd: 0 });
	return { form: "flat", free: 0, chi2: chi2Of(stations, at), at };
}

export function cylinderFit(stations: readonly StationCurvature[]): FormFit {
	const weights = stations.map((s) => s.sd ** -2);
	const sum = weights.reduce((a, b) => a + b, 0);
	const value = stations.reduce((s, { curvature }, i) => s + curvature * weights[i]!, 0) / sum;
	const at = () => ({ value, sd: 1 / Math.sqrt(sum) });
	return { form: "cylinder", free: 1, chi2: chi2Of(stations, at), at };
}

/** Steps after which no cone is found. */
const MOST_STEPS = 200;

/** Relative change of both radii at which the cone is found. */
const SETTLED = 1e-12;

/**
 * R(x) = p(1 − t) + q·t with p and q the radii at the first and last station, by least squares of
 * 1/R(x): what was read is nearly even in curvature, not in radius. Gauss and Newton's steps, halved
 * until they help. Null where stations lie in one place, or where no cone with radii above 0 fits
 * best (a board that goes flat, or hollow, at one end).
 *
 * @param start - radius to begin with, greater than 0
 */
export function coneFit(stations: readonly StationCurvature[], start: number): FormFit | null {
	const xs = stations.map((s) => s.x);
	const [first, last] = [Math.min(...xs), Math.max(...xs)];
	if (!(last > first)) return null;
	const share = (x: number) => (x - first) / (last - first);
	let ends: Ends = [start, start];
	for (let i = 0; i < MOST_STEPS; i++) {
		const next = betterEnds(stations, share, ends);
		const moved = Math.max(...next.map((v, k) => Math.abs(v / ends[k]! - 1)));
		ends = next;
		if (moved < SETTLED) return coneOf(stations, share, ends, last - first);
	}
	return null;
}

type Ends = readonly [p: number, q: number];

function radiusBetween([p, q]: Ends, t: number): number {
	return p * (1 - t) + q * t;
}

function chi2Of(stations: readonly StationCurvature[], at: FormFit["at"]): number {
	return stations.reduce((s, { x, curvature, sd }) => {
		const fitted = at(x);
		return fitted ? s + ((curvature - fitted.value) / sd) ** 2 : Number.POSITIVE_INFINITY;
	}, 0);
}

/** Normal matrix and right side of one step. */
function normalOf(stations: readonly StationCurvature[], share: (x: number) => number, ends: Ends) {
	const n = { pp: 0, pq: 0, qq: 0, p: 0, q: 0, chi2: 0 };
	for (const { x, curvature, sd } of stations) {
		const t = share(x);
		const k = 1 / radiusBetween(ends, t);
		const off = (curvature - k) / sd;
		const [byP, byQ] = [(-k * k * (1 - t)) / sd, (-k * k * t) / sd];
		n.pp += byP * byP;
		n.pq += byP * byQ;
		n.qq += byQ * byQ;
		n.p += byP * off;
		n.q += byQ * off;
		n.chi2 += off * off;
	}
	return n;
}

function betterEnds(
	stations: readonly StationCurvature[],
	share: (x: number) => number,
	ends: Ends,
): Ends {
	const n = normalOf(stations, share, ends);
	const det = n.pp * n.qq - n.pq * n.pq;
	const [dp, dq] = [(n.p * n.qq - n.q * n.pq) / det, (n.q * n.pp - n.p * n.pq) / det];
	for (let part = 1; part > Number.EPSILON; part /= 2) {
		const next: Ends = [ends[0] + part * dp, ends[1] + part * dq];
		if (!(next[0] > 0 && next[1] > 0)) continue;
		if (normalOf(stations, share, next).chi2 <= n.chi2) return next;
	}
	return ends;
}

function coneOf(
	stations: readonly StationCurvature[],
	share: (x: number) => number,
	ends: Ends,
	span: number,
): FormFit {
	const { pp, pq, qq, chi2 } = normalOf(stations, share, ends);
	const det = pp * qq - pq * pq;
	const variance = (u: number, v: number) => (u * u * qq - 2 * u * v * pq + v * v * pp) / det;
	const at = (x: number) => {
		const t = share(x);
		const radius = radiusBetween(ends, t);
		if (!(radius > 0)) return null;
		return { value: 1 / radius, sd: Math.sqrt(variance(1 - t, t)) / radius ** 2 };
	};
	const growth = { value: (ends[1] - ends[0]) / span, sd: Math.sqrt(variance(-1, 1)) / span };
	return { form: "cone", free: 2, chi2, at, growth };
}

/** Whether the richer of two forms has earned its one free number. */
export interface FormComparison {
	readonly from: Form;
	readonly to: Form;
	readonly test: "chi-square" | "F";
	readonly statistic: number;
	/** Chance of as great a gain if the simpler form is true. */
	readonly chance: number;
	readonly wins: boolean;
}

/** Chance below which the richer form wins, and below which a fit's scatter is too great. */
const ONE_PERCENT = 0.01;

/** χ² that stations keep whatever smooth form they have, and the degrees of freedom left. */
export interface Scatter {
	readonly chi2: number;
	readonly df: number;
}

/** What the best of cone and evenly changing curvature leaves: the latter fits where no cone does. */
export function leftOver(stations: readonly StationCurvature[], cone: FormFit | null): Scatter {
	const slanted = slantedChi2(stations);
	return { chi2: cone ? Math.min(cone.chi2, slanted) : slanted, df: stations.length - 2 };
}

/** χ² of the best 1/R = a + b·x. */
function slantedChi2(stations: readonly StationCurvature[]): number {
	const sum = { w: 0, x: 0, k: 0, xx: 0, xk: 0, kk: 0 };
	for (const { sd } of stations) sum.w += sd ** -2;
	for (const { x, curvature, sd } of stations) {
		sum.x += (x * sd ** -2) / sum.w;
		sum.k += (curvature * sd ** -2) / sum.w;
	}
	for (const { x, curvature, sd } of stations) {
		const [dx, dk] = [(x - sum.x) / sd, (curvature - sum.k) / sd];
		sum.xx += dx * dx;
		sum.xk += dx * dk;
		sum.kk += dk * dk;
	}
	return sum.xx > 0 ? Math.max(0, sum.kk - sum.xk ** 2 / sum.xx) : sum.kk;
}

/**
 * The richer form against the simpler one, won at 1 %.
 *
 * The readings' uncertainties are known from their steps, so the gain in χ² is itself chi-square
 * on one degree. Where even the richest form scatters more than they allow (what it leaves lies
 * beyond 1 %), they are too small to judge by, and F on that scatter decides.
 */
export function comparison(simple: FormFit, rich: FormFit, left: Scatter): FormComparison {
	const gain = Math.max(0, simple.chi2 - rich.chi2);
	const scattered = excess(left) > 1;
	const statistic = scattered ? gain / (left.chi2 / left.df) : gain;
	const chance = scattered ? fTail(statistic, 1, left.df) : chiSquareTail(gain, 1);
	const test = scattered ? "F" : "chi-square";
	return { from: simple.form, to: rich.form, test, statistic, chance, wins: chance < ONE_PERCENT };
}

/** Whether the richer form would win if the readings' uncertainties were taken at their word. */
export function winsByUncertainties(simple: FormFit, rich: FormFit): boolean {
	return chiSquareTail(Math.max(0, simple.chi2 - rich.chi2), 1) < ONE_PERCENT;
}

/** √(χ²/df) where χ² lies beyond 1 %: by how much scatter exceeds the uncertainties; else 1. */
export function excess({ chi2, df }: Scatter): number {
	return df > 0 && chiSquareTail(chi2, df) < ONE_PERCENT ? Math.sqrt(chi2 / df) : 1;
}
