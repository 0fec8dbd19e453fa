import { crossingOf, type Neck } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { Relief } from "./straightness.js";

/** Crown heights over the wood, read at one fret, at one place across it or more. */
export interface FretReading {
	readonly fret: number;
	readonly heights: readonly number[];
	/** Where across, from the centre line, treble positive; one for each height. */
	readonly across?: readonly number[];
}

export interface FretHeightsReading {
	readonly frets: readonly FretReading[];
	/** Step of the gauge. */
	readonly resolution: number;
	/** Relief wanted in the tops, over the frets read; 0 for a straight line of tops. */
	readonly relief?: number;
	/** Crown that must remain after dressing. */
	readonly leastCrown?: number;
}

const MOST_CROWN = 4;
const MOST_RELIEF = 1;
const MOST_RESOLUTION = 0.2;

/** Where in the readings. */
export const path = (...keys: (string | number)[]) => ["fret-heights", ...keys];

/** What of the settings is out of range. */
export function settingProblems({
	resolution,
	relief = 0,
	leastCrown,
}: FretHeightsReading): Problem[] {
	const found: Problem[] = [];
	if (!(resolution > 0 && resolution <= MOST_RESOLUTION)) {
		const facts = { given: resolution, most: MOST_RESOLUTION };
		found.push(problem("height-resolution", path("resolution"), facts));
	}
	if (!(relief >= 0 && relief <= MOST_RELIEF)) {
		found.push(
			problem("relief-wanted-range", path("relief"), { given: relief, most: MOST_RELIEF }),
		);
	}
	if (leastCrown !== undefined && !(leastCrown > 0 && leastCrown < MOST_CROWN)) {
		const facts = { given: leastCrown, most: MOST_CROWN };
		found.push(problem("least-crown-range", path("least"), facts));
	}
	return found;
}

/** What is wrong with one fret's heights. */
export function fretProblems({ fret, heights, across }: FretReading, neck: Neck): Problem[] {
	const first = neck.zeroFret ? 0 : 1;
	if (!(Number.isInteger(fret) && fret >= first && fret <= neck.frets)) {
		const facts = { fret, first, frets: neck.frets };
		return [problem("height-fret-not-on-neck", path("heights", String(fret)), facts)];
	}
	if (heights.length === 0)
		return [problem("height-missing", path("heights", String(fret)), { fret })];
	if (across && across.length !== heights.length) {
		const facts = { fret, heights: heights.length, across: across.length };
		return [problem("height-places-unequal", path("heights", String(fret)), facts)];
	}
	return heights.flatMap((height, k) =>
		height > 0 && height <= MOST_CROWN
			? []
			: [
					problem("crown-height-range", path("heights", String(fret), k), {
						fret,
						height,
						most: MOST_CROWN,
					}),
				],
	);
}

/** Why straightness readings do not serve these heights. */
export function woodProblems(
	reading: FretHeightsReading,
	neck: Neck,
	wood: Relief | null,
): Problem[] {
	if (!wood) return [];
	if (wood.on === "crowns") return [problem("heights-on-crowns", path(), {})];
	const { from, to } = wood.contacts;
	return reading.frets.flatMap(({ fret }) => {
		const { along } = crossingOf(neck, wood.line, fret);
		return along < from - 1e-6 || along > to + 1e-6
			? [problem("height-beyond-straightness", path("heights", String(fret)), { fret, from, to })]
			: [];
	});
}
