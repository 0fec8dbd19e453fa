import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import type { Lettering } from "../../lettering/lettering.js";
import { type Problem, problem } from "../../problem/index.js";
import { inchLabel, trimmed } from "../../units/index.js";
import { type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import type { Face } from "./settings.js";
import type { Shape } from "./shape.js";
import type { Wanted } from "./wanted.js";

/** Between the lines, mm. */
const LEADING = 2;
/** How far letters stay from the sides, which do no work, mm. */
const SIDE = 1.5;
/** Heights of the radius; what stands below it is at most `SECOND`. */
const HEIGHTS = [3.5, 2.5, 1.8] as const;
const SECOND = 2.5;

/** What a comma hangs below its line and a letter rises over the capitals, as a share of their height. */
const UNDER = 0.25;
const OVER = 0.03;

/** Between the arc and the letters, between hole and letters, and from the hole to the back, mm. */
export function besideLetters(diameter: number): number {
	return 2 * OFF_WORKING_EDGE + (diameter > 0 ? diameter + LEADING : 0);
}

/** Height that the smallest two lines of letters take, mm. */
export const LEAST_LETTERS = 2 * HEIGHTS.at(-1)! + LEADING;

interface Line {
	readonly id: string;
	readonly text: string;
	readonly height: number;
}

/** All ways to set a gauge's texts, the best first: few lines, but small letters last. */
function allLayouts(wanted: Wanted, face: Face): Line[][] {
	const [large, middle, small] = HEIGHTS.map((height) => layouts(wanted, face, height));
	return [...large!.flatMap((lines, i) => [lines, middle![i]!]), ...small!];
}

/** Ways to set a gauge's texts: in two lines, or in more where it is narrow. */
function layouts({ radius, place }: Wanted, face: Face, height: number): Line[][] {
	const low = Math.min(height, SECOND);
	const [inch, mm] = [inchLabel(radius), `R ${trimmed(radius, 2)} mm`];
	const wide = [{ id: "radius", text: `${inch}   ${mm}`, height }];
	const narrow = [
		{ id: "radius", text: inch, height },
		{ id: "radius-mm", text: mm, height },
	];
	const one = [{ id: "place", text: place ? `${face}, ${place}` : face, height: low }];
	const two = [
		{ id: "face", text: face, height: low },
		{ id: "place", text: place ?? "", height: low },
	];
	return [[...wide, ...one], [...narrow, ...one], ...(place ? [[...narrow, ...two]] : [])];
}

function heightOf(lines: readonly Line[]): number {
	return lines.reduce((sum, { height }) => sum + height + LEADING, -LEADING);
}

function widthOf(letters: Lettering, lines: readonly Line[]): number {
	return Math.max(...lines.map(({ text, height }) => letters.width(text, height)));
}

/** The ways whose lines fit across a gauge of this width, the best first. */
function fitting(bench: Bench, wanted: Wanted, face: Face, width: number): Line[][] {
	return allLayouts(wanted, face).filter((l) => widthOf(bench.letters, l) <= width - 2 * SIDE);
}

/** Height of the letters that suit a gauge of this width best, mm; 0 if none fit. */
export function lettersHeight(bench: Bench, wanted: Wanted, face: Face, width: number): number {
	const [best] = fitting(bench, wanted, face, width);
	return best ? heightOf(best) : 0;
}

/** Lines between hole and arc: the radius, and where and how it is held. */
export function gaugeLabels(
	bench: Bench,
	wanted: Wanted,
	face: Face,
	{ shape, width, diameter }: { shape: Shape; width: number; diameter: number },
): Label[] | Problem {
	const ways = fitting(bench, wanted, face, width);
	if (ways.length === 0) {
		const { text } = layouts(wanted, face, SECOND).at(-1)![0]!;
		return problem("label-too-long", ["gauge-width"], { text, room: width - 2 * SIDE });
	}
	const height = shape.top - shape.bottom;
	const taken = shape.sagitta + besideLetters(diameter);
	const lines = ways.find((l) => taken + heightOf(l) <= height + 1e-9);
	if (!lines) {
		const least = taken + Math.min(...ways.map(heightOf));
		const facts = { radius: wanted.radius, width, place: wanted.place ?? wanted.tag };
		return problem("gauge-too-low", ["gauge-height"], { ...facts, height, least });
	}
	const back = besideLetters(diameter) - OFF_WORKING_EDGE;
	const half = heightOf(lines) / 2;
	const middle =
		face === "concave"
			? Math.max(
					(shape.sagitta + OFF_WORKING_EDGE + shape.top - back) / 2,
					shape.sagitta + OFF_WORKING_EDGE + UNDER * lines.at(-1)!.height + half,
				)
			: Math.min(
					(shape.bottom + back - OFF_WORKING_EDGE) / 2,
					-OFF_WORKING_EDGE - OVER * lines[0]!.height - half,
				);
	let y = middle + half + LEADING;
	return lines.map(({ id, text, height }) => {
		y -= height + LEADING;
		return label(bench.letters, id, text, { at: { x: 0, y }, height, align: "centre" });
	});
}
