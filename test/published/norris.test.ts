import { expect, it } from "vitest";
import { leastSquares } from "../../src/readings/least-squares.js";

// NIST Statistical Reference Datasets, linear regression: Norris (ozone monitors), y/x in order.
const NORRIS = `.1/.2 338.8/337.4 118.1/118.2 888/884.6 9.2/10.1 228.1/226.5 668.5/666.3 998.5/996.3 449.1/448.6
778.9/777 559.2/558.2 .3/.4 .1/.6 778.1/775.5 668.8/666.9 339.3/338 448.9/447.5 10.8/11.6 557.7/556 228.3/228.1
998/995.8 888.8/887.6 119.6/120.2 .3/.3 .6/.3 557.6/556.8 339.3/339.1 888/887.2 998.5/999 778.9/779 10.2/11.1
117.6/118.3 228.9/229.2 668.4/669.1 449.2/448.9 .2/.5`;

/** Digits that agree: −log10 of the relative error, at most 15. */
function digits(found: number, certified: number): number {
	return Math.min(15, -Math.log10(Math.abs(found / certified - 1)));
}

it("fits the Norris data to the certified values in 12 digits or more", () => {
	const points = NORRIS.split(/\s+/u).map((p) => p.split("/").map(Number) as [number, number]);
	expect(points).toHaveLength(36);
	const fit = leastSquares(
		points.map(([, x]) => [1, x]),
		points.map(([y]) => y),
	);
	const variance = fit.rss / fit.df;
	const mean = points.reduce((sum, [y]) => sum + y, 0) / points.length;
	const total = points.reduce((sum, [y]) => sum + (y - mean) ** 2, 0);
	const agree = {
		b0: digits(fit.coefficients[0]!, -0.262323073774029),
		b1: digits(fit.coefficients[1]!, 1.00211681802045),
		sd0: digits(Math.sqrt(variance * fit.covariance[0]![0]!), 0.232818234301152),
		sd1: digits(Math.sqrt(variance * fit.covariance[1]![1]!), 0.000429796848199937),
		rSquared: digits(1 - fit.rss / total, 0.999993745883712),
		s: digits(Math.sqrt(variance), 0.884796396144373),
		rss: digits(fit.rss, 26.6173985294224),
	};
	console.log("Norris, digits that agree", agree);
	expect(fit.df).toBe(34);
	expect(Math.min(...Object.values(agree))).toBeGreaterThan(12);
});
