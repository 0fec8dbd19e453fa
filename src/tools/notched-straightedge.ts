import type { Mark } from "../drawing/index.js";
import { circle, reversed, STAY } from "../geometry/index.js";
import { isFanned, type Neck, stringLines } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { heightForSag, MATERIALS } from "../shop/index.js";
import { inchLabel } from "../units/index.js";
import { heightToFit, type Label, label } from "./label.js";
import { barClaims, edgeClaims } from "./straightedge/claims.js";
import { numberLabels } from "./straightedge/labels.js";
import { type Laid, layEdges, lineOf, secondProblems } from "./straightedge/lay.js";
import { straightedgeNotes } from "./straightedge/notes.js";
import { barOutline, type Edge, halfTurn } from "./straightedge/outline.js";
import { type Given, type StraightedgeSettings, settings } from "./straightedge/settings.js";
import { type Bench, type Built, OFF_WORKING_EDGE, tool } from "./tool.js";

/** Most that the bar may sag on edge by default, mm. */
const SAG = 0.02;
/** Lowest bar by default: its labels and hole have room, mm. */
const LEAST_HEIGHT = 25;
/** Wood to stand on between notches; less on short scales (common practice, no source). */
const LEAST_LAND = 2.5;
const LEAST_LAND_SHORT = 1.5;
const SHORT_SCALE = 400;
/** Bar that must remain over notches and arch, mm. */
const LEAST_BACK = 10;
/** Shortest bar with a finger relief, mm. */
const LEAST_FOR_RELIEF = 100;

function defaults(bench: Bench, given: Given): Partial<Given> {
	const { scale, zeroFret } = bench.neck;
	const short = Math.min(scale.bass, scale.treble) < SHORT_SCALE;
	const basic = {
		"nut-end": given["nut-end"] ?? (zeroFret ? "cleared" : "butting"),
		"least-land": given["least-land"] ?? (short ? LEAST_LAND_SHORT : LEAST_LAND),
		height: given.height ?? LEAST_HEIGHT,
	} as const;
	const line = lineOf(bench.neck, given.along);
	const unsound = secondProblems(bench.neck, given).length > 0;
	if (given.height !== undefined || !line || unsound) return basic;
	const { edge } = layEdges(bench, { ...given, ...basic }, line).first;
	const needed = heightForSag(MATERIALS[bench.stock.material], edge.right - edge.left, SAG);
	return { ...basic, height: Math.max(LEAST_HEIGHT, Math.ceil(needed)) };
}

/** What the geometry of one edge refuses, each with the fret or setting it is about. */
function refusals(s: StraightedgeSettings, { cut, edge, neck }: Laid, both: boolean): Problem[] {
	const found: Problem[] = [];
	const least = s["least-land"];
	const tight = cut.tooTight[0];
	if (tight) {
		const [fret, before] = [tight.fret, tight.fret - 1];
		const more = cut.tooTight.length - 1;
		found.push(
			problem("land-too-narrow", ["side-clearance"], {
				fret,
				before,
				land: tight.land,
				least,
				more,
			}),
		);
	}
	const first = cut.notches.find(({ fret }) => fret > 0);
	const start = edge.nutEnd === "cleared" ? edge.archEnd : edge.left + 1;
	const land = first ? first.centre - first.width / 2 - start : least;
	if (first && land < least) {
		found.push(problem("first-land-too-narrow", ["nut-end"], { fret: first.fret, land, least }));
	}
	if (neck.zeroFret && edge.nutEnd === "butting") {
		found.push(problem("butting-zero-fret", ["nut-end"]));
	}
	const cutAway = edge.depth * (both ? 2 : 1);
	const arched = edge.nutEnd === "cleared" ? edge.archDepth * (both ? 2 : 1) : 0;
	const lowest = Math.max(cutAway, arched) + LEAST_BACK;
	if (s.height < lowest) {
		found.push(problem("bar-too-low", ["height"], { height: s.height, least: lowest }));
	}
	return found;
}

function scaleText({ scale }: Neck, fanned: boolean): string {
	return fanned ? `${inchLabel(scale.bass)} / ${inchLabel(scale.treble)}` : inchLabel(scale.bass);
}

/** What the bar says of itself, along its middle and at its nut end. */
function bodyLabels(bench: Bench, edge: Edge, height: number, hole: number): Label[] | Problem {
	const { letters, neck, job } = bench;
	const text = `${job}   ${scaleText(neck, isFanned(neck))}   ${neck.frets} frets`;
	const left = edge.left + 6;
	const room = edge.right - left - hole - 12;
	const size = heightToFit(letters, text, room, 3.5);
	if (size === null) return problem("label-too-long", [], { text, room });
	const nutX = edge.nutEnd === "cleared" ? edge.archEnd + 2 : edge.left + OFF_WORKING_EDGE;
	const nutY = Math.max(OFF_WORKING_EDGE, edge.depth + 1.5);
	return [
		label(letters, "scale", text, { at: { x: left, y: height / 2 }, height: size }),
		label(letters, "nut", "NUT", { at: { x: nutX, y: nutY }, height: 2.5 }),
	];
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as StraightedgeSettings;
	const refuse = (...problems: Problem[]): Built => ({ parts: [], problems });
	const line = lineOf(bench.neck, s.along);
	if (!line) {
		const count = bench.neck.strings ? stringLines(bench.neck).length : 0;
		return refuse(problem("no-such-string", ["along"], { given: s.along, count }));
	}
	const unsound = secondProblems(bench.neck, given);
	if (unsound.length > 0) return refuse(...unsound);
	const { first, second } = layEdges(bench, s, line);
	const laid = second ? [first, second] : [first];
	const problems = laid.flatMap((l) => refusals(s, l, second !== null));
	if (problems.length > 0) return refuse(...problems);

	const { edge } = first;
	const over = second ? halfTurn(edge, second.edge, s.height) : STAY;
	const relief = s["finger-relief"] && !second && edge.right - edge.left > LEAST_FOR_RELIEF;
	const diameter = s["hanging-hole"] === "none" ? 0 : s["hanging-hole"];
	const hole = { diameter, at: { x: edge.right - 5 - diameter / 2, y: s.height / 2 } };
	const body = bodyLabels(bench, edge, s.height, diameter);
	if (!Array.isArray(body)) return refuse(body);
	const labels = [
		...body,
		...numberLabels(bench.letters, edge, STAY, "fret-"),
		...(second ? numberLabels(bench.letters, second.edge, over, "second-fret-") : []),
	];
	const cuts: Mark[] = [
		{
			operation: "cut",
			path: barOutline(edge, s.height, second?.edge ?? null, relief),
			feature: "outline",
		},
	];
	if (diameter > 0) {
		const path = reversed(circle(hole.at, diameter / 2));
		cuts.unshift({ operation: "cut", path, feature: "hanging hole" });
	}
	const part = {
		name,
		tool: "notched-straightedge",
		title: "Notched straightedge",
		stock: bench.stock,
		marks: [...labels.flatMap((l) => l.marks), ...cuts],
		workingEdge: workingEdge(edge, second !== null),
		claims: [
			...edgeClaims(bench, first, STAY, ""),
			...(second ? edgeClaims(bench, second, over, "second ") : []),
			...barClaims(bench, edge, s.height, hole),
			...labels.map((l) => l.claim),
		],
		notes: straightedgeNotes(bench, first, s),
	};
	return { parts: [part], problems: [] };
}

function workingEdge(edge: Edge, both: boolean): string {
	const lands = both ? "both long edges, between the notches" : "lower edge, between the notches";
	return edge.nutEnd === "butting" ? `${lands}; and the nut end` : lands;
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
