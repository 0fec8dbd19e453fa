import type { Mark, Part } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { outOfRange } from "./size.js";
import { railClaims } from "./sled-rails/claims.js";
import { railFace } from "./sled-rails/labels.js";
import { sledNotes } from "./sled-rails/notes.js";
import { boardEnds, lastFretReach, type Rail, railAt } from "./sled-rails/rails.js";
import { type Given, type RailSettings, settings } from "./sled-rails/settings.js";
import { centreMarks, markPath, railEdge, railFoot, railOutline } from "./sled-rails/shape.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Board beyond its last fret where the job does not say, common practice, no source, mm. */
const BEYOND_LAST_FRET = 10;
/** Least gap between board and rail, mm. */
const LEAST_GAP = 1;

function defaults({ neck }: Bench, given: Given): Partial<Given> {
	const reach = Math.ceil(lastFretReach(neck) + BEYOND_LAST_FRET - 1e-9);
	return { "board-end": given["board-end"] ?? reach };
}

/** Rails that would meet the board, and a board that ends before its last fret. */
function placeProblems({ neck, stock }: Bench, s: RailSettings): Problem[] {
	const found: Problem[] = [];
	const least = stock.thickness / 2 + LEAST_GAP;
	for (const setting of ["before-nut", "past-end"] as const) {
		const given = s[setting];
		if (given < least - 1e-9) found.push(problem("rail-meets-board", [setting], { given, least }));
	}
	const reach = lastFretReach(neck);
	if (s["board-end"] <= reach) {
		const allowed = `above ${trimmed(reach, 3)} mm, where the last fret ends`;
		found.push(outOfRange("board-end", s["board-end"], allowed));
	}
	return found;
}

/** Farthest that a knot of the radius may lie beside one cone, as a share of it. */
const ONE_CONE = 1e-6;

/**
 * A board whose radius grows at more than one rate: the flat plate rides from rail to rail on one
 * cone, which is not the board in between.
 */
function coneProblems({ neck }: Bench, [nut, end]: readonly [Rail, Rail]): Problem[] {
	if (neck.radius === "flat" || nut.board === null || end.board === null) return [];
	const rate = (end.board - nut.board) / (end.x - nut.x);
	const beside = neck.radius.knots
		.filter(({ x }) => x > nut.x && x < end.x)
		.map(({ x, value }) => ({ x, radius: value, ridden: nut.board! + rate * (x - nut.x) }))
		.map((k) => ({ ...k, off: Math.abs(k.ridden / k.radius - 1) }))
		.sort((a, b) => b.off - a.off)[0];
	if (!beside || beside.off < ONE_CONE) return [];
	const { x, radius, ridden } = beside;
	return [problem("rails-need-one-cone", [], { x, radius, ridden })];
}

/** What an arc drawn out to a rail's place does not allow. */
function arcProblems({ tag, board, radius, half }: Rail): Problem[] {
	if (board === null || radius === null) return [];
	const setting = tag === "nut" ? "before-nut" : "past-end";
	const place = `the ${tag} rail`;
	if (!(board > 0)) return [problem("radius-vanishes", [setting], { radius: board, place })];
	if (half <= radius) return [];
	return [problem("rail-wider-than-circle", [setting], { width: 2 * half, radius, place })];
}

function railPart(
	bench: Bench,
	s: RailSettings,
	rail: Rail,
	twin: Rail,
	name: string,
): Part | Problem {
	const diameter = s["rail-hole"] === "none" ? 0 : s["rail-hole"];
	const face = railFace(bench, s, rail, diameter);
	if ("code" in face) return face;
	const hole = hangingHole(bench, { x: 0, y: face.hole }, diameter);
	const outline: Mark = { operation: "cut", path: railOutline(rail), feature: "outline" };
	const scores = centreMarks(rail).map(
		(mark): Mark => ({
			operation: "score",
			path: markPath(mark),
			feature: `${mark.name} centre mark`,
		}),
	);
	return {
		name: `${name}-${rail.tag}`,
		tool: "sled-rails",
		title: `Sled rail, ${rail.tag === "nut" ? "before the nut" : "past the end of the board"}`,
		stock: bench.stock,
		marks: [...scores, ...face.labels.flatMap((l) => l.marks), ...hole.marks, outline],
		workingEdge:
			rail.radius === null
				? "the straight upper edge, and the foot"
				: "the convex arc above, over its whole width, and the foot",
		working: [railEdge(rail), railFoot(rail)],
		claims: [...railClaims(bench, rail), ...hole.claims, ...face.labels.map((l) => l.claim)],
		notes: sledNotes(bench, s, rail, twin),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as RailSettings;
	const refuse = (problems: readonly Problem[]): Built => ({ parts: [], problems });
	const misplaced = placeProblems(bench, s);
	if (misplaced.length > 0) return refuse(misplaced);
	const ends = boardEnds(bench.neck, s);
	const [nut, end] = (["nut", "end"] as const).map((tag) => railAt(bench, s, tag, ends));
	const unsound = [...coneProblems(bench, [nut!, end!]), ...[nut!, end!].flatMap(arcProblems)];
	if (unsound.length > 0) return refuse(unsound);
	const parts = [railPart(bench, s, nut!, end!, name), railPart(bench, s, end!, nut!, name)];
	const problems = parts.filter((part): part is Problem => "code" in part);
	if (problems.length > 0) return refuse(problems.slice(0, 1));
	return { parts: parts as Part[], problems: [] };
}

export const sledRails = tool({
	id: "sled-rails",
	title: "Sled rails",
	purpose:
		"A matched pair of rails, one before the nut and one past the end of the board, on which a router's sled rides so that its bit follows this board's finished surface. Stand them square to the centre line on the bench that the board is blocked up on, and slide and rock a flat plate over both.",
	settings,
	defaults,
	build,
});
