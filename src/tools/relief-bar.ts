import type { Mark, Part } from "../drawing/index.js";
import { line } from "../geometry/index.js";
import { fretNumbers } from "../neck/index.js";
import { hangingHole } from "./hanging-hole.js";
import { outlineOf } from "./outline.js";
import { barClaims, landsOf } from "./relief-bar/claims.js";
import { barLabels } from "./relief-bar/labels.js";
import { hasPad, type Laid, layOut } from "./relief-bar/lay.js";
import { RELIEF } from "./relief-bar/measures.js";
import { barNotes } from "./relief-bar/notes.js";
import { cheekDowels, holeMark, middlePieces } from "./relief-bar/pieces.js";
import { fretProblems, sizeProblems } from "./relief-bar/refusals.js";
import { type BarSettings, type Given, settings } from "./relief-bar/settings.js";
import { zeroBlock } from "./relief-bar/zero-block.js";
import { type Bench, type Built, CORNER_RADIUS, tool } from "./tool.js";

/** Diameter of the screw's hole, unless half of a thin stem is less, mm. */
const USUAL_SCREW = 4;

function defaults({ neck }: Bench, given: Given): Partial<Given> {
	const screw = given["clamp-screw"] ?? Math.min(USUAL_SCREW, given["dial-stem"] / 2);
	const joint = given["body-joint"];
	if (given["stand-on"] || joint === undefined) return { "clamp-screw": screw };
	const first = fretNumbers(neck).includes(1) ? 1 : 0;
	return { "clamp-screw": screw, "stand-on": [first, joint] };
}

/** The bar's outline: feet and pad on y = 0, relieved between. */
function outlineAround(laid: Laid) {
	const { height } = laid;
	const lands = landsOf(laid);
	const round = CORNER_RADIUS;
	const lower = lands.flatMap(({ from, to }, i) => [
		...(i === 0 ? [] : [{ x: from, y: RELIEF }]),
		{ x: from, y: 0 },
		{ x: to, y: 0 },
		...(i === lands.length - 1 ? [] : [{ x: to, y: RELIEF }]),
	]);
	return outlineOf([
		...lower,
		{ x: lands.at(-1)!.to, y: height, round },
		{ x: lands[0]!.from, y: height, round },
	]);
}

/** The bar of one sheet, or one of the two cheeks around a dial's stem. */
function bar(bench: Bench, laid: Laid, name: string): Part {
	const { hole, dial, stem } = laid;
	const hanging = hangingHole(bench, hole ?? { x: 0, y: 0 }, hole?.diameter ?? 0);
	const dowels = cheekDowels(bench, laid);
	const labels = barLabels(bench, laid);
	const holes: Mark[] = [
		...(dial ? [holeMark(dial, "dial hole")] : []),
		...(stem?.screw ? [holeMark(stem.screw, "clamp screw hole")] : []),
	];
	return {
		name,
		tool: "relief-bar",
		title: `Relief bar, frets ${laid.first} and ${laid.last}${stem ? ", cheek" : ""}`,
		stock: bench.stock,
		...(stem && { layers: 2 }),
		marks: [
			...labels.flatMap((l) => l.marks),
			...hanging.marks,
			...holes,
			...dowels.marks,
			{ operation: "cut", path: outlineAround(laid), feature: "outline" },
		],
		workingEdge: hasPad(laid)
			? "the undersides of both feet and the pad"
			: "the undersides of both feet",
		working: landsOf(laid).map(({ from, to }) => line({ x: from, y: 0 }, { x: to, y: 0 })),
		claims: [
			...barClaims(bench, laid),
			...dowels.claims,
			...hanging.claims,
			...labels.map((l) => l.claim),
		],
		notes: barNotes(bench, laid),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const unsound = fretProblems(bench, given);
	if (unsound.length > 0) return { parts: [], problems: unsound };
	const s = given as BarSettings;
	const problems = sizeProblems(bench, s);
	if (problems.length > 0) return { parts: [], problems };
	const laid = layOut(bench, s);
	const block = s["zero-block"] ? [zeroBlock(bench, laid, name)] : [];
	const pieces = middlePieces(bench, laid, name);
	return { parts: [bar(bench, laid, name), ...pieces, ...block], problems: [] };
}

export const reliefBar = tool({
	id: "relief-bar",
	title: "Relief bar",
	purpose:
		"Tells how far the neck dips between two frets. Stand its feet on both and measure the gap over the fret between with a feeler leaf, or read it off a dial.",
	settings,
	defaults,
	build,
});
