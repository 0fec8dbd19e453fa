import { fretLine, fretNumbers } from "../../neck/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { trimmed } from "../../units/index.js";
import { outOfRange } from "../size.js";
import type { Bench } from "../tool.js";
import { holdsStem, layOut, leastHeight } from "./lay.js";
import type { BarSettings, Given } from "./settings.js";
import { stemProblems } from "./stem-refusals.js";

/** Shortest way from foot to foot: for letters, a dial's hole and the one to hang it by, mm. */
const LEAST_SPAN = 30;
/** Plate between two holes, mm. */
const BETWEEN_HOLES = 3;
/** Between a foot and the crown of a neighbouring fret, mm. */
const BESIDE_CROWN = 0.5;

/** Why the bar cannot stand on the frets that are asked for. */
export function fretProblems({ neck }: Bench, s: Given): Problem[] {
	const frets = s["stand-on"];
	if (!frets) return [problem("body-joint-needed", [])];
	const joint = s["body-joint"];
	if (joint !== undefined && joint !== frets[1]) {
		return [problem("stands-twice", ["body-joint"], { joint, first: frets[0]!, last: frets[1]! })];
	}
	const path = s["body-joint"] === undefined ? ["stand-on"] : ["body-joint"];
	const numbers = fretNumbers(neck);
	const beyond = frets.find((n) => !numbers.includes(n));
	if (beyond !== undefined) {
		const facts = { fret: beyond, from: numbers[0]!, to: numbers.at(-1)! };
		return [problem("no-wire-at-fret", path, facts)];
	}
	const [first, last] = frets as [number, number];
	if (last - first < 2) return [problem("no-fret-between", path, { first, last })];
	const span = fretLine(neck, last).x - fretLine(neck, first).x;
	if (span >= LEAST_SPAN) return [];
	return [problem("relief-bar-too-short", path, { first, last, span, least: LEAST_SPAN })];
}

/** What these frets, the dial and the sheet do not allow. */
export function sizeProblems(bench: Bench, s: BarSettings): Problem[] {
	const idle = s["dial-held-by"] === "stem" ? "dial-held-by" : "dial-reach";
	if (s["reads-with"] === "feeler" && (idle === "dial-held-by" || s[idle] !== undefined)) {
		return [problem("dial-without-dial", [idle], { key: idle })];
	}
	if (s["reads-with"] === "dial" && s["dial-reach"] === undefined) {
		return [problem("dial-reach-needed", ["reads-with"], { held: s["dial-held-by"] })];
	}
	if (holdsStem(s)) {
		const found = stemProblems(bench, s);
		if (found.length > 0) return found;
	}
	const height = s["bar-height"];
	const least = leastHeight(s);
	if (!holdsStem(s) && height !== undefined && height < least) {
		return [
			outOfRange("bar-height", height, `${trimmed(least, 3)} mm or more, for the dial's hole`),
		];
	}
	return [...footProblems(bench, s), ...holeProblems(bench, s)];
}

/** A hanging hole that would meet the dial's. */
function holeProblems(bench: Bench, s: BarSettings): Problem[] {
	const { dial, hole } = layOut(bench, s);
	if (!dial || !hole) return [];
	const apart = Math.hypot(hole.x - dial.x, hole.y - dial.y);
	if (apart - (hole.diameter + dial.diameter) / 2 >= BETWEEN_HOLES) return [];
	return [
		outOfRange("hanging-hole", hole.diameter, "none, or a smaller one, beside the dial's hole"),
	];
}

/** A foot that would meet the crown beside the one that it stands on. */
function footProblems(bench: Bench, s: BarSettings): Problem[] {
	const { neck, wire } = bench;
	const near = (n: number) => {
		const beside = [n - 1, n + 1].filter((m) => fretNumbers(neck).includes(m));
		return Math.min(...beside.map((m) => Math.abs(fretLine(neck, m).x - fretLine(neck, n).x)));
	};
	const { first, last, read } = layOut(bench, s);
	const gap = Math.min(...[first, last, read].map(near));
	const most = 2 * (gap - wire.crownWidth / 2 - BESIDE_CROWN);
	if (s["foot-width"] <= most) return [];
	return [
		outOfRange("foot-width", s["foot-width"], `at most ${trimmed(most, 3)} mm between these frets`),
	];
}
