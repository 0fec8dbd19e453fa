import type { Mark, Part } from "../drawing/index.js";
import { fretLine, isFanned, type Strings } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { type Layout, layoutAt, stringCount } from "./nut-layout-strip/centres.js";
import { layoutClaims } from "./nut-layout-strip/claims.js";
import { LEAST_MARGIN, LEAST_STEP, stripOf } from "./nut-layout-strip/lay.js";
import {
	type End,
	type Given,
	type LayoutSettings,
	settings,
} from "./nut-layout-strip/settings.js";
import { type Bench, type Built, tool } from "./tool.js";

function defaults(_bench: Bench, given: Given): Partial<Given> {
	const usual = given["string-gauges"] ? "gaps" : "centres";
	return { "string-spacing": given["string-spacing"] ?? usual };
}

/** What the list of gauges lacks. */
function gaugeProblems(strings: Strings, s: LayoutSettings): Problem[] {
	const gauges = s["string-gauges"];
	if (!gauges) {
		return s["string-spacing"] === "gaps" ? [problem("gaps-need-gauges", ["string-spacing"])] : [];
	}
	const count = stringCount(strings);
	if (gauges.length === count) return [];
	return [problem("gauges-count", ["string-gauges"], { given: gauges.length, count })];
}

/** Strings too near each other or, at the nut, to the board's edge. */
function layoutProblems(layout: Layout, s: LayoutSettings): Problem[] {
	const { strings, end, from, to, gap } = layout;
	if (s["string-spacing"] === "gaps" && strings.length > 1 && gap < 0) {
		return [problem("strings-touch", ["string-gauges"], { end, overlap: -gap })];
	}
	const steps = strings
		.slice(1)
		.map(({ at }, i) => ({ step: at - strings[i]!.at, ...strings[i]! }));
	const near = steps.find(({ step }) => step < LEAST_STEP);
	if (near) {
		const facts = { end, string: near.n, next: near.n - 1, step: near.step, least: LEAST_STEP };
		return [problem("strings-too-near", [], facts)];
	}
	if (end !== "nut") return [];
	const sides = [
		{ side: "bass", key: "bass-margin" as const, margin: strings[0]!.at - from },
		{ side: "treble", key: "treble-margin" as const, margin: to - strings.at(-1)!.at },
	];
	return sides
		.filter(({ margin }) => margin < LEAST_MARGIN)
		.map(({ side, key, margin }) =>
			problem("string-at-edge", s[key] === undefined ? [] : [key], {
				side,
				margin,
				least: LEAST_MARGIN,
			}),
		);
}

const spacingText = (s: LayoutSettings) => `equal ${s["string-spacing"]}`;

/** What a strip is called, the fullest name first. */
function titlesOf(end: End, strings: Strings, s: LayoutSettings): string[] {
	const name = end.toUpperCase();
	const kind = strings.pairGap > 0 ? "courses" : "strings";
	const spacing = spacingText(s);
	return [`${name}: ${strings.count} ${kind}, ${spacing}`, `${name}: ${spacing}`, name];
}

function notes(bench: Bench, { end, gap }: Layout, s: LayoutSettings): string[] {
	const { neck } = bench;
	const isPaired = (neck.strings?.pairGap ?? 0) > 0;
	const each = isPaired ? "courses" : "strings";
	const where =
		end === "nut"
			? "Lay the upper edge against the nut's face, its ends flush with the board's edges; mark the nut at every line."
			: "Lay the lower edge against the saddle, the mark at the upper edge on the centre line; mark the saddle at every line.";
	const lines = [
		where,
		`Each line is the middle of a string; its number counts from the treble side, the distance in mm from the ${end === "nut" ? "bass edge of the board" : "outer bass string"}.`,
	];
	if ((neck.strings?.count ?? 0) > 1) {
		lines.push(
			s["string-spacing"] === "gaps"
				? `The air between neighbouring ${each} is ${trimmed(gap, 3)} mm everywhere; another set of strings has another layout.`
				: `The ${each} are laid out by their middles; thick ones have less air between them.`,
		);
	}
	if (fretLine(neck, 0).lean !== 0 && isFanned(neck)) {
		lines.push(`The ${end} stands slanted: all distances are along it.`);
	}
	return lines;
}

function strip(
	bench: Bench,
	strings: Strings,
	s: LayoutSettings,
	layout: Layout,
	name: string,
): Part {
	const { end } = layout;
	const made = stripOf(bench, layout, titlesOf(end, strings, s));
	const outline: Mark = { operation: "cut", path: made.outline, feature: "outline" };
	return {
		name: `${name}-${end}`,
		tool: "nut-layout-strip",
		title: `String layout at the ${end}, ${spacingText(s)}`,
		stock: bench.stock,
		marks: [
			...made.strings.map(({ mark }) => mark),
			made.centre.mark,
			...made.labels.flatMap((l) => l.marks),
			outline,
		],
		workingEdge: `the ${end === "nut" ? "upper" : "lower"} edge, at which the strings' lines begin`,
		working: [made.edge],
		claims: [...layoutClaims(bench, made), ...made.labels.map((l) => l.claim)],
		notes: notes(bench, layout, s),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as LayoutSettings;
	const { strings } = bench.neck;
	if (!strings) return { parts: [], problems: [problem("layout-needs-strings", [])] };
	const unsound = gaugeProblems(strings, s);
	if (unsound.length > 0) return { parts: [], problems: unsound };
	const layouts = [...new Set(s.ends)].map((end) => layoutAt(bench.neck, strings, s, end));
	const problems = layouts.flatMap((layout) => layoutProblems(layout, s));
	if (problems.length > 0) return { parts: [], problems };
	return { parts: layouts.map((layout) => strip(bench, strings, s, layout, name)), problems: [] };
}

export const nutLayoutStrip = tool({
	id: "nut-layout-strip",
	title: "Nut layout strip",
	purpose:
		"Shows where every string lies across the nut and the saddle, with equal centres or equal gaps. Lay its edge against nut or saddle and mark a slot at every line.",
	settings,
	defaults,
	build,
});
