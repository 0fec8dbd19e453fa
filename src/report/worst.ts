import type { Measured, Proven } from "../proof/index.js";
import { compareBadness } from "./figures.js";

/** Of each claim of each part the file that keeps it worst. */
export type Worst = ReadonlyMap<string, Measured>;

/** A claim of a part, as a key. */
export function claimKey(part: string, claim: string): string {
	return `${part}.${claim}`;
}

/** Goes through all files that show a part: what was not found is worse than any deviation. */
export function worstByClaim(proven: readonly Proven[]): Worst {
	const worst = new Map<string, Measured>();
	for (const one of proven.flatMap(({ measured }) => measured)) {
		const key = claimKey(one.part, one.claim.id);
		const known = worst.get(key);
		if (!known || compareBadness(one, known) < 0) worst.set(key, one);
	}
	return worst;
}
