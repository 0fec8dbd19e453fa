import type { Lettering } from "../lettering/index.js";
import { fixed, inches, trimmed } from "../units/index.js";
import { kindText, type SizeClaim } from "./claim.js";
import { type Ink, inkOf, NOTHING, stroke, TEXT, writing } from "./ink.js";
import type { Part } from "./part.js";

/** What a title block says besides the part. */
export interface TitleFacts {
	readonly job: string;
	readonly date: string | null;
	/** Width of the cut that the contours are compensated for, mm. */
	readonly kerf: number;
	/** Printed last. */
	readonly cautions: readonly string[];
}

/** Width of a column of text, mm. */
export const COLUMN = 118;
const COLUMN_GAP = 8;
/** Baseline to baseline (ISO 3098: at least 1.4 of the height). */
const LEADING = 1.7 * TEXT;
const HEADING = 3.5;
/** Notes stand in by this much, mm. */
const INDENT = 3;

/** A line of a block of text. */
export interface TextLine {
	readonly text: string;
	readonly height: number;
	/** Second text, right-aligned in the column. */
	readonly right?: string;
	/** Set in, with a dash before it if it begins an item. */
	readonly item?: boolean;
}

/**
 * Title block, table of sizes, notes and cautions, in as many columns as the drawing is wide.
 *
 * @param top - upper left corner of the block
 * @param width - of the drawing above it, mm
 */
export function titleBlock(
	part: Part,
	facts: TitleFacts,
	letters: Lettering,
	top: { readonly x: number; readonly y: number },
	width: number,
): Ink {
	return inColumns(titleBlocks(part, facts, letters), letters, top, width);
}

/** What is said of a part: its name, purpose and stock, its sizes, its notes, the cautions. */
export function titleBlocks(part: Part, facts: TitleFacts, letters: Lettering): TextLine[][] {
	return [
		[
			...jobLines(facts.job, letters),
			...paragraphLines(part.title, letters),
			...(part.purpose ? paragraphLines(part.purpose, letters) : []),
			textLine(`${part.stock.material}, ${trimmed(part.stock.thickness, 3)} mm`),
			textLine("SCALE 1:1", facts.date ?? undefined),
			...(facts.kerf > 0 && !part.nominal ? paragraphLines(kerfText(facts.kerf), letters) : []),
			...paragraphLines(`Working edge: ${part.workingEdge}`, letters),
			textLine("Lengths in mm (inch); measure before you cut."),
		],
		[headingLine("Sizes"), ...sizeRows(part, letters)],
		[headingLine("Notes"), ...itemLines(part.notes, letters)],
		[headingLine("Cautions"), ...itemLines(facts.cautions, letters)],
	];
}

/**
 * Blocks of text in as many columns as a drawing is wide, four at most: each in the column that
 * has least in it so far.
 *
 * @param top - upper left corner of the first
 * @param width - of the drawing above, mm
 */
export function inColumns(
	blocks: readonly (readonly TextLine[])[],
	letters: Lettering,
	top: { readonly x: number; readonly y: number },
	width: number,
): Ink {
	const columns = Math.max(
		1,
		Math.min(4, Math.floor((width + COLUMN_GAP) / (COLUMN + COLUMN_GAP))),
	);
	const heights = Array<number>(columns).fill(0);
	return inkOf(
		...blocks.map((lines) => {
			const column = heights.indexOf(Math.min(...heights));
			const x = top.x + column * (COLUMN + COLUMN_GAP);
			const y = top.y - heights[column]!;
			heights[column]! += blockHeight(lines);
			return block(lines, x, y, letters);
		}),
	);
}

/** A job's name as the heading of a block, or wrapped where it is too long for one. */
export function jobLines(job: string, letters: Lettering): TextLine[] {
	return letters.width(job, HEADING) <= COLUMN ? [headingLine(job)] : paragraphLines(job, letters);
}

/** A text in as many lines as it needs. */
export function paragraphLines(text: string, letters: Lettering): TextLine[] {
	return wrapped(letters, text, COLUMN).map((t) => textLine(t));
}

/** Texts with a dash before each. */
export function itemLines(texts: readonly string[], letters: Lettering): TextLine[] {
	return texts.flatMap((text) =>
		wrapped(letters, text, COLUMN - INDENT).map((t, i) => ({ ...textLine(t), item: i === 0 })),
	);
}

/**
 * What a drawing says of the cut that its paths are compensated for.
 *
 * @param asDrawn - parts on it that are not
 */
