import type { Mark, Part, SizeClaim } from "../drawing/index.js";
import {
	distance,
	pointAt,
	type Segment,
	type SegmentRef,
	segmentLength,
	segments,
} from "../geometry/index.js";

/** A feature that a round cut is too wide for: the first piece of it of which nothing is left. */
export interface Lost {
	/** As its claim names it, or else its mark. */
	readonly feature: string;
	readonly piece: Segment;
	/** Its width or diameter, where it is claimed. */
	readonly claim: SizeClaim | undefined;
	/** What is too small of it, mm: the claimed size, or else how long the piece is. */
	readonly size: number;
}

/**
 * The features whose segments an offset left nothing of, each once.
 *
 * @param cuts - the marks whose paths were offset, in that order
 */
export function lostFeatures(
	part: Part,
	cuts: readonly Mark[],
	vanished: readonly SegmentRef[],
): Lost[] {
	const lost = new Map<string, Lost>();
	for (const { contour, segment } of vanished) {
		const mark = cuts[contour]!;
		const piece = segments(mark.path)[segment]!;
		const claim = claimAt(part, mark, piece);
		const feature = claim?.feature ?? mark.feature;
		const size = claim?.nominal ?? segmentLength(piece);
		if (!lost.has(feature)) lost.set(feature, { feature, piece, claim, size });
	}
	return [...lost.values()];
}

/** How near a claim's points lie to the middle of a piece that they speak of, mm. */
const NEAR = 20;

/** The width or diameter claim that speaks of a piece: of the same feature, or else the nearest. */
function claimAt(part: Part, mark: Mark, piece: Segment): SizeClaim | undefined {
	const sizes = part.claims.filter(
		(c): c is SizeClaim => (c.kind === "width" || c.kind === "diameter") && c.operation === "cut",
	);
	const own = sizes.filter((c) => c.feature === mark.feature);
	if (own.length > 0) return own.sort((a, b) => a.nominal - b.nominal)[0];
	const middle = pointAt(piece, 0.5);
	const far = (c: SizeClaim) => Math.min(...c.at.map((p) => distance(p, middle)));
	const reach = piece.kind === "arc" ? Math.min(NEAR, 2 * piece.radius) : NEAR;
	const near = sizes.filter((c) => far(c) < reach).sort((a, b) => far(a) - far(b));
	return near[0];
}
