import { extents, type Path, type Point } from "../../geometry/index.js";
import { pointOnFret, widthAt } from "../../neck/index.js";
import { type Label, label } from "../label.js";
import { type StackedText, stackOf } from "../label-stack.js";
import { lengthName, scaleText } from "../scale-text.js";
import type { Bench } from "../tool.js";
import { type Guide, type Hole, lineBefore } from "./lay.js";
import { isFree, letterBox, OFF_EDGE } from "./room.js";
import type { GuideSettings } from "./settings.js";

/** Heights of the numbers, mm. */
const NUMBERS = [2.5, 1.8] as const;
/** Heights of the largest letters of the title, mm. */
const TITLES = [3.5, 2.5, 1.8] as const;
/** Part of a letter's height that g and p hang below the baseline. */
const HANG = 0.3;
/** Between the title's lines, mm. */
const LEADING = 2;

/** A label and the box that its letters take. */
interface Boxed {
	readonly label: Label;
	readonly box: Path;
}

/** What is engraved, and what had no room. */
export interface GuideLabels {
	readonly labels: readonly Label[];
	readonly unnumbered: readonly number[];
	readonly untold: readonly string[];
}

/** Every marker's fret beside its holes, and what the guide says of itself where there is room. */
export function guideLabels(bench: Bench, s: GuideSettings, guide: Guide, hung: readonly Path[]) {
	const frets = [...new Set(guide.holes.map(({ fret }) => fret))].sort((a, b) => a - b);
	const numbers = frets.map((fret) => ({ fret, number: numberOf(bench, guide, fret, hung) }));
	const placed = numbers.flatMap(({ number }) => number ?? []);
	const title = titleOf(bench, s, guide, [...hung, ...placed.map(({ box }) => box)]);
	return {
		labels: [...placed.map((n) => n.label), ...title.labels],
		unnumbered: numbers.flatMap(({ fret, number }) => (number ? [] : [fret])),
		untold: title.untold,
	} satisfies GuideLabels;
}

/** A fret's number beside its hole or between the two, in the first place that is free. */
function numberOf(
	{ letters }: Bench,
	guide: Guide,
	fret: number,
	hung: readonly Path[],
): Boxed | null {
	const text = String(fret);
	for (const height of NUMBERS) {
		const width = letters.width(text, height);
		for (const { x, y } of placesBeside(guide, fret, width, height)) {
			const at = { x: x - width / 2, y: y - height / 2 };
			const box = letterBox(width, height, 0, at);
			if (!isFree(guide, box, hung)) continue;
			return { label: label(letters, `fret-${fret}`, text, { at, height }), box };
		}
	}
	return null;
}

/** Middles of the places for a fret's number, the best first. */
function placesBeside(guide: Guide, fret: number, width: number, height: number): Point[] {
	const own = guide.holes.filter((hole) => hole.fret === fret);
	const [low, high] = [own[0]!, own.at(-1)!].sort((a, b) => a.at.y - b.at.y) as [Hole, Hole];
	const midway = (y: number): Point => {
		const lines = [lineBefore(guide, fret), guide.slots[fret - 1]!.fret];
		return { x: lines.reduce((sum, l) => sum + pointOnFret(l, y).x / 2, 0), y };
	};
	const reach = guide.diameter / 2 + OFF_EDGE + 1e-6;
	const across = reach + height / 2;
	const along = reach + width / 2;
	return [
		...(own.length > 1 ? [midway((low.at.y + high.at.y) / 2)] : []),
		midway(low.at.y - across),
		midway(high.at.y + across),
		{ x: low.at.x - along, y: low.at.y },
		{ x: low.at.x + along, y: low.at.y },
	];
}

/** A line of the title, to be read from the right. */
interface Line {
	readonly id: string;
	readonly text: string;
	readonly height: number;
}

function textsOf({ job, neck }: Bench, s: GuideSettings): Omit<StackedText, "most">[] {
	const scales = scaleText(neck).split(" / ");
	const scale = scales.map((text, i) => (i < scales.length - 1 ? `${text} /` : `${text},`));
	return [
		{ id: "title", pieces: ["MARKER", "GUIDE"], between: " " },
		{ id: "drill", pieces: ["drill", lengthName(s.drill)], between: " " },
		{ id: "job", pieces: job.split(" "), between: " " },
		{ id: "scale", pieces: [...scale, `${neck.frets} frets`], between: " " },
	];
}

