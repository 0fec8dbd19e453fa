import type { Mark } from "../drawing/index.js";
import { STAY } from "../geometry/index.js";
import { crossingOf, type StringLine, stringLines } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { heightForSag, MATERIALS } from "../shop/index.js";
import { hangingHole } from "./hanging-hole.js";
import { secondProblems } from "./second-edge.js";
import { bodyLabels, bodyOf, bodyProblems, leastHeight } from "./straightedge/body.js";
import { barClaims, edgeClaims } from "./straightedge/claims.js";
import { cutterProblemsOf } from "./straightedge/cutter.js";
import { numberLabels, nutLabel } from "./straightedge/labels.js";
import { type Laid, layEdges, lineName, lineOf } from "./straightedge/lay.js";
import { straightedgeNotes } from "./straightedge/notes.js";
import {
	barOutline,
	type Edge,
	halfTurn,
	landStart,
	workingLines,
} from "./straightedge/outline.js";
import { type Given, type StraightedgeSettings, settings } from "./straightedge/settings.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Most that the bar may sag on edge by default, mm. */
const SAG = 0.02;
/** Lowest bar by default: its labels and hole have room, mm. */
const LEAST_HEIGHT = 25;
/** Wood to stand on between notches; less on short scales (common practice, no source). */
const LEAST_LAND = 2.5;
const LEAST_LAND_SHORT = 1.5;
const SHORT_SCALE = 400;

/** Most that a square end may lie off a slanted nut before it is refused, mm. */
const SLANTED_NUT = 0.05;

/** A square end meets a slanted nut with one corner: how far that pushes the bar's middle, mm. */
function pushedBySlant(bench: Bench, line: StringLine): number {
	return (bench.stock.thickness / 2) * Math.tan(crossingOf(bench.neck, line, 0).slant);
}

function defaults(bench: Bench, given: Given): Partial<Given> {
	const { scale, zeroFret } = bench.neck;
	const line = lineOf(bench.neck, given.along);
	const slanted = line !== null && pushedBySlant(bench, line) > SLANTED_NUT;
	const short = Math.min(scale.bass, scale.treble) < SHORT_SCALE;
	const basic = {
		"nut-end": given["nut-end"] ?? (zeroFret || slanted ? "cleared" : "butting"),
		"least-land": given["least-land"] ?? (short ? LEAST_LAND_SHORT : LEAST_LAND),
		height: given.height ?? LEAST_HEIGHT,
	} as const;
	const unsound = secondProblems(bench.neck, given["second-edge"]).length > 0;
	if (given.height !== undefined || !line || unsound) return basic;
	const s = { ...given, ...basic };
	const { first, second } = layEdges(bench, s, line);
	const size = first.edge.right - first.edge.left;
	const stiff = heightForSag(MATERIALS[bench.stock.material], size, SAG);
	const least = Math.max(LEAST_HEIGHT, stiff, leastHeight(bench, bodyOf(s, first, second)));
	return { ...basic, height: Math.ceil(least - 1e-9) };
}

/** What the geometry of one edge refuses, each with the fret or setting it is about. */
function edgeProblems(
	s: StraightedgeSettings,
	{ cut, edge, neck }: Laid,
	path: string[],
): Problem[] {
	const found: Problem[] = [];
	const least = s["least-land"];
	const tight = cut.tooTight[0];
	if (tight) {
		const { fret, land } = tight;
		const more = cut.tooTight.length - 1;
		const facts = { fret, before: fret - 1, land, least, more };
		found.push(problem("land-too-narrow", path, facts));
	}
	const first = cut.notches.find(({ fret }) => fret > 0);
	const land = first ? first.centre - first.width / 2 - landStart(edge) : least;
	if (first && land < least - 1e-9) {
		found.push(problem("first-land-too-narrow", ["nut-end"], { fret: first.fret, land, least }));
	}
	if (neck.zeroFret && edge.nutEnd === "butting") {
		found.push(problem("butting-zero-fret", ["nut-end"]));
	}
	return found;
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as StraightedgeSettings;
	const refuse = (...problems: Problem[]): Built => ({ parts: [], problems });
	const line = lineOf(bench.neck, s.along);
	if (!line) {
		const count = bench.neck.strings ? stringLines(bench.neck).length : 0;
		return refuse(problem("no-such-string", ["along"], { given: s.along, count }));
	}
	const unsound = secondProblems(bench.neck, given["second-edge"]);
	if (unsound.length > 0) return refuse(...unsound);
	const { first, second } = layEdges(bench, s, line);
	const body = bodyOf(s, first, second);
	const pushed = pushedBySlant(bench, line);
	const problems = [
		...edgeProblems(s, first, ["side-clearance"]),
		...cutterProblemsOf(bench, first.edge, ["depth-clearance"]),
		...(s["nut-end"] === "butting" && pushed > SLANTED_NUT
			? [problem("butting-slanted-nut", ["nut-end"], { pushed, most: SLANTED_NUT })]
			: []),
		...(second ? edgeProblems(s, second, ["second-edge"]) : []),
		...(second ? cutterProblemsOf(bench, second.edge, ["second-edge"]) : []),
		...bodyProblems(bench, body),
	];
	if (problems.length > 0) return refuse(...problems);

	const { edge } = first;
	const over = second ? halfTurn(edge, second.edge, s.height) : STAY;
	const bodyTexts = bodyLabels(bench, body, s, over);
	if (!Array.isArray(bodyTexts)) return refuse(bodyTexts);
	const edges = [
		{ laid: first, move: STAY, prefix: "", of: "" as const },
		...(second ? [{ laid: second, move: over, prefix: "second-", of: "second " as const }] : []),
	];
	const labels = [
		...bodyTexts,
		...edges.flatMap(({ laid, move, prefix }) => [
			...nutLabel(bench.letters, laid.edge, move, prefix),
			...numberLabels(bench.letters, laid.edge, move, prefix),
		]),
	];
	const hole = hangingHole(bench, body.hole.at, body.hole.diameter);
	const outline: Mark = {
		operation: "cut",
		path: barOutline(edge, s.height, second?.edge ?? null, body.relief),
		feature: "outline",
	};
	const part = {
		name,
		tool: "notched-straightedge",
		title: ["Notched straightedge", lineName(s.along)].filter(Boolean).join(", "),
		stock: bench.stock,
		marks: [...labels.flatMap((l) => l.marks), ...hole.marks, outline],
		workingEdge: workingEdge(edge, second !== null),
		working: edges.flatMap(({ laid, move }) => workingLines(laid.edge, s.height, move)),
		claims: [
			...edges.flatMap(({ laid, move, of }) => edgeClaims(bench, laid, move, of)),
			...barClaims(bench, edge, second?.edge ?? null, s.height),
			...hole.claims,
			...labels.map((l) => l.claim),
		],
		notes: straightedgeNotes(bench, first, second, s),
	};
	return { parts: [part], problems: [] };
}

function workingEdge(edge: Edge, both: boolean): string {
	const lands = both ? "both long edges, between the notches" : "lower edge, between the notches";
	return edge.nutEnd === "butting"
		? `${lands}; and ${both ? "both nut ends" : "the nut end"}`
		: lands;
}

export const notchedStraightedge = tool({
	id: "notched-straightedge",
	title: "Notched straightedge",
	purpose:
		"Lies on the wood between the frets, so that you see whether the board itself is straight while the frets are still in. Lay it along the neck with a notch over every fret and look for light under its lower edge.",
	settings,
	defaults,
	build,
});
