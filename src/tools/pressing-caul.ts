import { OFF_WORKING_EDGE, type Part } from "../drawing/index.js";
import { arcSagitta } from "../geometry/index.js";
import { fretNumbers } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { inchLabel, trimmed } from "../units/index.js";
import { type CrownTop, crownTop } from "./crown-top.js";
import { stackLabels, stackOf } from "./label-stack.js";
import { caulClaims } from "./pressing-caul/claims.js";
import {
	fewestCauls,
	fretRanges,
	gapOver,
	type Served,
	unreachable,
} from "./pressing-caul/fewest.js";
import { caulNotes } from "./pressing-caul/notes.js";
import { type CaulSettings, type Given, settings } from "./pressing-caul/settings.js";
import {
	arcPath,
	caulOutline,
	holeMarks,
	mountDepth,
	mountReach,
	shapeOf,
} from "./pressing-caul/shape.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Width of the mounting slot and diameter of the holes by default, mm (common practice, no source). */
const USUAL_SIZE = { slot: 6.5, holes: 4, none: 4 } as const;
/** How far letters stay from the sides and from the mount, mm. */
const BESIDE_LETTERS = 2;
/** Back that must remain on either side of the mount, mm. */
const LEAST_SHOULDER = 5;
/** Least wood between the two mounting holes, mm. */
const BETWEEN_HOLES = 2;

function defaults(_bench: Bench, given: Given): Partial<Given> {
	return { "mount-size": given["mount-size"] ?? USUAL_SIZE[given.mount] };
}

/** Width of the caul over these frets, in whole mm. */
function widthOver(frets: readonly CrownTop[], s: CaulSettings): number {
	const board = Math.max(...frets.map(({ length }) => length));
	return Math.ceil(board + 2 * s["side-margin"] - 1e-9);
}

/** Frets under which no arc reaches from edge to edge, or whose middle stays too far open. */
function fretProblems(frets: readonly CrownTop[], s: CaulSettings): Problem[] {
	const off = frets.find(({ length, radius, sagitta }) => !(sagitta > 0 && 2 * radius > length));
	if (off) {
		const facts = { at: `fret ${off.n}`, width: off.length, radius: off.radius };
		return [problem("radius-below-half-board", [], facts)];
	}
	const most = s["most-gap"];
	const open = unreachable(frets, most);
	if (!open) return [];
	const least = Math.ceil(gapOver(open.radius, open) * 1000) / 1000;
	return [problem("caul-gap-unreachable", ["most-gap"], { fret: open.n, given: most, least })];
}

/** A mount or a margin for which this caul has no room. */
function roomProblems(served: Served, s: CaulSettings, width: number): Problem[] {
	if (width >= 2 * served.radius) {
		const longest = Math.max(...served.frets.map(({ length }) => length));
		const most = Math.max(0, served.radius - longest / 2 - 1);
		const allowed = `at most ${trimmed(Math.floor(most * 10) / 10, 1)} mm on a crown this round`;
		return [outOfRange("side-margin", s["side-margin"], allowed)];
	}
	const between = s["hole-spacing"] - s["mount-size"];
	if (s.mount === "holes" && between < BETWEEN_HOLES) {
		const allowed = `at least ${trimmed(s["mount-size"] + BETWEEN_HOLES, 3)} mm between holes this wide`;
		return [outOfRange("hole-spacing", s["hole-spacing"], allowed)];
	}
	const most = width - 2 * LEAST_SHOULDER;
	if (2 * mountReach(s) <= most) return [];
	if (s.mount === "slot") {
		const allowed = `at most ${trimmed(most, 3)} mm on a caul this narrow`;
		return [outOfRange("mount-size", s["mount-size"], allowed)];
	}
	const allowed = `at most ${trimmed(most - s["mount-size"], 3)} mm on a caul this narrow`;
	return [outOfRange("hole-spacing", s["hole-spacing"], allowed)];
}

function caul(
	bench: Bench,
	s: CaulSettings,
	served: Served,
	count: number,
	name: string,
): Part | Problem[] {
	const { radius } = served;
	const width = widthOver(served.frets, s);
	const cramped = roomProblems(served, s, width);
	if (cramped.length > 0) return cramped;
	const serves = fretRanges(served.frets.map(({ n }) => n));
	const room = width - 2 * BESIDE_LETTERS;
	const texts = [
		{ id: "job", pieces: bench.job.split(/\s+/u), between: " ", most: 2.5 },
		{ id: "frets", pieces: ["caul", ...serves.split(/(?<=,) /u)], between: " ", most: 3.5 },
		{
			id: "radius",
			pieces: [inchLabel(radius), `R ${trimmed(radius, 2)} mm`],
			between: "   ",
			most: 3.5,
		},
	];
	const stack = stackOf(bench.letters, texts, room);
	if (typeof stack === "string") {
		return [problem("label-too-long", [], { text: stack, room })];
	}
	const bottom = arcSagitta(radius, width) + OFF_WORKING_EDGE;
	const least = bottom + stack.height + BESIDE_LETTERS + mountDepth(s);
	const height = s["caul-height"] ?? Math.ceil(least - 1e-9);
	if (height < least - 1e-9) {
		const facts = { height, least: Math.ceil(least * 10 - 1e-9) / 10, serves };
		return [problem("caul-too-low", ["caul-height"], facts)];
	}
	const shape = shapeOf(radius, width, height);
	const labels = stackLabels(bench.letters, stack, bottom);
	return {
		name: count === 1 ? name : `${name}-${serves.replace(/[ ,]+/gu, "-")}`,
		tool: "pressing-caul",
		title: `Pressing caul, ${inchLabel(radius)}, ${serves}`,
		stock: bench.stock,
		marks: [
			...labels.flatMap((l) => l.marks),
			...holeMarks(shape, s),
			{ operation: "cut", path: caulOutline(shape, s), feature: "outline" },
		],
		workingEdge: "the concave arc, over its whole width",
		working: [arcPath(shape)],
		claims: [...caulClaims(bench, shape, s), ...labels.map((l) => l.claim)],
		notes: caulNotes(bench, s, served, count),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as CaulSettings;
	const { neck, wire } = bench;
	if (neck.radius === "flat") {
		return { parts: [], problems: [problem("flat-board-caul", [])] };
	}
	const frets = fretNumbers(neck).map((n) => crownTop(neck, wire, n)!);
	const problems = fretProblems(frets, s);
	if (problems.length > 0) return { parts: [], problems };
	const cauls = fewestCauls(frets, s["most-gap"]);
	const made = cauls.map((served) => caul(bench, s, served, cauls.length, name));
	const refused = made.find((m) => Array.isArray(m));
	if (refused) return { parts: [], problems: refused as Problem[] };
	return { parts: made as Part[], problems: [] };
}

export const pressingCaul = tool({
	id: "pressing-caul",
	title: "Pressing caul",
	purpose:
		"Presses frets home with an arc that is never flatter than their crowns, so that no end lifts. Set it in the press, lay it along the fret with its middle over the centre line, and press each fret with the caul that names it.",
	settings,
	defaults,
	build,
});
