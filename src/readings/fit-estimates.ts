import { type CurveFit, varianceOf } from "./curve-fit.js";
import type { Estimate } from "./estimate.js";
import { estimate } from "./statistics.js";

/** A coefficient of a fit with its interval; without degrees of freedom the rule's step alone decides. */
export function estimateOf(fit: CurveFit, column: number, resolution: number): Estimate {
	const { coefficients, covariance } = fit.linear;
	const variance = varianceOf(fit, resolution) * covariance[column]![column]!;
	return estimate(coefficients[column]!, Math.sqrt(variance), degrees(fit));
}

/** Degrees of freedom of the residual variance; infinite where the rule's step alone gives it. */
export function degrees({ df }: CurveFit): number {
	return df > 0 ? df : Number.POSITIVE_INFINITY;
}
