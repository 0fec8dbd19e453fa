import type { SizeClaim } from "../../drawing/index.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";
import { BLOCK_HEIGHT, type FitSlot, type Plate } from "./lay.js";
import type { CouponSettings } from "./settings.js";

/** What a slot is called: by its number, the narrowest first. */
const slotName = ({ n }: FitSlot) => `slot ${n}`;

/**
 * Promises of the path that the middle of the cut follows: nothing here is compensated, and how
 * much blocks and slots differ from these sizes is what the coupon shows.
 */
export function couponClaims(
	bench: Bench,
	s: CouponSettings,
	slots: readonly FitSlot[],
	plate: Plate,
): SizeClaim[] {
	return [
		...lineClaims(bench, s),
		...slots.flatMap((slot) => slotClaims(bench, slot, plate)),
		...plateClaims(bench, plate),
	];
}

function lineClaims(bench: Bench, { blocks, pitch }: CouponSettings): SizeClaim[] {
	const y = BLOCK_HEIGHT;
	const lines = Array.from({ length: blocks }, (_, i) =>
		cutSize(bench, {
			id: `line-${i + 1}`,
			kind: "position",
			feature: `line ${i + 1}`,
			datum: "line 0",
			axis: "x",
			at: [
				{ x: 0, y },
				{ x: (i + 1) * pitch, y },
			],
			nominal: (i + 1) * pitch,
		}),
	);
	const height = cutSize(bench, {
		id: "block-height",
		kind: "position",
		feature: "upper frame line",
		datum: "lower frame line",
		axis: "y",
		at: [
			{ x: pitch / 2, y: 0 },
			{ x: pitch / 2, y },
		],
		nominal: y,
	});
	return [...lines, height];
}

function slotClaims(bench: Bench, slot: FitSlot, { bottom, floor }: Plate): SizeClaim[] {
	const { n, x, width } = slot;
	const feature = slotName(slot);
	const middle = (bottom + floor) / 2;
	return [
		cutSize(bench, {
			id: `slot-${n}-width`,
			kind: "width",
			feature,
			datum: "path of the cut",
			axis: "x",
			at: [
				{ x: x - width / 2, y: middle },
				{ x: x + width / 2, y: middle },
			],
			nominal: width,
			series: "slot width",
		}),
		cutSize(bench, {
			id: `slot-${n}-depth`,
			kind: "depth",
			feature,
			datum: "lower edge",
			axis: "y",
			at: [
				{ x, y: bottom },
				{ x, y: floor },
			],
			nominal: floor - bottom,
			series: "slot depth",
		}),
	];
}

function plateClaims(bench: Bench, plate: Plate): SizeClaim[] {
	const { left, right, bottom, top } = plate;
	const y = BLOCK_HEIGHT / 2;
	const length = cutSize(bench, {
		id: "length",
		kind: "length",
		feature: "plate",
		datum: "path of the cut",
		axis: "x",
		at: [
			{ x: left, y },
			{ x: right, y },
		],
		nominal: right - left,
	});
	const height = cutSize(bench, {
		id: "height",
		kind: "length",
		feature: "plate",
		datum: "path of the cut",
		axis: "y",
		at: [
			{ x: right - 2, y: bottom },
			{ x: right - 2, y: top },
		],
		nominal: top - bottom,
	});
	return [length, height];
}
