import { type Problem, problem } from "../../problem/index.js";
import { trimmed } from "../../units/index.js";
import { outOfRange } from "../size.js";
import type { Bench } from "../tool.js";
import { boardShape, humpedLine } from "./board.js";
import { type Crate, crateOf, ribRadius } from "./crate.js";
import { missingBand } from "./labels.js";
import { type BlockSettings, isSolid } from "./settings.js";

/** A hump below this is not worth a word, mm. */
const FLAT_ENOUGH = 0.0005;
/** Plate that must remain between slots, holes and edges, mm. */
const LEAST_WEB = 2;
/** Rib that must remain between slot and working edge, mm. */
const LEAST_UNDER_SLOT = 6;
/** Thinnest dowel, mm. */
const LEAST_DOWEL = 2;
/** Least way from slot to slot of a rail, mm. */
const LEAST_LAND = 3;

/** What this board does not allow: a cylinder on a cone, a straight beam over a hump. */
function formProblems(bench: Bench, s: BlockSettings): Problem[] {
	const { neck } = bench;
	const shape = boardShape(neck);
	if (s.form === "curved" && shape === "compound" && neck.radius !== "flat") {
		const [first, last] = [neck.radius.knots[0]!, neck.radius.knots.at(-1)!];
		return [problem("cylinder-on-cone", ["form"], { from: first.value, to: last.value })];
	}
	if (s.form === "curved" && shape === "flat") return [problem("curve-on-flat", ["form"])];
	if (s.form === "flat" && shape === "cylinder") {
		const { name, hump } = humpedLine(neck);
		if (hump >= FLAT_ENOUGH) return [problem("beam-planes-hump", ["form"], { line: name, hump })];
	}
	return [];
}

/** What the circle and the sheet do not allow, before anything can be laid out. */
function sizeProblems(bench: Bench, s: BlockSettings): Problem[] {
	const { thickness } = bench.stock;
	const [pitch, width] = [s["rib-pitch"], s["block-width"]];
	const radius = ribRadius(bench, s);
	if (radius !== null && width > 2 * radius) {
		return [problem("block-wider-than-circle", ["block-width"], { width, radius })];
	}
	if (isSolid(s)) {
		if (Math.abs(pitch - thickness) < 1e-9) return [];
		const stacked = `${trimmed(thickness, 3)} mm, the sheet's thickness: skin 0 stacks ribs without gaps`;
		return [outOfRange("rib-pitch", pitch, stacked)];
	}
	const slot = thickness + s["joint-fit"];
	if (!(slot > 0)) {
		return [outOfRange("joint-fit", s["joint-fit"], `above ${trimmed(-thickness, 3)} mm`)];
	}
	if (pitch - slot >= LEAST_LAND - 1e-9) return [];
	return [outOfRange("rib-pitch", pitch, `${trimmed(slot + LEAST_LAND, 3)} mm or more`)];
}

/** What the ribs are too narrow for. */
function widthProblems(bench: Bench, s: BlockSettings, crate: Crate): Problem[] {
	const { joints, width, dowels } = crate;
	if (joints && width / 2 - joints.at - joints.width / 2 < LEAST_WEB) {
		const least = Math.ceil((joints.width / 2 + LEAST_WEB) / (0.5 - joints.at / width));
		return [outOfRange("block-width", width, `${least} mm or more in this sheet`)];
	}
	const missing = missingBand(bench, s, crate);
	if (typeof missing !== "number") return [missing];
	if (!dowels) return [];
	const beside = joints ? joints.at - joints.width / 2 : width / 2;
	const most = 2 * (Math.min(dowels.x, beside - dowels.x) - LEAST_WEB);
	if (dowels.diameter <= most) return [];
	const allowed = most >= LEAST_DOWEL ? `none, or at most ${trimmed(most, 2)} mm,` : "none";
	return [outOfRange("dowel", dowels.diameter, `${allowed} on a block this narrow`)];
}

/** Whether a block has the height for its arc, joints, dowels and letters. */
function isTall(bench: Bench, s: BlockSettings): boolean {
	const crate = crateOf(bench, s);
	const { joints, sagitta, top, dowels } = crate;
	const under = top - sagitta - (joints?.depth ?? LEAST_UNDER_SLOT);
	if (under < LEAST_UNDER_SLOT) return false;
	if (dowels && top - dowels.y - dowels.diameter / 2 < LEAST_WEB) return false;
	const missing = missingBand(bench, s, crate);
	return typeof missing === "number" && missing <= 1e-9;
}

/** The first whole height that is enough. */
function leastHeight(bench: Bench, s: BlockSettings): number {
	let height = Math.ceil(s["block-height"]);
	while (!isTall(bench, { ...s, "block-height": height })) height++;
	return height;
}

/** Every reason why a block is not made, or its measures. */
export function soundCrate(bench: Bench, s: BlockSettings): Crate | Problem[] {
	const early = [...formProblems(bench, s), ...sizeProblems(bench, s)];
	if (early.length > 0) return early;
	const crate = crateOf(bench, s);
	const narrow = widthProblems(bench, s, crate);
	if (narrow.length > 0) return narrow;
	if (isTall(bench, s)) return crate;
	const facts = { height: s["block-height"], least: leastHeight(bench, s) };
	return [problem("block-too-low", ["block-height"], facts)];
}
