import type { Point } from "./path.js";

/** Why contours have no offset. */
export type OffsetFault =
	/** A path is open, too short, has a vertex twice or a coordinate that is no number. */
	| "not-a-contour"
	/** Contours cross themselves or each other. */
	| "crossing"
	/** There is no material on a contour's left, or some on its right. */
	| "wrong-side"
	/** The distance is not finite, or too small to tell the offset from the contour. */
	| "distance"
	/** The pieces found do not join into closed contours. */
	| "broken";

/** No offset can be made; nothing is repaired or left out. */
export class OffsetError extends RangeError {
	constructor(
		readonly fault: OffsetFault,
		message: string,
		/** Which of the given contours, from 0; null where it is none in particular. */
		readonly contour: number | null = null,
		readonly at: Point | null = null,
	) {
		super(message);
		this.name = "OffsetError";
	}
}
