import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import { radiusAt } from "../../neck/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { inchLabel, trimmed } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import type { Crate, Joints } from "./crate.js";
import type { BlockSettings } from "./settings.js";

const LEADING = 2;
/** Letters to sides, slots and holes, mm. */
const SIDE = 2;
const TITLE = 3.5;
const TEXT = 2.5;

interface Line {
	readonly id: string;
	readonly text: string;
	readonly height: number;
}

function ribTexts(bench: Bench, s: BlockSettings, { radius }: Crate) {
	const board = radius === null ? null : radiusAt(bench.neck, 0);
	const on = board === null ? "" : ` on ${inchLabel(board)}`;
	const radiusText = radius === null ? "flat" : `R ${trimmed(radius, 2)} mm`;
	const layers = s.skin > 0 ? `skin ${trimmed(s.skin, 3)}, ` : "";
	return [
		{ id: "radius", text: `rib ${radiusText}`, most: TITLE },
		{ id: "surface", text: `for ${s.for}${on}`, most: TEXT },
		{ id: "layers", text: `${layers}grit ${trimmed(s.abrasive, 3)} mm`, most: TEXT },
	];
}

/** A rib's lines as they fit its width, or the text that does not. */
function ribLines(bench: Bench, s: BlockSettings, crate: Crate): Line[] | Problem {
	const room = crate.width - 2 * SIDE;
	const lines: Line[] = [];
	for (const { id, text, most } of ribTexts(bench, s, crate)) {
		const height = heightToFit(bench.letters, text, room, most);
		if (height === null) return problem("label-too-long", ["block-width"], { text, room });
		lines.push({ id, text, height });
	}
	return lines;
}

function heightOf(lines: readonly Line[]): number {
	return lines.reduce((sum, { height }) => sum + height + LEADING, -LEADING);
}

/** How far letters reach under their line, mm. */
const DESCENT = 1;

/** The band of a rib that is free for letters: off its edge, under slots and holes. */
function ribBand({ sagitta, top, joints, dowels }: Crate): readonly [number, number] {
	const floor = joints ? top - joints.depth - SIDE / 2 : top - SIDE;
	const holes = dowels ? dowels.y - dowels.diameter / 2 - SIDE : top;
	return [sagitta + OFF_WORKING_EDGE + DESCENT, Math.min(floor, holes)];
}

/** Height that a rib's letters lack, mm, not above 0 where they fit; or the text that is too long. */
export function missingBand(bench: Bench, s: BlockSettings, crate: Crate): number | Problem {
	const lines = ribLines(bench, s, crate);
	if (!Array.isArray(lines)) return lines;
	const [low, high] = ribBand(crate);
	return heightOf(lines) - (high - low);
}

/** A rib's letters, which fit: what it is, what for, and what lies over it. */
export function ribLabels(bench: Bench, s: BlockSettings, crate: Crate): Label[] {
	const lines = ribLines(bench, s, crate);
	if (!Array.isArray(lines)) throw new RangeError("the letters do not fit the rib");
	const [low, high] = ribBand(crate);
	let y = (low + high + heightOf(lines)) / 2 + LEADING;
	return lines.map(({ id, text, height }) => {
		y -= height + LEADING;
		return label(bench.letters, id, text, { at: { x: 0, y }, height, align: "centre" });
	});
}

/** A rail's letters over its slots: the job and what it is. */
export function railLabels(
	bench: Bench,
	s: BlockSettings,
	{ depth, height, length }: Joints,
): Label[] | Problem {
	const text = `${bench.job}, rail for ${s.ribs} ribs`;
	const room = length - 4 * SIDE;
	const size = heightToFit(bench.letters, text, room, Math.min(TITLE, height - depth - 2 * SIDE));
	if (size === null) return problem("label-too-long", ["ribs"], { text, room });
	const at = { x: length / 2, y: (depth + height - size) / 2 };
	return [label(bench.letters, "title", text, { at, height: size, align: "centre" })];
}
