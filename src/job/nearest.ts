import { distance } from "fastest-levenshtein";

/** The known word that a mistyped one most likely meant, or "" if none is close. */
export function nearest(given: string, known: readonly string[]): string {
	const reach = Math.max(2, Math.floor(given.length / 3));
	let best = "";
	let least = reach + 1;
	for (const word of known) {
		const far = distance(given.toLowerCase(), word.toLowerCase());
		if (far < least) {
			least = far;
			best = word;
		}
	}
	return best;
}
