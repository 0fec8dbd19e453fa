import type { Lettering } from "../../lettering/lettering.js";
import { fixed, MM_PER_INCH, sixtyFourth, trimmed } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import type { GaugeSettings } from "./settings.js";
import { type Shape, type Step, stepsOf } from "./shape.js";

/** Height of the steps' letters, and of the title at most, mm. */
const SMALL = 1.8;
const TITLE = 2.5;
/** Between the opening and the letters, and between lines of letters, mm. */
const AIR = 1.5;
const LEADING = 2;

/** Whether a height is a whole number of 64ths of an inch. */
function isSixtyFourth(mm: number): boolean {
	return Math.abs(sixtyFourth(mm).error) < 1e-6 * MM_PER_INCH;
}

/**
 * A step's height as it is written on the gauge: in mm with one decimal at least, or in 64ths.
 *
 * @example stepText(2) // "2.0"
 * @example stepText(1.984375) // "5/64"
 */
export function stepText(mm: number): string {
	if (isSixtyFourth(mm)) return sixtyFourth(mm).text;
	const text = trimmed(mm, 3);
	return text.includes(".") ? text : fixed(mm, 1);
}

/** What the gauge is called, and in what its steps are told. */
function titleOf(steps: readonly Step[]): string {
	const inch = steps.filter(({ height }) => isSixtyFourth(height)).length;
	const unit = inch === 0 ? "mm" : inch === steps.length ? "in" : "mm, in";
	return `HEIGHT GAUGE, ${unit}`;
}

/** Room that the upper jaw needs for its letters, mm: its title in the smallest at least. */
export function letterRoom(letters: Lettering, s: GaugeSettings) {
	const steps = stepsOf(s);
	const widths = steps.map(({ height }) => letters.width(stepText(height), SMALL));
	return {
		width: Math.ceil(letters.width(titleOf(steps), SMALL) + 2 * AIR),
		height: AIR + Math.max(...widths) + 2 * (LEADING + TITLE) + AIR,
	};
}

/** A height over every step, turned to read from the right; title and job over them. */
export function gaugeLabels({ letters, job }: Bench, shape: Shape): Label[] {
	const { steps, roof, wall, top } = shape;
	const own = steps.map(({ height, from, to }, i) => {
		const at = { x: (from + to) / 2 + SMALL / 2, y: roof + AIR };
		const place = { at, height: SMALL, turn: Math.PI / 2 };
		return label(letters, `step-${i + 1}`, stepText(height), place);
	});
	const lines = [
		{ id: "title", text: titleOf(steps) },
		{ id: "job", text: job },
	];
	let y = top - AIR + LEADING;
	const titles = lines.flatMap(({ id, text }) => {
		const height = heightToFit(letters, text, wall - 2 * AIR, TITLE);
		if (height === null) return [];
		y -= height + LEADING;
		return [label(letters, id, text, { at: { x: wall / 2, y }, height, align: "centre" })];
	});
	return [...own, ...titles];
}
