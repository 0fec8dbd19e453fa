import * as z from "zod";
import { type Problem, problem } from "../problem/index.js";
import { MM_PER_INCH, trimmed, type Unit } from "../units/index.js";
import { givenLength } from "./given-length.js";
import { describe, fault, type LengthRange, lengthField } from "./length.js";

/** A paper as it is fed, mm. */
export interface PaperSize {
	/** As people call it: "A4", "210 x 330 mm", "roll 610 mm". */
	readonly name: string;
	/** Across the feed. */
	readonly width: number;
	/** Along the feed; null for a roll. */
	readonly height: number | null;
}

/** Papers that have a name: ISO 216's, and the inch sizes 8.5 x 11, 8.5 x 14 and 11 x 17. */
const PAPERS: readonly PaperSize[] = [
	{ name: "A4", width: 210, height: 297 },
	{ name: "A3", width: 297, height: 420 },
	{ name: "Letter", width: 8.5 * MM_PER_INCH, height: 11 * MM_PER_INCH },
	{ name: "Legal", width: 8.5 * MM_PER_INCH, height: 14 * MM_PER_INCH },
	{ name: "Tabloid", width: 11 * MM_PER_INCH, height: 17 * MM_PER_INCH },
];

export const PAPER_NAMES: readonly string[] = PAPERS.map(({ name }) => name);

/** Sides that a sheet may have; what a page needs at least follows from margins and rules. */
const SHEET: LengthRange = { from: 50, to: 5000 };

/** Widths that a roll may have. */
const ROLL: LengthRange = { from: 100, to: 2000 };

const FORMS = `${PAPER_NAMES.join(", ")}, 210 x 330 mm, roll 610 mm`;

/** The known name that a mistyped one most likely meant; "" if there is none. */
export type Guess = (given: string, known: readonly string[]) => string;

/** The paper that a job takes where it names none. */
export function usualPaper(unit: Unit): PaperSize {
	return paperNamed(unit === "in" ? "Letter" : "A4")!;
}

function paperNamed(given: string): PaperSize | undefined {
	return PAPERS.find(({ name }) => name.toLowerCase() === given.toLowerCase());
}

function sheet(width: number, height: number): PaperSize {
	return { name: `${trimmed(width, 3)} x ${trimmed(height, 3)} mm`, width, height };
}

/**
 * A paper from its text, or why it is none: a name in any case, two sides, or a roll by its width.
 * The width lies across the feed, whichever side is the longer.
 *
 * @param unit - what a number without unit means
 * @param path - where the text stands
 * @example paperFromText("roll 24 in", "mm", nearest, []) // { name: "roll 609.6 mm", width: 609.6, height: null }
 */
export function paperFromText(
	given: string,
	unit: Unit,
	guess: Guess,
	path: Problem["where"]["path"],
): PaperSize | Problem {
	const text = given.trim();
	const named = paperNamed(text);
	if (named) return named;
	const roll = /^roll\s+(.+)$/iu.exec(text);
	if (roll) {
		const width = givenLength(roll[1]!, unit, ROLL, path);
		if (typeof width !== "number") return width;
		return { name: `roll ${trimmed(width, 3)} mm`, width, height: null };
	}
	const sides = /^([-+.\d½¼¾⅛⅜⅝⅞].*?)\s*[x×]\s*(.+)$/iu.exec(text);
	if (sides) return sheetFromText(sides[1]!, sides[2]!, unit, path);
	const [first = ""] = text.split(/\s/u);
	const begun = paperNamed(first);
	if (begun) {
		const { name, width, height } = begun;
		const turned = `${trimmed(height!, 3)} x ${trimmed(width, 3)} mm`;
		return problem("paper-words", path, { given: text, name, turned });
	}
	return problem("paper-unknown", path, {
		given: text,
		guess: guess(text, PAPER_NAMES),
		allowed: FORMS,
	});
}

/** Two sides; a unit behind the second is the first one's too: 8.5 x 13 in. */
function sheetFromText(
	across: string,
	along: string,
	unit: Unit,
	path: Problem["where"]["path"],
): PaperSize | Problem {
	const tail = /[a-z"″”]+\s*$/iu.exec(along)?.[0] ?? "";
	const first = /[a-z"″”]\s*$/iu.test(across) ? across : `${across} ${tail}`.trim();
	const width = givenLength(first, unit, SHEET, path);
	if (typeof width !== "number") return width;
	const height = givenLength(along, unit, SHEET, path);
	return typeof height === "number" ? sheet(width, height) : height;
}

/** `A4`, `210 x 330 mm`, `roll 24 in` or `{width: 210 mm, height: 330 mm}`. */
export function paperField(unit: Unit, guess: Guess) {
	const text = z.string().transform((given, ctx): PaperSize => {
		const size = paperFromText(given, unit, guess, []);
		if (!("code" in size)) return size;
		fault(ctx, size.code, size.facts as Record<string, string | number>);
		return z.NEVER;
	});
	const sides = z
		.strictObject({
			width: lengthField(unit, SHEET, { text: "Across the feed" }),
			height: lengthField(unit, SHEET, { text: "Along the feed" }),
		})
		.transform(({ width, height }) => sheet(width, height));
	return z.union([text, sides]).meta({
		...describe({
			text: "The paper in the printer, as it is fed: width across the feed, height along it",
			derived: "A4, or Letter where units: in",
		}),
		kind: "text or map",
		range: `${FORMS}, or {width: 210 mm, height: 330 mm}`,
	});
}
