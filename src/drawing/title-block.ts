import type { Lettering } from "../lettering/index.js";
import { fixed, inches, trimmed } from "../units/index.js";
import type { SizeClaim } from "./claim.js";
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
const COLUMN = 118;
const COLUMN_GAP = 8;
/** Baseline to baseline (ISO 3098: at least 1.4 of the height). */
const LEADING = 1.7 * TEXT;
const HEADING = 3.5;
/** Notes stand in by this much, mm. */
const INDENT = 3;

interface Line {
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
	const wrap = (text: string) => wrapped(letters, text, COLUMN).map((t) => line(t));
	const item = (text: string) =>
		wrapped(letters, text, COLUMN - INDENT).map((t, i) => ({ ...line(t), item: i === 0 }));
	const blocks: Line[][] = [
		[
			...(letters.width(facts.job, HEADING) <= COLUMN ? [heading(facts.job)] : wrap(facts.job)),
			...wrap(part.title),
			line(`${part.stock.material}, ${trimmed(part.stock.thickness, 3)} mm`),
			line("SCALE 1:1", facts.date ?? undefined),
			...(facts.kerf > 0 && !part.nominal ? wrap(kerfText(facts.kerf)) : []),
			...wrap(`Working edge: ${part.workingEdge}`),
			line("Lengths in mm (inch); measure before you cut."),
		],
		[heading("Sizes"), ...sizeRows(part, letters)],
		[heading("Notes"), ...part.notes.flatMap(item)],
		[heading("Cautions"), ...facts.cautions.flatMap(item)],
	];
	const columns = Math.max(
		1,
		Math.min(4, Math.floor((width + COLUMN_GAP) / (COLUMN + COLUMN_GAP))),
	);
	const heights = Array<number>(columns).fill(0);
	return inkOf(
		...blocks.map((lines, i) => {
			const column = columns === 4 ? i : heights.indexOf(Math.min(...heights));
			const x = top.x + column * (COLUMN + COLUMN_GAP);
			const y = top.y - heights[column]!;
			heights[column]! += lines.length * LEADING + HEADING + 2;
			return column >= 0 ? block(lines, x, y, letters) : NOTHING;
		}),
	);
}

function kerfText(kerf: number): string {
	return `Paths lie ${fixed(kerf / 2, 3)} in the waste, for a cut ${fixed(kerf, 3)} wide; sizes are those of the finished part.`;
}

function line(text: string, right?: string): Line {
	return right === undefined ? { text, height: TEXT } : { text, height: TEXT, right };
}

function heading(text: string): Line {
	return { text, height: HEADING };
}

function block(lines: readonly Line[], x: number, y: number, letters: Lettering): Ink {
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
function sizeRows(part: Part, letters: Lettering): Line[] {
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
		return lines.map((text, i) => line(text, i === lines.length - 1 ? value : undefined));
	});
}

function isRunning(claim: SizeClaim): boolean {
	return claim.kind === "position" && claim.axis === "x";
}

function rowName(claim: SizeClaim): string {
	if (claim.series) return claim.series;
	if (isRunning(claim)) return `position from ${claim.datum}`;
	const across = claim.axis === "y" && claim.kind === "length" ? "height" : claim.kind;
	return `${claim.feature}: ${across}`;
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
function wrapped(letters: Lettering, text: string, room: number): string[] {
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
	const pieces = [""];
	for (const sign of word) {
		const last = pieces.at(-1)!;
		if (last === "" || fits(last + sign)) pieces[pieces.length - 1] = last + sign;
		else pieces.push(sign);
	}
	return pieces;
}
