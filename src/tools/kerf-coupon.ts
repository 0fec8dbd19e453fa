import type { Part } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import { couponClaims } from "./kerf-coupon/claims.js";
import { couponLabels, formulaText, leastPitch, letterRoom } from "./kerf-coupon/labels.js";
import { blockCuts, fitSlots, fitWidths, plateOf, plateOutline } from "./kerf-coupon/lay.js";
import { type CouponSettings, type Given, settings } from "./kerf-coupon/settings.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Slots that a beam still cuts with two sides, mm (common practice, no source). */
const LEAST_SLOT = 0.2;
/** Slots that a laser's coupon has. Any mill's cutter is wider than such slots are. */
const USUAL_FITS = 9;

function defaults({ machine }: Bench, given: Given): Partial<Given> {
	return { fits: given.fits ?? (machine.kind === "laser" ? USUAL_FITS : 0) };
}

function refusals(bench: Bench, s: CouponSettings): Problem[] {
	const found: Problem[] = [];
	const least = leastPitch(bench, s);
	if (s.pitch < least) {
		const rounded = Math.ceil(least * 10 - 1e-9) / 10;
		found.push(problem("block-too-narrow", ["pitch"], { pitch: s.pitch, least: rounded }));
	}
	const narrowest = fitWidths(bench, s)[0];
	if (narrowest && narrowest.width < LEAST_SLOT - 1e-9) {
		const facts = { width: narrowest.width, least: LEAST_SLOT };
		found.push(problem("fit-slot-too-narrow", ["fit-middle"], facts));
	}
	return found;
}

function notes(s: CouponSettings): string[] {
	const blocks = [
		"Cut every line once and on the line, no offset set in the cutting program; the cross lines first, then the frame lines, the outline last.",
		`Push the ${s.blocks} loose blocks together in their order, free of burrs, and measure over all with a caliper. Kerf: ${formulaText(s)}. Average three readings; camber kerf does the sum.`,
		"The kerf goes with the material, its thickness, focus, power and speed: measure anew when one of them changes.",
		"Sizes are those of the path that the middle of the cut follows: what is cut free is smaller by a kerf, and a slot wider.",
	];
	if (s.fits === 0) return blocks;
	return [
		...blocks,
		"Try the edge of a scrap of the same sheet in the slots: the one that it just fits tells how far a slot must be drawn off the sheet's thickness, uncompensated. If the files are compensated, add the kerf to that.",
	];
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as CouponSettings;
	const problems = refusals(bench, s);
	if (problems.length > 0) return { parts: [], problems };
	const room = letterRoom(bench, s);
	const slots = fitSlots(bench, s, room.slot);
	const plate = plateOf(s, slots, room);
	const labels = couponLabels(bench, s, slots, plate.floor);
	const part: Part = {
		name,
		tool: "kerf-coupon",
		title: `Kerf coupon, ${s.blocks} blocks`,
		stock: bench.stock,
		marks: [
			...labels.flatMap((l) => l.marks),
			...blockCuts(s),
			{ operation: "cut", path: plateOutline(plate, slots), feature: "outline" },
		],
		workingEdge: `the sides of the ${s.blocks} blocks, cut along lines 0 to ${s.blocks}`,
		working: [],
		claims: [...couponClaims(bench, s, slots, plate), ...labels.map((l) => l.claim)],
		notes: notes(s),
		nominal: true,
	};
	return { parts: [part], problems: [] };
}

export const kerfCoupon = tool({
	id: "kerf-coupon",
	title: "Kerf coupon",
	purpose:
		"Shows how wide the machine cuts in this sheet. Cut it as drawn, push its blocks together and measure over all: what is missing, divided by their number, is the kerf.",
	neckless: true,
	settings,
	defaults,
	build,
});
