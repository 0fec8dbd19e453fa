import { type Problem, problem } from "../../problem/index.js";
import { trimmed } from "../../units/index.js";
import { outOfRange } from "../size.js";
import type { Bench } from "../tool.js";
import { dowelRooms, layOut } from "./lay.js";
import type { BarSettings } from "./settings.js";
import {
	AROUND_DOWEL,
	heightUnderBody,
	leastForDowels,
	leastGrip,
	sheetsFor,
	stemEnd,
	UNDER_BODY,
	widestDowel,
} from "./stem.js";

/** Farthest that a screw may push the stem across the bar, common practice, no source, mm. */
const MOST_PLAY = 1.5;
/** A stem with no more play than this needs no screw, mm. */
const SNUG = 0.1;
/** The stem is so much wider than the screw's hole, or it would not bear on the cheek opposite, mm. */
const BESIDE_SCREW = 2;
/** The plunger, half way in, stands at least so far out of the stem, mm. */
const LEAST_OUT = 3;
/** Thinnest dowels that a job may ask for, mm. */
const THINNEST_DOWEL = 2;
/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;

/** Every reason why a dial's stem cannot be held between these frets, in this sheet. */
export function stemProblems(bench: Bench, s: BarSettings): Problem[] {
	if (bench.layers > 1) return [problem("stem-bar-has-its-layers", [], { layers: bench.layers })];
	const sheet = sheetProblems(bench, s);
	if (sheet.length > 0) return sheet;
	const height = heightProblems(s);
	return height.length > 0 ? height : roomProblems(bench, s);
}

/** Sheets that make up the stem badly, and a screw that does not suit it. */
function sheetProblems({ stock }: Bench, s: BarSettings): Problem[] {
	const stem = s["dial-stem"];
	const screw = s["clamp-screw"];
	const { layers, play } = sheetsFor(stem, stock.thickness);
	if (play > MOST_PLAY + ROUNDING) {
		const facts = { stem, layers, thickness: stock.thickness, play, most: MOST_PLAY };
		return [problem("stem-in-thick-sheets", ["dial-stem"], facts)];
	}
	if (screw === "none") {
		if (play <= SNUG + ROUNDING) return [];
		return [problem("clamp-screw-needed", ["clamp-screw"], { play, snug: SNUG })];
	}
	const most = stem - BESIDE_SCREW;
	if (screw <= most) return [];
	const allowed = `at most ${trimmed(most, 3)} mm, so that the stem bears beside it`;
	return [outOfRange("clamp-screw", screw, allowed)];
}

/** A bar that is too low for grip and letters, or so high that the dial's body meets it. */
function heightProblems(s: BarSettings): Problem[] {
	const reach = s["dial-reach"]!;
	const given = s["bar-height"];
	const air = given === undefined ? UNDER_BODY : 0;
	const low = leastForDowels(s);
	const grip = leastGrip(s);
	const stem = s["stem-length"];
	const mm = (x: number) => `${trimmed(x, 3)} mm`;
	if (reach - air < low) {
		const allowed = `${mm(low + air)} or more for a stem that is held; hold this dial by its lug`;
		return [outOfRange("dial-reach", reach, allowed)];
	}
	const [shortest, longest] = [grip + air, reach - LEAST_OUT];
	if (stem < shortest || stem > longest) {
		const allowed = `${mm(shortest)} to ${mm(longest)} with this dial-reach`;
		return [outOfRange("stem-length", stem, allowed)];
	}
	const least = Math.max(low, stemEnd(s) + grip);
	const height = given ?? heightUnderBody(s);
	if (height >= least - ROUNDING && height <= reach) return [];
	const allowed = `${mm(least)} to ${mm(reach)}: high enough to grip the stem, and under the dial's body`;
	return [outOfRange("bar-height", height, allowed)];
}

/** Frets too near for the hanging hole or two dowels in each of the pieces beside the channel. */
function roomProblems(bench: Bench, s: BarSettings): Problem[] {
	const laid = layOut(bench, s);
	const { stem, hole } = laid;
	if (!stem) return [];
	const [left, right] = dowelRooms(laid, stem);
	if (hole && right.to - right.from < AROUND_DOWEL) {
		return [outOfRange("hanging-hole", hole.diameter, "none between frets this near")];
	}
	if (s.dowel === "none") return [];
	const widest = Math.min(...[left, right].map(({ from, to }) => widestDowel(to - from)));
	if (s.dowel <= widest) return [];
	const thick = widest >= THINNEST_DOWEL ? `none, or at most ${trimmed(widest, 3)} mm` : "none";
	return [outOfRange("dowel", s.dowel, `${thick} between these frets`)];
}
