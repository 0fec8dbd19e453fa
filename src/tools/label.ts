import type { LabelClaim, Mark, Operation } from "../drawing/index.js";
import { FILE_TOLERANCE } from "../drawing/index.js";
import type { Point } from "../geometry/index.js";
import { placedText } from "../lettering/layout.js";
import { LETTER_HEIGHTS, type Lettering } from "../lettering/lettering.js";

/** A text on a part: what is drawn and what is claimed of it. */
export interface Label {
	readonly marks: readonly Mark[];
	readonly claim: LabelClaim;
	readonly width: number;
}

export interface LabelPlace {
	readonly at: Point;
	readonly height: number;
	readonly turn?: number;
	readonly align?: "left" | "centre" | "right";
	readonly operation?: Operation;
}

/** How exactly a label sits on the finished part, mm. */
const BENCH_LABEL = 0.5;

/** Letters a text on a part. @throws RangeError on a character that the lettering lacks */
export function label(letters: Lettering, id: string, text: string, place: LabelPlace): Label {
	const { height, turn = 0, align = "left", operation = "engrave" } = place;
	const set = placedText(letters, text, height, place.at, turn, align);
	const feature = `label ${id}`;
	return {
		width: set.width,
		marks: set.paths.map((path) => ({ operation, path, feature })),
		claim: {
			id: `label-${id}`,
			kind: "label",
			feature,
			datum: "part",
			operation,
			text,
			at: [set.at],
			height,
			turn,
			font: letters.name,
			nominal: height,
			bench: BENCH_LABEL,
			file: FILE_TOLERANCE,
		},
	};
}

/** The largest ISO 3098 height, at most `most`, at which a text takes no more than `room`. */
export function heightToFit(
	letters: Lettering,
	text: string,
	room: number,
	most: number,
): number | null {
	const heights = LETTER_HEIGHTS.filter((h) => h <= most).reverse();
	return heights.find((h) => letters.width(text, h) <= room) ?? null;
}
