import type { Mark } from "../../drawing/index.js";
import { line, type Path, type Point } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { CouponSettings } from "./settings.js";

/** Height of the blocks: a caliper's jaws hold them flat, mm. */
export const BLOCK_HEIGHT = 20;
/** How far every line runs past the ones it crosses, so that no corner hangs, mm. */
export const OVERRUN = 1.5;
/** Plate around the strip of blocks, mm. */
const MARGIN = 8;
/** Depth of the slots, mm. */
const SLOT_DEPTH = 12;
/** Least width of a tongue between two slots, mm. */
const LEAST_TONGUE = 5;

/** A slot of the comb: its middle, its width and how much that is off the sheet's thickness. */
export interface FitSlot {
	readonly n: number;
	readonly x: number;
	readonly width: number;
	readonly off: number;
}

/**
 * Widths of the slots from the narrowest up, all around the thickness and `fit-middle`.
 *
 * @example 3 slots in steps of 0.02 around -0.16 on a sheet of 3 mm: 2.82, 2.84, 2.86
 */
export function fitWidths({ stock }: Bench, s: CouponSettings) {
	return Array.from({ length: s.fits }, (_, i) => {
		const off = s["fit-middle"] + (i - (s.fits - 1) / 2) * s.step;
		return { n: i + 1, off, width: stock.thickness + off };
	});
}

/** The slots at their places, evenly about the middle of the strip of blocks. */
export function fitSlots(bench: Bench, s: CouponSettings, letters: number): FitSlot[] {
	const widths = fitWidths(bench, s);
	const widest = Math.max(0, ...widths.map(({ width }) => width));
	const pitch = Math.ceil(Math.max(widest + LEAST_TONGUE, letters));
	const middle = (s.blocks * s.pitch) / 2;
	return widths.map((w, i) => ({ ...w, x: middle + (i - (s.fits - 1) / 2) * pitch }));
}

/** Edges of the plate. The floor is that of the slots, the lower edge where there are none. */
export interface Plate {
	readonly left: number;
	readonly right: number;
	readonly bottom: number;
	readonly floor: number;
	readonly top: number;
}

/** Plate around blocks, slots and letters, all centred on the blocks. */
export function plateOf(
	s: CouponSettings,
	slots: readonly FitSlot[],
	letters: { readonly width: number; readonly above: number; readonly below: number },
): Plate {
	const total = s.blocks * s.pitch;
	const [first, last] = [slots[0], slots.at(-1)];
	const comb = first && last ? last.x - first.x + last.width + 2 * MARGIN : 0;
	const half = Math.ceil(Math.max(total + 2 * MARGIN, comb, letters.width) - 1e-9) / 2;
	const floor = slots.length > 0 ? -OVERRUN - letters.below : -MARGIN;
	return {
		left: total / 2 - half,
		right: total / 2 + half,
		bottom: slots.length > 0 ? floor - SLOT_DEPTH : floor,
		floor,
		top: BLOCK_HEIGHT + OVERRUN + letters.above,
	};
}

/** The plate's outline, its slots open at the lower edge; runs counter-clockwise. */
export function plateOutline(
	{ left, right, bottom, floor, top }: Plate,
	slots: readonly FitSlot[],
) {
	const round = CORNER_RADIUS;
	const comb = slots.flatMap(({ x, width }): Corner[] => [
		{ x: x - width / 2, y: bottom },
		{ x: x - width / 2, y: floor },
		{ x: x + width / 2, y: floor },
		{ x: x + width / 2, y: bottom },
	]);
	return outlineOf([
		{ x: left, y: bottom, round },
		...comb,
		{ x: right, y: bottom, round },
		{ x: right, y: top, round },
		{ x: left, y: top, round },
	]);
}

const cut = (feature: string, path: Path): Mark => ({ operation: "cut", path, feature });

/**
 * The lines that cut the blocks apart, then those that free them.
 *
 * Line 0 and line N are cut like those between: so every block loses half a kerf on either side,
 * N blocks together N kerfs. The cross lines come first, while the blocks still hang on the
 * plate above and below.
 */
export function blockCuts({ blocks, pitch }: CouponSettings): Mark[] {
	const total = blocks * pitch;
	const upright = (x: number): [Point, Point] => [
		{ x, y: -OVERRUN },
		{ x, y: BLOCK_HEIGHT + OVERRUN },
	];
	const level = (y: number): [Point, Point] => [
		{ x: -OVERRUN, y },
		{ x: total + OVERRUN, y },
	];
	return [
		...Array.from({ length: blocks + 1 }, (_, i) => cut(`line ${i}`, line(...upright(i * pitch)))),
		cut("lower frame line", line(...level(0))),
		cut("upper frame line", line(...level(BLOCK_HEIGHT))),
	];
}
