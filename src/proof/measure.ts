import type { Claim, LabelClaim, SizeClaim } from "../drawing/index.js";
import type { Lettering } from "../lettering/index.js";
import type { Cutter } from "./cut.js";
import { type Finished, finishedPart } from "./finished.js";
import { type LabelHeights, labelHeights } from "./measure-labels.js";
import { angleOf, type FeatureLines, featureLines, positionOf } from "./measure-lines.js";
import { depthOf } from "./measure-recess.js";
import { arcOf, holeOf, type Round } from "./measure-rounds.js";
import { sizeOf, straightnessOf } from "./measure-sizes.js";
import { toleranceOf } from "./tolerance.js";
import type { Measured, PromisedPart, ReadStroke } from "./types.js";

/** A measured claim with what its figure alone does not tell. */
export interface Remarked extends Measured {
	/**
	 * `not-round`: its edge leaves the circle by `by`; `off-place`: it lies `by` beside its claimed
	 * place; `font-not-given`: a label that is set in a lettering which is not at hand.
	 */
	readonly remark?: {
		readonly kind: "not-round" | "off-place" | "font-not-given";
		readonly by: number;
	};
}

/** Farthest that an arc may lie beside its circle, mm: over twice what the sweep's chords do. */
const ROUND = 0.0005;

/**
 * Every claim of a part measured in the strokes of a file. Features are found by where they lie
 * alone, within a millimetre of their claimed place; one that is not there gives NaN.
 *
 * @param strokes - in the part's own frame, mm
 * @param letters - the lettering that its labels are set in; null where it is not at hand
 * @param cutter - what sweeps the beam; a part that is moved for no kerf needs none
 * @returns one entry for each claim, in their order; `file` is left empty
 * @throws Error if a part that is moved for a kerf comes without a cutter
 */
export function measurePart(
	part: PromisedPart,
	strokes: readonly ReadStroke[],
	letters: Lettering | null,
	cutter: Cutter | null = null,
): Remarked[] {
	return measureFinished(part, finishedPart(part, strokes, cutter), letters);
}

/** The same of a part whose strokes are cut already. */
export function measureFinished(
	part: PromisedPart,
	finished: Finished,
	letters: Lettering | null,
): Remarked[] {
	const sizes = part.claims.filter((c): c is SizeClaim => c.kind !== "label");
	const labels = part.claims.filter((c): c is LabelClaim => c.kind === "label");
	const heights: LabelHeights = letters
		? labelHeights(labels, finished.pathsOf, letters)
		: new Map();
	const features = featureLines(finished, sizes);
	return part.claims.map((claim) => {
		if (claim.kind !== "label") return sized(finished, sizes, features, claim, part);
		const height = heights.get(claim);
		const known = measured(part.name, claim, height ?? Number.NaN, toleranceOf(claim, false));
		return height === undefined ? { ...known, remark: { kind: "font-not-given", by: 0 } } : known;
	});
}

function measured(part: string, claim: Claim, value: number, tolerance: number): Remarked {
	return { file: "", part, claim, value, deviation: value - claim.nominal, tolerance };
}

function sized(
	finished: Finished,
	claims: readonly SizeClaim[],
	features: FeatureLines,
	claim: SizeClaim,
	{ name }: PromisedPart,
): Remarked {
	const isSwept = finished.kerf > 0;
	if (claim.kind === "radius" || claim.kind === "sagitta" || claim.kind === "diameter") {
		const round = claim.kind === "diameter" ? holeOf(finished, claim) : arcOf(finished, claim);
		const tolerance = toleranceOf(claim, isSwept, round?.scatter);
		return rounded(measured(name, claim, round?.value ?? Number.NaN, tolerance), round);
	}
	return measured(
		name,
		claim,
		figureOf(finished, claims, features, claim),
		toleranceOf(claim, isSwept),
	);
}

function rounded(found: Remarked, round: Round | null): Remarked {
	if (!round) return found;
	const { outOfRound, offPlace } = round;
	if (outOfRound > ROUND) return { ...found, remark: { kind: "not-round", by: outOfRound } };
	if (offPlace > found.tolerance) return { ...found, remark: { kind: "off-place", by: offPlace } };
	return found;
}

function figureOf(
	finished: Finished,
	claims: readonly SizeClaim[],
	features: FeatureLines,
	claim: SizeClaim,
): number {
	switch (claim.kind) {
		case "position":
			return positionOf(finished, claims, features, claim);
		case "depth":
			return depthOf(finished, claims, claim);
		case "angle":
			return angleOf(finished, claims, claim);
		case "straightness":
			return straightnessOf(finished, claim);
		default:
			return sizeOf(finished, claims, claim);
	}
}
