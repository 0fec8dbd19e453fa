import type { Point } from "../geometry/index.js";
import type { Operation } from "./operation.js";

/**
 * What a part promises of one dimension. Claims are the only source of the dimensions drawn,
 * of the manifest and of the later proof; `at` says where on the part it is found:
 *
 * | kind | `at` | nominal |
 * |---|---|---|
 * | position | the datum, the feature | distance between them along `axis`; below 0 before the nut or under the centre line |
 * | width, length | both ends | distance between them along `axis` |
 * | depth | a point on the edge, a point on the floor | distance along `axis` |
 * | radius | start, middle and end of the arc | its radius |
 * | sagitta | start, middle and end of the arc | height over the chord |
 * | diameter | the centre | of the full circle around it |
 * | angle | the datum, the feature's two ends | signed turn of the feature from the y axis, radians |
 * | straightness | both ends of the edge | 0 |
 */
export interface SizeClaim {
	readonly id: string;
	readonly kind:
		| "position"
		| "width"
		| "length"
		| "depth"
		| "radius"
		| "sagitta"
		| "diameter"
		| "angle"
		| "straightness";
	/** What is measured: "notch 7". */
	readonly feature: string;
	/** What it is measured from: "theoretical nut". */
	readonly datum: string;
	readonly operation: Operation;
	readonly axis: "x" | "y" | "line";
	readonly at: readonly Point[];
	/** Millimetres; radians for an angle. */
	readonly nominal: number;
	/** ± what the user is promised of the finished part. */
	readonly bench: number;
	/** ± by which the written file is judged. */
	readonly file: number;
	/** Claims of one series ("notch width") are dimensioned once where their nominals agree. */
	readonly series?: string;
}

/** That a text stands on the part, to be read as drawn. */
export interface LabelClaim {
	readonly id: string;
	readonly kind: "label";
	readonly feature: string;
	readonly datum: string;
	readonly operation: Operation;
	readonly text: string;
	/** Left end of the baseline. */
	readonly at: readonly [Point];
	readonly height: number;
	/** Radians, counter-clockwise. */
	readonly turn: number;
	/** Name of the lettering, whose strokes the file must hold. */
	readonly font: string;
	/** Height of capitals, mm: what is promised of a label's size. */
	readonly nominal: number;
	readonly bench: number;
	readonly file: number;
}

export type Claim = SizeClaim | LabelClaim;

/** How people call what a size claim promises: a length along y is a height. */
export function kindText({ kind, axis }: SizeClaim): string {
	return kind === "length" && axis === "y" ? "height" : kind;
}

/** What a written file is judged by: the project's accuracy budget. */
export const FILE_TOLERANCE = 0.001;
