import { type Move, movedPoint } from "../../geometry/index.js";
import type { Lettering } from "../../lettering/lettering.js";
import { type Label, label } from "../label.js";
import { OFF_WORKING_EDGE } from "../tool.js";
import type { Notch } from "./edge.js";
import type { Edge } from "./outline.js";

/** Which notches are numbered, and how high. */
export interface Numbering {
	readonly height: number;
	/** Every how many-th fret carries its number. */
	readonly step: number;
}

const NUMBER_HEIGHTS = [3.5, 2.5, 1.8] as const;
const STEPS = [1, 2, 3, 4, 5, 6, 10, 12, 20] as const;

/** The largest numbers that do not touch each other; where none fit, fewer of them. */
export function numberingFor(letters: Lettering, notches: readonly Notch[]): Numbering {
	for (const step of STEPS) {
		const numbered = notches.filter(({ fret }) => fret % step === 0);
		const heights = step === 1 ? NUMBER_HEIGHTS : ([1.8] as const);
		for (const height of heights) {
			const fits = numbered.slice(1).every((notch, i) => {
				const before = numbered[i]!;
				const half =
					(letters.width(String(notch.fret), height) + letters.width(String(before.fret), height)) /
					2;
				return notch.centre - before.centre >= half + height / 2;
			});
			if (fits) return { height, step };
		}
	}
	return { height: 1.8, step: 24 };
}

/** The fret numbers over the notches of one edge, carried onto the bar by `move`. */
export function numberLabels(letters: Lettering, edge: Edge, move: Move, prefix: string): Label[] {
	const notches = edge.notches.filter(({ fret }) => fret > 0 || !edge.zeroInArch);
	const { height, step } = numberingFor(letters, notches);
	const y = Math.max(OFF_WORKING_EDGE, edge.depth + 1.5);
	return notches
		.filter(({ fret }) => fret % step === 0)
		.map(({ fret, centre }) => {
			const text = String(fret);
			const x = centre - letters.width(text, height) / 2;
			return label(letters, `${prefix}${fret}`, text, {
				at: movedPoint({ x, y }, move),
				height,
				turn: move.turn,
			});
		});
}
