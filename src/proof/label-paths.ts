import type { LabelClaim } from "../drawing/index.js";
import type { Path } from "../geometry/index.js";
import { type Lettering, placedText } from "../lettering/index.js";
import type { PromisedPart } from "./types.js";

/** The strokes of a part's labels in its own frame, as far as the lettering is theirs. */
export function labelPaths(part: PromisedPart, letters: Lettering | null): Path[] {
	return letters ? labelsIn(part, letters).flatMap((label) => strokesOf(label, letters)) : [];
}

/** The strokes of the longest of a part's labels. */
export function longestLabel(part: PromisedPart, letters: Lettering | null): Path[] {
	const labels = letters ? labelsIn(part, letters) : [];
	if (!letters || labels.length === 0) return [];
	const longest = labels.reduce((a, b) => (b.text.length > a.text.length ? b : a));
	return strokesOf(longest, letters);
}

function labelsIn({ claims }: PromisedPart, letters: Lettering): LabelClaim[] {
	return claims.filter(
		(claim) =>
			claim.kind === "label" &&
			claim.font === letters.name &&
			letters.missing(claim.text).length === 0,
	) as LabelClaim[];
}

function strokesOf({ text, height, at, turn }: LabelClaim, letters: Lettering): Path[] {
	return placedText(letters, text, height, at[0], turn, "left").paths;
}
