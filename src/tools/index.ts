import { kerfCoupon } from "./kerf-coupon.js";
import { notchedStraightedge } from "./notched-straightedge.js";
import { printCheck } from "./print-check.js";
import { radiusGauge } from "./radius-gauge.js";
import { shopSheet } from "./shop-sheet.js";
import { slotStrip } from "./slot-strip.js";
import type { Tool } from "./tool.js";

export type { Bench, Built, ShopStock, Tool, Wire } from "./tool.js";

/** Every tool that camber makes, in the order in which it lists them. */
export const TOOLS: readonly Tool[] = [
	notchedStraightedge,
	radiusGauge,
	slotStrip,
	kerfCoupon,
	printCheck,
	shopSheet,
];
