import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import { type Move, movedPoint } from "../../geometry/index.js";
import type { Lettering } from "../../lettering/lettering.js";
import { heightToFit, type Label, label } from "../label.js";
import { deepest } from "./cutter.js";
import type { Notch } from "./edge.js";
import type { Edge } from "./outline.js";

/** Which notches are numbered, and how high. */
export interface Numbering {
	readonly height: number;
	/** Every how many-th fret carries its number. */
	readonly step: number;
}

/** Between a notch's floor and its number, mm. */
const OVER_NOTCH = 1.5;
/** How far round figures reach below the baseline, mm. */
const OVERSHOOT = 0.1;
const NUT_HEIGHT = 2.5;
const BODY_HEIGHT = 3.5;
/** Free height over and under what the bar says of itself, mm. */
export const AROUND_BODY = 1;
/** How far g and j reach below the baseline, a part of the letters' height. */
const HANG = 0.36;
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

/** What is engraved along one edge, in the edge's own frame. */
export interface EdgeLettering {
	readonly numbering: Numbering;
	/** Baseline of the numbers. */
	readonly baseline: number;
	/** Tops of the numbers. */
	readonly top: number;
	/** The notches that carry their number. */
	readonly numbered: readonly Notch[];
}

/** The fret numbers of an edge: 1.5 mm over its notches. */
export function edgeLettering(letters: Lettering, edge: Edge): EdgeLettering {
	const notches = edge.notches.filter(({ fret }) => fret > 0 || !edge.zeroInArch);
	const numbering = numberingFor(letters, notches);
	const baseline = Math.max(OFF_WORKING_EDGE + OVERSHOOT, deepest(edge) + OVER_NOTCH);
	const numbered = notches.filter(({ fret }) => fret % numbering.step === 0);
	return { numbering, baseline, top: baseline + numbering.height, numbered };
}

/** The fret numbers over the notches of one edge, carried onto the bar by `move`. */
export function numberLabels(letters: Lettering, edge: Edge, move: Move, prefix: string): Label[] {
	const { numbering, baseline, numbered } = edgeLettering(letters, edge);
	const { height } = numbering;
	return numbered.map(({ fret, centre }) => {
		const text = String(fret);
		const at = { x: centre - letters.width(text, height) / 2, y: baseline };
		return label(letters, `${prefix}fret-${fret}`, text, {
			at: movedPoint(at, move),
			height,
			turn: move.turn,
		});
	});
}

/** The word NUT at an edge's beginning, if the first number leaves room for it. */
export function nutLabel(letters: Lettering, edge: Edge, move: Move, prefix: string): Label[] {
	const { numbering, baseline, numbered } = edgeLettering(letters, edge);
	const x = edge.nutEnd === "cleared" ? edge.archEnd + 2 : edge.left + OFF_WORKING_EDGE;
	const [first] = numbered;
	const half = first ? letters.width(String(first.fret), numbering.height) / 2 : 0;
	const room = first ? first.centre - half - 1 - x : edge.right - x;
	const height = heightToFit(letters, "NUT", room, NUT_HEIGHT);
	if (height === null) return [];
	const at = movedPoint({ x, y: baseline }, move);
	return [label(letters, `${prefix}nut`, "NUT", { at, height, turn: move.turn })];
}

/** The place of what the bar says of itself, in an edge's own frame. */
export interface Panel {
	readonly from: number;
	readonly to: number;
	readonly low: number;
	readonly high: number;
}

/** The first of some texts that fits its panel, from the panel's left end; null if none does. */
export function bodyLabel(
	letters: Lettering,
	texts: readonly string[],
	panel: Panel,
	move: Move,
	id: string,
): Label | null {
	const band = panel.high - panel.low + 1e-9;
	const most = Math.min(BODY_HEIGHT, band - 2 * AROUND_BODY, band / (1 + 2 * HANG));
	for (const text of texts) {
		const height = heightToFit(letters, text, panel.to - panel.from, most);
		if (height === null) continue;
		const at = { x: panel.from, y: (panel.low + panel.high - height) / 2 };
		return label(letters, id, text, { at: movedPoint(at, move), height, turn: move.turn });
	}
	return null;
}
