import { distance } from "fastest-levenshtein";

/**
 * The known word that a mistyped one most likely meant: one slip away from a short one,
 * two or a third of its letters from a longer one; else one that it begins with or the other way round ("inches": in); "" if there is none.
 *
 * @example nearest("radius-gage", ["slot-strip", "radius-gauge"]) // "radius-gauge"
 */
export function nearest(given: string, known: readonly string[]): string {
	const word = given.toLowerCase();
	// Comparing a very long word takes long and finds nothing.
	if (word === "" || word.length > 100) return "";
	let best = "";
	let least = (word.length < 5 ? 1 : Math.max(2, Math.floor(word.length / 3))) + 1;
	for (const candidate of known) {
		const far = distance(word, candidate.toLowerCase());
		if (far < least && far < candidate.length) {
			least = far;
			best = candidate;
		}
	}
	return best || (known.find((k) => word.startsWith(k) || k.startsWith(word)) ?? "");
}