export function kerfText(kerf: number, asDrawn: readonly string[] = []): string {
	const but = asDrawn.length > 0 ? `; ${asDrawn.join(", ")} as drawn` : "";
	return `Paths lie ${fixed(kerf / 2, 3)} in the waste, for a cut ${fixed(kerf, 3)} wide; sizes are those of the finished part${but}.`;
}

/** One line, with a second text at the column's right end. */
export function textLine(text: string, right?: string): TextLine {
	return right === undefined ? { text, height: TEXT } : { text, height: TEXT, right };
}

/** The heading of a block. */
export function headingLine(text: string): TextLine {
	return { text, height: HEADING };
}

/** What a block takes of a column's height, mm. */
export function blockHeight(lines: readonly TextLine[]): number {
	return lines.length * LEADING + HEADING + 2;
}

/** A block of text under a line, from its upper left corner. */
export function block(lines: readonly TextLine[], x: number, y: number, letters: Lettering): Ink {
	const rule = stroke("title block", { x, y }, { x: x + COLUMN, y });
	let baseline = y - 1;
	return inkOf(
		rule,
		...lines.map(({ text, height, right, item }) => {
			baseline -= height === HEADING ? HEADING + 1.5 : LEADING;
			return inkOf(
				item ? writing(letters, "-", { x, y: baseline }) : NOTHING,
				writing(letters, text, { x: item === undefined ? x : x + INDENT, y: baseline }, { height }),
				right === undefined
					? NOTHING
					: writing(letters, right, { x: x + COLUMN, y: baseline }, { align: "right" }),
			);
		}),
	);
}

/** A table of what is promised: one row a series, "22x" and a range where sizes differ. */
function sizeRows(part: Part, letters: Lettering): TextLine[] {
	const sizes = part.claims.filter((c): c is SizeClaim => c.kind !== "label");
	const groups = new Map<string, SizeClaim[]>();
	for (const claim of sizes) {
		const key = claim.series ?? (isRunning(claim) ? `from ${claim.datum}` : claim.id);
		groups.set(key, [...(groups.get(key) ?? []), claim]);
	}
	return [...groups.values()].flatMap((claims) => {
		const first = claims[0]!;
		const count = claims.length > 1 ? `${claims.length}x ` : "";
		const [name, value] = [`${count}${rowName(first)}`, rowValue(claims)];
		const room = COLUMN - letters.width(value, TEXT) - 2;
		const lines = wrapped(letters, name, room);
		return lines.map((text, i) => textLine(text, i === lines.length - 1 ? value : undefined));
	});
}

function isRunning(claim: SizeClaim): boolean {
	return claim.kind === "position" && claim.axis === "x";
}

function rowName(claim: SizeClaim): string {
	if (claim.series) return claim.series;
	if (isRunning(claim)) return `position from ${claim.datum}`;
	return `${claim.feature}: ${kindText(claim)}`;
}

function rowValue(claims: readonly SizeClaim[]): string {
	const sizes = claims.map((c) => c.nominal);
	const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
	const first = claims[0]!;
	const tolerance = `±${trimmed(first.bench, 3)}`;
	if (first.kind === "straightness") return `straight to ${trimmed(first.bench, 3)}`;
	if (first.kind === "angle") {
		const degrees = (x: number) => fixed((x * 180) / Math.PI, 3);
		return `${degrees(least)} to ${degrees(most)}°`;
	}
	if (most - least < 1e-9) return `${fixed(least, 3)} (${inches(least)} in) ${tolerance}`;
	return `${fixed(least, 3)} to ${fixed(most, 3)} ${tolerance}`;
}

/** A text broken between words, and within a word that is itself too long for `room`. */
export function wrapped(letters: Lettering, text: string, room: number): string[] {
	const fits = (t: string) => letters.width(t, TEXT) <= room;
	const lines: string[] = [];
	for (const word of text.split(" ").flatMap((w) => brokenWord(w, fits))) {
		const last = lines.at(-1);
		const longer = last === undefined ? word : `${last} ${word}`;
		if (last !== undefined && fits(longer)) lines[lines.length - 1] = longer;
		else lines.push(word);
	}
	return lines;
}

function brokenWord(word: string, fits: (t: string) => boolean): string[] {
	if (fits(word)) return [word];
	const pieces = [""];
	for (const sign of word) {
		const last = pieces.at(-1)!;
		if (last === "" || fits(last + sign)) pieces[pieces.length - 1] = last + sign;
		else pieces.push(sign);
	}
	return pieces;
}
