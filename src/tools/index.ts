import { boardMask } from "./board-mask.js";
import { crownGauge } from "./crown-gauge.js";
import { fretRocker } from "./fret-rocker.js";
import { heightGauge } from "./height-gauge.js";
import { indexingStrip } from "./indexing-strip.js";
import { kerfCoupon } from "./kerf-coupon.js";
import { markerGuide } from "./marker-guide.js";
import { notchedStraightedge } from "./notched-straightedge.js";
import { nutLayoutStrip } from "./nut-layout-strip.js";
import { pressingCaul } from "./pressing-caul.js";
import { printCheck } from "./print-check.js";
import { radiusGauge } from "./radius-gauge.js";
import { reliefBar } from "./relief-bar.js";
import { sandingBlock } from "./sanding-block.js";
import { shopSheet } from "./shop-sheet.js";
import { sledRails } from "./sled-rails.js";
import { slotStrip } from "./slot-strip.js";
import { stringArchGauge } from "./string-arch-gauge.js";
import type { Tool } from "./tool.js";
import { wireBendGauge } from "./wire-bend-gauge.js";

export type { Bench, Built, ShopStock, Tool, Wire } from "./tool.js";

/** Every tool that camber makes, in the order in which it lists them. */
export const TOOLS: readonly Tool[] = [
	notchedStraightedge,
	radiusGauge,
	slotStrip,
	kerfCoupon,
	printCheck,
	shopSheet,
	fretRocker,
	crownGauge,
	indexingStrip,
	boardMask,
	sandingBlock,
	sledRails,
	pressingCaul,
	wireBendGauge,
	stringArchGauge,
	nutLayoutStrip,
	heightGauge,
	reliefBar,
	markerGuide,
];
