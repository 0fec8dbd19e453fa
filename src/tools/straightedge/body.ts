import { OFF_WORKING_EDGE } from "../../drawing/index.js";
import { type Move, type Point, STAY } from "../../geometry/index.js";
import { LETTER_HEIGHTS } from "../../lettering/lettering.js";
import { type Problem, problem } from "../../problem/index.js";
import { trimmed } from "../../units/index.js";
import type { Label } from "../label.js";
import { scaleText } from "../scale-text.js";
import { outOfRange } from "../size.js";
import type { Bench } from "../tool.js";
import { deepest } from "./cutter.js";
import { AROUND_BODY, bodyLabel, edgeLettering } from "./labels.js";
import { type Laid, lineName } from "./lay.js";
import { type Edge, landStart, RELIEF_SAGITTA } from "./outline.js";
import type { StraightedgeSettings } from "./settings.js";

/** Bar that must remain over notches and arch, mm. */
const LEAST_BACK = 10;
/** Shortest bar with a finger relief, mm. */
const LEAST_FOR_RELIEF = 100;
/** From the hole to the bar's end, mm. */
const HOLE_IN = 5;
/** Between the hole and letters, mm. */
const BESIDE_HOLE = 3;

/** The bar behind its edges: what stands on it and how much room there is. */
export interface Body {
	readonly first: Laid;
	readonly second: Laid | null;
	readonly height: number;
	readonly relief: boolean;
	readonly hole: { readonly diameter: number; readonly at: Point };
}

/** The bar of one edge or two. */
export function bodyOf(s: StraightedgeSettings, first: Laid, second: Laid | null): Body {
	const { left, right } = first.edge;
	const diameter = s["hanging-hole"] === "none" ? 0 : s["hanging-hole"];
	return {
		first,
		second,
		height: s.height,
		relief: s["finger-relief"] && !second && right - left > LEAST_FOR_RELIEF,
		hole: { diameter, at: { x: right - HOLE_IN - diameter / 2, y: s.height / 2 } },
	};
}

function edgesOf({ first, second }: Body): Edge[] {
	return second ? [first.edge, second.edge] : [first.edge];
}

/** The lowest bar that holds over its notches and arch and has room for hole and letters. */
export function leastHeight(bench: Bench, body: Body): number {
	const { hole, relief } = body;
	const edges = edgesOf(body);
	const arch = ({ nutEnd, archDepth }: Edge) => (nutEnd === "cleared" ? archDepth : 0);
	const cut = Math.max(...edges.map((e) => Math.max(deepest(e), arch(e))));
	const tops = edges.map((e) => edgeLettering(bench.letters, e).top);
	const numbers = tops.reduce((a, b) => a + b) + (relief ? RELIEF_SAGITTA : 0);
	return Math.max(
		edges.length * cut + LEAST_BACK,
		numbers + LETTER_HEIGHTS[0] + 2 * AROUND_BODY,
		hole.diameter === 0 ? 0 : hole.diameter + 2 * underHole(bench, body),
	);
}

/** What the sizes of the bar itself refuse. */
export function bodyProblems(bench: Bench, body: Body): Problem[] {
	const { height } = body;
	const least = leastHeight(bench, body);
	const tooLow = height < least ? [problem("bar-too-low", ["height"], { height, least })] : [];
	return [...tooLow, ...edgesOf(body).flatMap(archProblems), ...endProblems(bench, body)];
}

/** Where the numbers of an edge end. */
function numbersEnd({ letters }: Bench, edge: Edge): number {
	const { numbered, numbering } = edgeLettering(letters, edge);
	const last = numbered.at(-1);
	if (!last) return Number.NEGATIVE_INFINITY;
	return last.centre + letters.width(String(last.fret), numbering.height) / 2;
}

/** A last number that stands too near to the nut end of the other edge. */
function endProblems(bench: Bench, { first, second }: Body): Problem[] {
	if (!second || first.edge.nutEnd !== "butting") return [];
	const least = ({ edge }: Laid) => {
		const last = edge.notches.at(-1)!;
		return numbersEnd(bench, edge) + OFF_WORKING_EDGE - (last.centre + last.width / 2);
	};
	const near = [first, second].filter(
		({ edge }) => edge.right - numbersEnd(bench, edge) < OFF_WORKING_EDGE,
	);
	if (near.length === 0) return [];
	const beyond = Math.ceil(Math.max(...near.map(least)) * 10) / 10;
	const { right, notches } = near[0]!.edge;
	const mm = right - notches.at(-1)!.centre - notches.at(-1)!.width / 2;
	const allowed = `${trimmed(beyond, 1)} mm or more beside the other edge's nut end`;
	return [outOfRange("beyond-last-fret", mm, allowed)];
}

/** An arch over a zero fret that is lower than a notch would be. */
function archProblems({ zeroInArch, archDepth, depth }: Edge): Problem[] {
	if (!zeroInArch || archDepth >= depth) return [];
	return [outOfRange("arch-depth", archDepth, `${trimmed(depth, 3)} mm or more`)];
}

/** What must remain between the hole and an edge: 3 mm, beside notches, numbers and arch. */
function underHole(bench: Bench, body: Body): number {
	const { first, second, hole } = body;
	const end = numbersEnd(bench, first.edge);
	const meets = second !== null || end > hole.at.x - hole.diameter / 2 - 0.5;
	const beside = edgesOf(body).map((edge) => {
		const arch = second && edge.nutEnd === "cleared" ? edge.archDepth : 0;
		const top = meets ? edgeLettering(bench.letters, edge).top + 0.5 : 0;
		return Math.max(OFF_WORKING_EDGE + Math.max(deepest(edge), arch), top);
	});
	return Math.max(...beside);
}

/** What the bar says of each edge: job, scale and line; from the edge's own nut, upright for it. */
export function bodyLabels(bench: Bench, body: Body, s: StraightedgeSettings, over: Move) {
	const { first, second, height, relief, hole } = body;
	const { letters, job } = bench;
	const top = (laid: Laid) => edgeLettering(letters, laid.edge).top;
	const beyondHole = HOLE_IN + hole.diameter + BESIDE_HOLE;
	const size = first.edge.right - first.edge.left;
	const { edge } = first;
	const own = {
		from: landStart(edge) + 5,
		to: second ? edge.left + size / 2 - 1 : edge.right - beyondHole,
		low: top(first),
		high: height - (second ? top(second) : relief ? RELIEF_SAGITTA : 0),
	};
	const texts = textsOf(job, first, lineName(s.along));
	const labels = [bodyLabel(letters, texts, own, STAY, "scale")];
	const refuse = (text: string, { from, to }: { from: number; to: number }) =>
		problem("label-too-long", [], { text, room: Math.max(0, to - from) });
	if (!labels[0]) return refuse(texts.at(-1)!, own);
	if (second) {
		const { left } = second.edge;
		const panel = {
			from: Math.max(landStart(second.edge) + 5, left + beyondHole),
			to: left + size / 2 - 1,
			low: top(second),
			high: height - top(first),
		};
		const words = textsOf(job, second, "");
		labels.push(bodyLabel(letters, words, panel, over, "second-scale"));
		if (!labels[1]) return refuse(words.at(-1)!, panel);
	}
	return labels as Label[];
}

/** The fullest text first, then what may be left out where the bar is short. */
function textsOf(job: string, { neck }: Laid, line: string): string[] {
	const scale = [scaleText(neck), line].filter(Boolean).join(", ");
	const frets = `${neck.frets} fret${neck.frets === 1 ? "" : "s"}`;
	return [`${job}   ${scale}   ${frets}`, `${scale}   ${frets}`, scale];
}
