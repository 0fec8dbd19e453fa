import { fretLine, type Neck, pointOnFret, widthAt } from "../../neck/index.js";
import { fixed, inchLabel } from "../../units/index.js";
import { type Label, label } from "../label.js";
import { heightToFit } from "../straightedge/labels.js";
import { type Bench, OFF_WORKING_EDGE } from "../tool.js";
import { gapBefore, type Slot } from "./lay.js";
import type { StripSettings } from "./settings.js";

/** Height of distances and of numbers where there is room, mm. */
const SMALL = 1.8;
const LARGE = 2.5;
/** Least air between a label and a slot, mm. */
const AIR = 0.6;
/** How far a label stays from the board's edge, mm. */
const EDGE = 1.5;

/** What fitted on the strip and which frets had no room for a number or a distance. */
export interface StripLabels {
	readonly labels: readonly Label[];
	readonly unnumbered: readonly number[];
	readonly unmeasured: readonly number[];
}

/**
 * Number (bass half) and distance (treble half) of every slot, on its nut side: 3 mm from it
 * where the gap allows, else in the middle of the gap; left out where the gap is too small.
 */
export function slotLabels(bench: Bench, slots: readonly Slot[], s: StripSettings): StripLabels {
	const { neck, letters } = bench;
	const labels: Label[] = [];
	const unnumbered: number[] = [];
	const unmeasured: number[] = [];
	for (const { fret } of slots.filter(({ fret }) => fret.n > 0)) {
		const gap = gapBefore(neck, fret.n);
		const half = widthAt(neck, fret.x) / 2 - neck.binding - EDGE;
		const number = String(fret.n);
		const size = [LARGE, SMALL].find((h) => letters.width(number, h) + 2 * AIR <= gap);
		if (size === undefined) unnumbered.push(fret.n);
		else {
			const width = letters.width(number, size);
			const y = -neck.trebleSide * (half - size / 2) - size / 2;
			const right = pointOnFret(fret, y).x - offSlot(gap, width);
			labels.push(
				label(letters, `number-${fret.n}`, number, { at: { x: right - width, y }, height: size }),
			);
		}
		if (!s.distances) continue;
		const text = fixed(fret.x, 3);
		const length = letters.width(text, SMALL);
		if (SMALL + 2 * AIR > gap || length > half - OFF_WORKING_EDGE) {
			unmeasured.push(fret.n);
			continue;
		}
		const middle = neck.trebleSide * (half - length / 2);
		const x = pointOnFret(fret, middle).x - offSlot(gap, SMALL);
		labels.push(
			label(letters, `distance-${fret.n}`, text, {
				at: { x, y: middle },
				height: SMALL,
				turn: Math.PI / 2 - Math.atan(fret.lean),
				align: "centre",
			}),
		);
	}
	return { labels, unnumbered, unmeasured };
}

/** From the slot to the near side of a label of this size. */
function offSlot(gap: number, size: number): number {
	return Math.min(OFF_WORKING_EDGE, (gap - size) / 2);
}

/** What the strip says of itself, and where the centre line makes way for it. */
export interface StripTitle {
	readonly labels: readonly Label[];
	readonly break: { readonly from: number; readonly to: number } | null;
}

/** Job and scale before the first fret if there is room, and the name of the nut line. */
export function stripTitle(bench: Bench, from: number): StripTitle {
	const { neck, letters, job } = bench;
	const first = fretLine(neck, 1);
	const gap = gapBefore(neck, 1) - 2 * OFF_WORKING_EDGE - letters.width("1", LARGE);
	const { bass, treble } = neck.scale;
	const scale = bass === treble ? inchLabel(bass) : `${inchLabel(bass)} / ${inchLabel(treble)}`;
	const room = widthAt(neck, 0) - 2 * neck.binding - 2 * EDGE;
	const lines = [job, `${scale}, ${neck.frets} frets`].flatMap((text, i) => {
		const size = heightToFit(letters, text, room, LARGE);
		return size === null || gap < 12 ? [] : [{ text, size, id: i === 0 ? "job" : "scale" }];
	});
	const middle = (neck.nutShift + first.x) / 2;
	const titles = lines.map(({ text, size, id }, i) =>
		label(letters, id, text, {
			at: { x: middle - 1 + i * (LARGE + 2), y: 0 },
			height: size,
			turn: Math.PI / 2,
			align: "centre",
		}),
	);
	const nutText = neck.nutShift === 0 ? "NUT" : "THEORETICAL NUT";
	const nut = label(letters, "nut", nutText, {
		at: { x: from + OFF_WORKING_EDGE + SMALL, y: widthAt(neck, 0) / 4 },
		height: SMALL,
		turn: Math.PI / 2,
		align: "centre",
	});
	return {
		labels: [...titles, nut],
		break: titles.length > 0 ? { from: middle - 2 - LARGE, to: middle + LARGE + 2 } : null,
	};
}

/** Frets as a person lists them: "20, 21, 22". */
export function fretList(neck: Neck, frets: readonly number[]): string {
	return frets.length === neck.frets ? "all frets" : frets.join(", ");
}
