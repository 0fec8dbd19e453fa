import type { Claim } from "../drawing/index.js";
import type { Fact, Problem } from "../problem/index.js";
import type { Remarked } from "./measure.js";
import type { Measured } from "./types.js";

/**
 * What is wrong with measured claims, in their order; none if all hold.
 *
 * `claim-failed`: a figure is farther off than its tolerance; `feature-missing`: what is promised
 * is not within reach of its place; `label-wrong`: a label's strokes are not there, or others
 * are; `not-round`: an arc or a hole leaves its circle; `off-place`: a hole lies elsewhere;
 * `font-not-given` (a warning, once for each part): labels are set in a lettering that is not at
 * hand, and were not measured.
 */
export function judged(measured: readonly Measured[]): Problem[] {
	const counts = new Map<string, number>();
	for (const one of measured) {
		if (isUnread(one)) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1);
	}
	return measured.flatMap((one) => {
		if (!isUnread(one)) return problemsOf(one);
		const count = counts.get(keyOf(one));
		counts.delete(keyOf(one));
		if (count === undefined) return [];
		const { file, part } = one;
		return [finding("font-not-given", { file, part, font: fontOf(one.claim), count }, "warning")];
	});
}

function isUnread({ remark }: Remarked): boolean {
	return remark?.kind === "font-not-given";
}

function keyOf({ file, part, claim }: Measured): string {
	return JSON.stringify([file, part, fontOf(claim)]);
}

function fontOf(claim: Claim): string {
	return claim.kind === "label" ? claim.font : "";
}

function problemsOf(one: Remarked): Problem[] {
	const { claim, value, deviation, tolerance, remark } = one;
	const facts = factsOf(one);
	if (!Number.isFinite(value)) {
		return claim.kind === "label"
			? [finding("label-wrong", { ...facts, text: claim.text })]
			: [finding("feature-missing", facts)];
	}
	const figures = { nominal: claim.nominal, measured: value, deviation, tolerance };
	const isOff = !(Math.abs(deviation) <= tolerance);
	return [
		...(isOff ? [finding("claim-failed", { ...facts, ...figures })] : []),
		...(remark ? [finding(remark.kind, { ...facts, by: remark.by })] : []),
	];
}

function factsOf({ file, part, claim }: Measured): Readonly<Record<string, Fact>> {
	return { file, part, claim: claim.id, feature: claim.feature, kind: claim.kind };
}

function finding(
	code: string,
	facts: Readonly<Record<string, Fact>>,
	severity: Problem["severity"] = "error",
): Problem {
	return { code, severity, where: { path: [] }, facts };
}
