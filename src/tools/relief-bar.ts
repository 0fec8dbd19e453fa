import type { Mark, Part } from "../drawing/index.js";
import { circle, line, reversed } from "../geometry/index.js";
import { fretLine, fretNumbers, isFanned } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { MATERIALS, sagOnEdge } from "../shop/index.js";
import { trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { heightToFit, type Label, label } from "./label.js";
import { outlineOf } from "./outline.js";
import { barClaims, landsOf } from "./relief-bar/claims.js";
import { AROUND_HOLE, type Laid, layOut, leastHeight, RELIEF } from "./relief-bar/lay.js";
import { type BarSettings, type Given, settings } from "./relief-bar/settings.js";
import { zeroBlock } from "./relief-bar/zero-block.js";
import { scaleText } from "./scale-text.js";
import { outOfRange } from "./size.js";
import { type Bench, type Built, CORNER_RADIUS, tool } from "./tool.js";

/** Between a foot and the crown of a neighbouring fret, mm. */
const BESIDE_CROWN = 0.5;
/** Baseline of the fret numbers, and height of letters, mm. */
const NUMBERS = RELIEF + 3;
const TEXT = 2.5;
const LEADING = 2;

function defaults({ neck }: Bench, given: Given): Partial<Given> {
	const joint = given["body-joint"];
	if (given["stand-on"] || joint === undefined) return {};
	return { "stand-on": [fretNumbers(neck).includes(1) ? 1 : 0, joint] };
}

function fretProblems({ neck }: Bench, s: Given): Problem[] {
	const frets = s["stand-on"];
	if (!frets) return [problem("body-joint-needed", [])];
	const path = s["body-joint"] === undefined ? ["stand-on"] : ["body-joint"];
	const numbers = fretNumbers(neck);
	const beyond = frets.find((n) => !numbers.includes(n));
	if (beyond !== undefined) {
		const facts = { fret: beyond, from: numbers[0]!, to: numbers.at(-1)! };
		return [problem("no-wire-at-fret", path, facts)];
	}
	const [first, last] = frets as [number, number];
	if (last - first >= 2) return [];
	return [problem("no-fret-between", path, { first, last })];
}

function sizeProblems(bench: Bench, s: BarSettings): Problem[] {
	const { neck, wire } = bench;
	if (s["reads-with"] === "dial" && s["dial-reach"] === undefined) {
		return [problem("dial-reach-needed", ["reads-with"])];
	}
	const height = s["bar-height"];
	const least = leastHeight(s);
	if (height !== undefined && height < least) {
		return [
			outOfRange("bar-height", height, `${trimmed(least, 3)} mm or more, for the dial's hole`),
		];
	}
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

/** Numbers of the frets over feet and pad; what the bar is over them, from the left. */
function barLabels(bench: Bench, laid: Laid, right: number): Label[] {
	const { letters, neck, job } = bench;
	const { first, read, last, readAt, span, foot, dial } = laid;
	const numbers = [
		{ n: first, x: 0, align: "left" as const },
		{ n: read, x: readAt, align: "centre" as const },
		{ n: last, x: span, align: "right" as const },
	].map(({ n, x, align }) =>
		label(letters, `fret-${n}`, String(n), { at: { x, y: NUMBERS }, height: TEXT, align }),
	);
	const end = dial ? dial.x - dial.diameter / 2 - AROUND_HOLE : right;
	const texts = [
		{ id: "job", text: `${job}, ${scaleText(neck)}` },
		{ id: "title", text: `RELIEF BAR on frets ${first} and ${last}, reads at ${read}` },
	];
	let y = NUMBERS + TEXT;
	const lines = texts.flatMap(({ id, text }) => {
		const height = heightToFit(letters, text, end - 2, TEXT);
		if (height === null) return [];
		y += LEADING;
		const own = label(letters, id, text, { at: { x: 2 - foot / 2, y }, height });
		y += height;
		return [own];
	});
	return [...numbers, ...lines];
}

function notes(bench: Bench, laid: Laid): string[] {
	const { neck, stock } = bench;
	const { first, last, read, span, height, dial } = laid;
	const sag = trimmed(sagOnEdge(MATERIALS[stock.material], span, height - RELIEF), 4);
	const stand = `Stand the feet on the crowns of frets ${first} and ${last}, the strings tuned, and read at fret ${read}.`;
	const read2 = dial
		? [
				"Bolt the dial to the face by its lug, the plunger square to the edge; set it to zero on the zero block. How much farther out the plunger stands over the fret is the relief, how much farther in a back-bow.",
				`The bar sags by ${sag} mm between its feet; set to zero on the block it does so there too, and the reading needs no correction.`,
			]
		: [
				"Push feeler leaves under the pad: the thickest that passes without lifting the bar is the relief. A back-bow it cannot read: the bar then rocks on the pad.",
				`The bar sags by ${sag} mm between its feet: by so much the gap reads too small.`,
			];
	const fan = isFanned(neck)
		? ["The frets are fanned: the bar fits along the centre line only."]
		: [];
	return [stand, ...read2, ...fan];
}

function bar(bench: Bench, s: BarSettings, laid: Laid, name: string): Part {
	const { span, foot, height, dial } = laid;
	const diameter = s["hanging-hole"] === "none" ? 0 : s["hanging-hole"];
	const right = span + foot / 2 - AROUND_HOLE - diameter;
	const hole = hangingHole(
		bench,
		{ x: right + diameter / 2, y: height - AROUND_HOLE - diameter / 2 },
		diameter,
	);
	const labels = barLabels(bench, laid, right - AROUND_HOLE);
	const marks: Mark[] = dial
		? [{ operation: "cut", path: reversed(circle(dial, dial.diameter / 2)), feature: "dial hole" }]
		: [];
	return {
		name,
		tool: "relief-bar",
		title: `Relief bar, frets ${laid.first} and ${laid.last}`,
		stock: bench.stock,
		marks: [
			...labels.flatMap((l) => l.marks),
			...hole.marks,
			...marks,
			{ operation: "cut", path: outlineAround(laid), feature: "outline" },
		],
		workingEdge: dial ? "the undersides of both feet" : "the undersides of both feet and the pad",
		working: landsOf(laid).map(({ from, to }) => line({ x: from, y: 0 }, { x: to, y: 0 })),
		claims: [...barClaims(bench, laid), ...hole.claims, ...labels.map((l) => l.claim)],
		notes: notes(bench, laid),
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
	return { parts: [bar(bench, s, laid, name), ...block], problems: [] };
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