/** The title as large as it goes in one place; else in the smallest letters wherever lines fit. */
function titleOf(bench: Bench, s: GuideSettings, guide: Guide, taken: readonly Path[]) {
	const { neck, face, to } = guide;
	const room = Math.min(widthAt(neck, face.x), widthAt(neck, to)) - 2 * OFF_EDGE;
	const places = placesOf(guide, taken);
	const inLines = (most: number) => {
		const stacks = textsOf(bench, s).map((text) => ({
			text,
			stack: stackOf(bench.letters, [{ ...text, most }], room),
		}));
		return {
			lines: stacks.flatMap(({ stack }) => (typeof stack === "string" ? [] : stack.lines)),
			untold: stacks.flatMap(({ stack }) => (typeof stack === "string" ? [stack] : [])),
		};
	};
	for (const most of TITLES) {
		const { lines, untold } = inLines(most);
		if (lines.some(({ height }) => height < most)) continue;
		for (const x of places) {
			const block = blockAt(bench, lines, x);
			if (!block.every(({ box }) => isFree(guide, box, taken))) continue;
			return { labels: block.map((b) => b.label), untold };
		}
	}
	const { lines, untold } = inLines(TITLES.at(-1)!);
	const scattered = inPlaces(bench, guide, lines, places, taken);
	return { labels: scattered.labels, untold: [...untold, ...scattered.left] };
}

/** As many lines in each place as it has room for, in their order; and those that are left. */
function inPlaces(
	bench: Bench,
	guide: Guide,
	lines: readonly Line[],
	places: readonly number[],
	taken: readonly Path[],
) {
	const placed: Boxed[] = [];
	let rest = lines;
	for (const x of places) {
		for (let count = rest.length; count > 0; count--) {
			const block = blockAt(bench, rest.slice(0, count), x);
			const around = [...taken, ...placed.map(({ box }) => box)];
			if (!block.every(({ box }) => isFree(guide, box, around))) continue;
			placed.push(...block);
			rest = rest.slice(count);
		}
	}
	return { labels: placed.map((p) => p.label), left: rest.map(({ text }) => text) };
}

/** Middles of the stretches between frets, those without a hole first; before, between and beside holes. */
function placesOf(guide: Guide, taken: readonly Path[]): number[] {
	const { slots, holes, to } = guide;
	const boxes = [...holes.map(({ path }) => path), ...taken].map(extents);
	const gaps = slots.map(({ fret }) => {
		const [from, until] = [lineBefore(guide, fret.n).x, fret.x];
		const inside = boxes.filter(({ minX, maxX }) => minX < until && maxX > from);
		const [first, last] = [
			Math.min(until, ...inside.map((b) => b.minX)),
			Math.max(from, ...inside.map((b) => b.maxX)),
		];
		return inside.length === 0
			? { free: true, places: [(from + until) / 2] }
			: { free: false, places: [(from + first) / 2, (last + until) / 2] };
	});
	return [
		...gaps.filter(({ free }) => free),
		...gaps.filter(({ free }) => !free),
		{ places: [(slots.at(-1)!.fret.x + to) / 2] },
	].flatMap(({ places }) => places);
}

/** Lines side by side about a place of the centre line, turned to be read from the right. */
function blockAt({ letters }: Bench, lines: readonly Line[], middle: number): Boxed[] {
	const all = lines.reduce((sum, { height }) => sum + (1 + HANG) * height + LEADING, -LEADING);
	let x = middle - all / 2;
	return lines.map(({ id, text, height }) => {
		x += height;
		const place = { at: { x, y: 0 }, height, turn: Math.PI / 2, align: "centre" } as const;
		const width = letters.width(text, height);
		const corner = { x: x + HANG * height, y: -width / 2 };
		x += HANG * height + LEADING;
		return {
			label: label(letters, id, text, place),
			box: letterBox(width, (1 + HANG) * height, Math.PI / 2, corner),
		};
	});
}
