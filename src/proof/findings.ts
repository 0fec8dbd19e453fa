import type { Fact, Problem } from "../problem/index.js";
import { MOST_SAMPLES } from "./limits.js";

type Severity = Problem["severity"];

/** Most kinds of one finding that are told apart; a hostile file may hold a million. */
const MOST_KINDS = 20;

/**
 * What is found while one file is read. The same finding is kept once, as it was first met,
 * with the number of times in its fact `count`.
 */
export class Findings {
	private readonly found = new Map<string, Problem & { count: number }>();
	private readonly kinds = new Map<string, number>();
	private samples = MOST_SAMPLES;

	/** @param kind - what tells findings of one code apart */
	add(
		code: string,
		severity: Severity,
		facts: Readonly<Record<string, Fact>> = {},
		kind = "",
	): void {
		const key = `${code} ${kind}`;
		const known = this.found.get(key);
		if (known) {
			known.count++;
			return;
		}
		const kinds = this.kinds.get(code) ?? 0;
		if (kinds >= MOST_KINDS) return;
		this.kinds.set(code, kinds + 1);
		this.found.set(key, { code, severity, where: { path: [] }, facts, count: 1 });
	}

	/** A text in the place of a number, or a number that no drawing holds. */
	noNumber(given: string, place: string): void {
		this.add("not-a-number", "error", { given: given.trim().slice(0, 40) || "nothing", place });
	}

	/** Takes corners from what the whole file may use: false once they are spent. */
	mayUse(samples: number): boolean {
		this.samples -= samples;
		if (this.samples >= 0) return true;
		this.add("drawing-too-large", "error", { limit: MOST_SAMPLES, of: "corners of curves" });
		return false;
	}

	list(): Problem[] {
		return [...this.found.values()].map(({ count, facts, ...rest }) => ({
			...rest,
			facts: { ...facts, count },
		}));
	}
}
