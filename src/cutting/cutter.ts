import type { Part, SizeClaim } from "../drawing/index.js";
import { offset } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { type Lost, lostFeatures } from "./lost.js";

/**
 * By how much less than its radius a cutter is tried, mm: what is exactly as wide as the cutter
 * can be milled, while an exact offset leaves nothing of it.
 */
const SNUG = 1e-4;

/**
 * What a round cutter cannot mill of a part, each feature once, with the size that is too small:
 * a hole, notch or slot narrower than the cutter, an inside radius below the cutter's, a notch
 * so shallow that the rounds at its floor would leave nothing of its flanks.
 *
 * The contours stay nominal: the milling program offsets them. Inside corners are no fault; they
 * keep the cutter's radius.
 *
 * @param cutter - diameter, mm, above 0.001
 * @example a hole of 3 mm and a cutter of 3.175 mm: "narrower-than-cutter" with both figures
 */
export function cutterProblems(part: Part, cutter: number): Problem[] {
	const cuts = part.marks.filter((m) => m.operation === "cut" && m.path.closed);
	if (part.nominal || cuts.length === 0) return [];
	const contours = cuts.map((m) => m.path);
	const { vanished, paths } = offset(contours, cutter / 2 - SNUG);
	const lost = lostFeatures(part, cuts, vanished);
	if (lost.length > 0) return lost.map((one) => problemOf(part, one, cutter));
	if (paths.length === cuts.length) return [];
	return [problem("throat-below-cutter", [], { part: part.name, cutter })];
}

function problemOf(part: Part, { feature, piece, claim, size }: Lost, cutter: number): Problem {
	const facts = { part: part.name, feature, cutter };
	if (piece.kind === "arc" && piece.radius < cutter / 2 && claim?.kind !== "diameter") {
		return problem("radius-below-cutter", [], { ...facts, size: piece.radius });
	}
	const depth = depthOf(part, feature);
	if (claim && size >= cutter - 2 * SNUG && depth !== undefined) {
		return problem("shallower-than-cutter", [], { ...facts, size: depth });
	}
	return problem("narrower-than-cutter", [], { ...facts, size });
}

function depthOf({ claims }: Part, feature: string): number | undefined {
	return claims.find((c): c is SizeClaim => c.kind === "depth" && c.feature === feature)?.nominal;
}
