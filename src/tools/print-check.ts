import * as z from "zod";
import { type Ink, inkOf, wrapped, writing } from "../drawing/index.js";
import type { Extents } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import {
	bodyOf,
	type DrawnRule,
	metricRule,
	type Paper,
	type PaperDocument,
	pageHeight,
	printable,
} from "../paper/index.js";
import { type Bench, type Built, tool } from "./tool.js";

/** The long rules are whole steps of this, so that they are easy to read, and end this far inside, mm. */
const STEP = 20;
const INSIDE = 15;
/** From the edges of what is printable to the long rules, mm. */
const FROM_TOP = 6.5;
const FROM_RIGHT = 8;
/** From the rule across the page down to the title, from the rule up it to the text, and the text's own indent, mm. */
const UNDER_RULE = 9;
const BESIDE_RULE = 10;
const INDENT = 6;
const TITLE = "Check of the printer";
const HEADING = 5;
/** Heights of letters that are tried, mm, and the one that lines are broken for. */
const LETTERS = [3.5, 3, 2.5] as const;
const USUAL_TEXT = 2.5;
/** A check on a roll is as long as this allows, mm. */
const ON_ROLL = 400;

/** The longest rules that a page takes: whole steps, mm. */
export function longestRules({ minX, minY, maxX, maxY }: Extents): {
	across: number;
	along: number;
} {
	const longest = (size: number) => STEP * Math.floor((size - INSIDE) / STEP + 1e-9);
	return { across: longest(maxX - minX), along: longest(maxY - minY) };
}

function longRules(area: Extents, letters: Lettering): { across: DrawnRule; along: DrawnRule } {
	const lengths = longestRules(area);
	const left = (area.minX + area.maxX - lengths.across) / 2;
	const low = (area.minY + area.maxY - lengths.along) / 2;
	const top = { x: left, y: area.maxY - FROM_TOP };
	const right = { x: area.maxX - FROM_RIGHT, y: low };
	return {
		across: metricRule(letters, top, 0, lengths.across),
		along: metricRule(letters, right, Math.PI / 2, lengths.along),
	};
}

/** What to do with the page: what must be read first. */
function steps(paper: Paper, area: Extents): string[] {
	const { across, along } = longestRules(area);
	return [
		`${paper.name} as it is fed: across is its width, along is its height.`,
		"1. Print this page at actual size (100 %), on the paper of your templates and with the settings you use for them.",
		`2. Read the rule across the top and the one up the right side with a steel rule, from the middle of the first stroke to the middle of the last, to the finest step it has. Drawn: ${across} mm across, ${along} mm along.`,
		"across: ____________ mm    along: ____________ mm",
		"3. Let camber work out the correction:",
		`npx camber printer --nominal ${across}mm --nominal-along ${along}mm --across ...mm --along ...mm`,
		"4. Put the lines it prints into the job file. Every page but this one is then divided by them, and its own rules of 100 mm and 4 in come out true: read them before you use a page.",
		"Read anew after a change of paper, printer or driver settings. A reading more than 1.2 % off is a page fitted or scaled by the driver, or a slip: look at the print settings first.",
	];
}

/** The steps under the rule across the page, in the largest letters in which they fit. */
function instructions(paper: Paper, body: Extents, area: Extents, letters: Lettering): Ink {
	const left = body.minX + INDENT;
	const room = area.maxX - FROM_RIGHT - BESIDE_RULE - left;
	const top = area.maxY - FROM_TOP - UNDER_RULE;
	const texts = steps(paper, area);
	const laid = LETTERS.map((size) => {
		let y = top - HEADING;
		return texts.map((text) => {
			y -= size;
			const lines = wrapped(letters, text, (room * USUAL_TEXT) / size);
			return lines.map((line) => {
				y -= 1.7 * size;
				return { line, size, y };
			});
		});
	});
	const fitting = laid.find((all) => all.at(-1)!.at(-1)!.y > body.minY) ?? laid.at(-1)!;
	const shown = fitting.filter((lines) => lines.at(-1)!.y > body.minY).flat();
	return inkOf(
		writing(letters, TITLE, { x: left, y: top - HEADING }, { height: HEADING }),
		...shown.map(({ line, size, y }) => writing(letters, line, { x: left, y }, { height: size })),
	);
}

function build({ paper, letters }: Bench, _: unknown, name: string): Built {
	const uncorrected = { ...paper, made: { x: 1, y: 1 } };
	const height = paper.height ?? pageHeight(uncorrected, ON_ROLL);
	const area = printable(uncorrected, height);
	const { across, along } = longRules(area, letters);
	const text = instructions(paper, bodyOf(uncorrected, height), area, letters);
	const document: PaperDocument = {
		name,
		tool: "print-check",
		title: TITLE,
		height,
		pages: [{ ink: inkOf(across.ink, along.ink, text), rules: [across.rule, along.rule] }],
		corrected: false,
	};
	return { parts: [], documents: [document], problems: [] };
}

export const printCheck = tool({
	id: "print-check",
	title: TITLE,
	purpose:
		"Shows what your printer makes of a millimetre. Print it at actual size, read its long rules with a steel rule and give the readings to camber printer, which says what to put into the job.",
	neckless: true,
	onPaper: true,
	settings: () => z.strictObject({}),
	defaults: () => ({}),
	build,
});
