import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import type { Lettering } from "../../lettering/lettering.js";
import { fixed, trimmed } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import { BLOCK_HEIGHT, type FitSlot, fitWidths, OVERRUN } from "./lay.js";
import type { CouponSettings } from "./settings.js";

/** Height of the title, of the lines under it, and of the least letters, mm. */
const TITLE = 3.5;
const TEXT = 2.5;
const SMALL = 1.8;
/** Between lines of letters, mm. */
const LEADING = 2;
/** Between the letters of neighbouring slots, mm. */
const BETWEEN = 2;
/** Least way from a block's number to the middle of a cut, mm. */
const NUMBER_AIR = 1;

/** Decimals that offsets are told with at most: to the micrometre. */
const DECIMALS = 3;

/**
 * How far the slots are off the sheet's thickness, with sign, all to the same decimals.
 *
 * @example offTexts([-0.1, 0, 0.02]) // ["-0.10", "0.00", "+0.02"]
 */
export function offTexts(offs: readonly number[]): string[] {
	const needed = offs.map((off) => trimmed(off, DECIMALS).split(".")[1]?.length ?? 0);
	const digits = Math.max(0, ...needed);
	return offs.map((off) => {
		const text = fixed(off, digits);
		return Number(text) > 0 ? `+${text}` : text;
	});
}

/** Whole length of the blocks as drawn, in words. */
function totalText({ blocks, pitch }: CouponSettings): string {
	return trimmed(blocks * pitch, 3);
}

/** The sum that gives the kerf: "k = (100 - measured) / 10". */
export function formulaText(s: CouponSettings): string {
	return `k = (${totalText(s)} - measured) / ${s.blocks}`;
}

function upperLines({ stock }: Bench, s: CouponSettings) {
	return [
		{ id: "title", text: "KERF COUPON", height: TITLE },
		{
			id: "nominal",
			text: `${totalText(s)} mm nominal, ${stock.material} ${trimmed(stock.thickness, 3)} mm`,
			height: TEXT,
		},
		{ id: "formula", text: formulaText(s), height: TEXT },
	];
}

function captionText({ stock }: Bench): string {
	return `slot width less ${trimmed(stock.thickness, 3)} mm:`;
}

/** Room that the letters ask of the plate, mm. */
export interface LetterRoom {
	readonly width: number;
	/** From the ends of the cross lines to the upper edge, and to the slots' floors. */
	readonly above: number;
	readonly below: number;
	/** From one slot to the next. */
	readonly slot: number;
}

export function letterRoom(bench: Bench, s: CouponSettings): LetterRoom {
	const { letters } = bench;
	const lines = upperLines(bench, s);
	const all = s.fits > 0 ? [...lines, { text: captionText(bench), height: TEXT }] : lines;
	const widest = Math.max(...all.map(({ text, height }) => letters.width(text, height)));
	const high = lines.reduce((sum, { height }) => sum + height, (lines.length - 1) * LEADING);
	const offs = offTexts(fitWidths(bench, s).map(({ off }) => off));
	const slot = Math.max(0, ...offs.map((text) => letters.width(text, TEXT))) + BETWEEN;
	return {
		width: Math.ceil(widest + 2 * OFF_WORKING_EDGE),
		above: high + 2 * OFF_WORKING_EDGE,
		below: 2 * TEXT + LEADING + 2 * OFF_WORKING_EDGE,
		slot,
	};
}

/** Width that every block's number takes at a height, mm. */
function numberWidth(letters: Lettering, blocks: number, height: number): number {
	const all = Array.from({ length: blocks }, (_, i) => letters.width(String(i + 1), height));
	return Math.max(...all);
}

/** The narrowest pitch at which the blocks' numbers stand clear of the cuts, mm. */
export function leastPitch({ letters }: Bench, { blocks }: CouponSettings): number {
	return numberWidth(letters, blocks, SMALL) + 2 * NUMBER_AIR;
}

/** Title and formula over the blocks, a number on each, the slots' offsets under them. */
export function couponLabels(
	bench: Bench,
	s: CouponSettings,
	slots: readonly FitSlot[],
	floor: number,
): Label[] {
	return [...upperLabels(bench, s), ...numbers(bench, s), ...offsets(bench, s, slots, floor)];
}

function upperLabels(bench: Bench, s: CouponSettings): Label[] {
	const x = (s.blocks * s.pitch) / 2;
	let y = BLOCK_HEIGHT + OVERRUN + letterRoom(bench, s).above - OFF_WORKING_EDGE + LEADING;
	return upperLines(bench, s).map(({ id, text, height }) => {
		y -= height + LEADING;
		return label(bench.letters, id, text, { at: { x, y }, height, align: "centre" });
	});
}

function numbers({ letters }: Bench, { blocks, pitch }: CouponSettings): Label[] {
	const room = pitch - 2 * NUMBER_AIR;
	const texts = Array.from({ length: blocks }, (_, i) => String(i + 1));
	const heights = texts.map((text) => heightToFit(letters, text, room, TITLE) ?? SMALL);
	const height = Math.min(...heights);
	return texts.map((text, i) => {
		const at = { x: (i + 0.5) * pitch, y: (BLOCK_HEIGHT - height) / 2 };
		return label(letters, `block-${text}`, text, { at, height, align: "centre" });
	});
}

function offsets(
	bench: Bench,
	s: CouponSettings,
	slots: readonly FitSlot[],
	floor: number,
): Label[] {
	if (slots.length === 0) return [];
	const { letters } = bench;
	const y = floor + OFF_WORKING_EDGE;
	const offs = offTexts(slots.map(({ off }) => off));
	const caption = { x: (s.blocks * s.pitch) / 2, y: y + TEXT + LEADING };
	const place = { height: TEXT, align: "centre" } as const;
	return [
		label(letters, "slots", captionText(bench), { ...place, at: caption }),
		...slots.map(({ n, x }, i) =>
			label(letters, `slot-${n}`, offs[i]!, { ...place, at: { x, y } }),
		),
	];
}
