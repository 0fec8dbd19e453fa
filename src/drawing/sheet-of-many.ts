import {
	around,
	circle,
	contains,
	type Extents,
	extents,
	grown,
	moved,
	type Path,
	type Point,
	rectangle,
	SegmentGrid,
	segments,
	signedArea,
} from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { trimmed } from "../units/index.js";
import { type Ink, inkBoxes, inkOf, NOTHING, strokes, TEXT, writing } from "./ink.js";
import type { Part, Stock } from "./part.js";
import type { Placed, Sheet } from "./sheet.js";
import {
	headingLine,
	inColumns,
	itemLines,
	jobLines,
	kerfText,
	paragraphLines,
	type TextLine,
	type TitleFacts,
	textLine,
} from "./title-block.js";

/** Parts at their places on a machine's bed. */
export interface LaidOut {
	/** Size of the bed, mm: its lower left corner is the origin. */
	readonly bed: Point;
	readonly stock: Stock;
	readonly placed: readonly Placed[];
	/** Share of the bed within the parts' outlines, 0 to 1. */
	readonly used: number;
}

/** What the block under a bed says besides. */
export interface BedFacts extends TitleFacts {
	/** Which sheet this is, from 1, and of how many. */
	readonly sheet: number;
	readonly of: number;
	/** Sentences about the work: lengths, time, what the paths make up for. */
	readonly lines: readonly string[];
}

/** White around a drawing, mm. */
const MARGIN = 5;
/** Between the bed and the block under it, mm. */
const UNDER = 6;

/**
 * The drawing of a bed with its parts. Without dimensions it is exactly the bed. With them the
 * bed's edges are drawn, every part has a number in a ring, and a block below lists the parts,
 * what they are cut from, the work and the cautions.
 *
 * @param dimensioned - false leaves the reference layer out
 */
export function sheetOfMany(
	laid: LaidOut,
	facts: BedFacts,
	letters: Lettering,
	name: string,
	dimensioned: boolean,
): Sheet {
	const bed: Extents = { minX: 0, minY: 0, maxX: laid.bed.x, maxY: laid.bed.y };
	const ink = dimensioned ? referenceInk(laid, facts, letters) : NOTHING;
	return {
		name,
		title: `${facts.job}: ${sheetText(facts)}`,
		size: dimensioned ? grown(around([bed, ...inkBoxes(ink)]), MARGIN) : bed,
		placed: laid.placed,
		marks: ink.marks,
		notes: ink.notes,
	};
}

function sheetText({ sheet, of }: BedFacts): string {
	return `sheet ${sheet} of ${of}`;
}

function referenceInk(laid: LaidOut, facts: BedFacts, letters: Lettering): Ink {
	const { bed } = laid;
	const top = { x: 0, y: -UNDER };
	return inkOf(
		strokes("bed", rectangle(0, 0, bed.x, bed.y)),
		numbers(laid, letters),
		inColumns(blocks(laid, facts, letters), letters, top, bed.x),
	);
}

function blocks(laid: LaidOut, facts: BedFacts, letters: Lettering): TextLine[][] {
	const { stock, bed, used, placed } = laid;
	const compensated = facts.kerf > 0 && placed.some(({ part }) => !part.nominal);
	const grain = stock.grain ? `, grain along ${stock.grain}` : "";
	return [
		[
			...jobLines(facts.job, letters),
			textLine(`Sheet ${facts.sheet} of ${facts.of}`),
			textLine(`${stock.material}, ${trimmed(stock.thickness, 3)} mm${grain}`),
			textLine("SCALE 1:1", facts.date ?? undefined),
			textLine(
				`Bed ${trimmed(bed.x, 3)} x ${trimmed(bed.y, 3)} mm, ${trimmed(100 * used, 1)} % used`,
			),
			...(compensated ? paragraphLines(kerfText(facts.kerf), letters) : []),
			...facts.lines.flatMap((text) => paragraphLines(text, letters)),
		],
		[
			headingLine("Parts"),
			...placed.flatMap((p, i) => paragraphLines(`${i + 1} ${placedText(p)}`, letters)),
		],
		[headingLine("Cautions"), ...itemLines(facts.cautions, letters)],
	];
}

/** A part as the list names it: "notched-straightedge, turned 90°". */
function placedText({ part, move }: Placed): string {
	const degrees = trimmed((move.turn * 180) / Math.PI, 1);
	return degrees === "0" ? part.name : `${part.name}, turned ${degrees}°`;
}

/** Least radius of the ring around a number, mm. */
const RING = 2.4;
/** Least distance between a ring and what is drawn beside it, or its number, mm. */
const CLEAR = 0.6;
/** Places looked at for a number, at most, and how near to each other at least, mm. */
const MOST_PLACES = 10_000;
const LEAST_STEP = 0.5;

/** A ring around a number. */
interface Ring {
	readonly at: Point;
	readonly radius: number;
}

/** Every part's number in a ring, clear of all that the machine does. */
function numbers({ placed, bed }: LaidOut, letters: Lettering): Ink {
	const paths = placed.flatMap(({ part, move }) => part.marks.map((m) => moved(m.path, move)));
	const edges = rectangle(0, 0, bed.x, bed.y);
	const grid = new SegmentGrid([...paths, edges].flatMap(segments));
	const outlines = placed.map(({ part, move }) => moved(outlineOf(part), move));
	const rings: Ring[] = [];
	return inkOf(
		...outlines.map((outline, i) => {
			const text = String(i + 1);
			const radius = Math.max(RING, Math.hypot(letters.width(text, TEXT), TEXT) / 2 + CLEAR);
			const isFree = (p: Point) =>
				rings.every((r) => distance(r.at, p) > r.radius + radius + CLEAR) &&
				grid.clearance(p, radius + CLEAR) !== null;
			const isOthers = (p: Point) =>
				!contains(edges, p) || outlines.some((o) => o !== outline && contains(o, p));
			const at = numberPlace(outline, radius, isFree, isOthers);
			rings.push({ at, radius });
			return inkOf(
				strokes(`number ${text}`, circle(at, radius)),
				writing(letters, text, { x: at.x, y: at.y - TEXT / 2 }, { align: "centre" }),
			);
		}),
	);
}

/**
 * Where a part's number goes: the free place within its outline that is nearest to the lower left
 * corner of its box, or else the nearest one beside it, or else that corner.
 */
function numberPlace(
	outline: Path,
	radius: number,
	isFree: (p: Point) => boolean,
	isOthers: (p: Point) => boolean,
): Point {
	const box = extents(outline);
	const corner = { x: box.minX + radius, y: box.minY + radius };
	return (
		placesIn(box, corner).find((p) => isFree(p) && contains(outline, p)) ??
		placesIn(grown(box, 3 * radius), corner).find((p) => isFree(p) && !isOthers(p)) ??
		corner
	);
}

/** Places spread over a box, the nearest to a point first. */
function placesIn({ minX, minY, maxX, maxY }: Extents, near: Point): Point[] {
	const [width, height] = [maxX - minX, maxY - minY];
	const step = Math.max(LEAST_STEP, Math.sqrt((width * height) / MOST_PLACES));
	const places: Point[] = [];
	for (let x = minX + step / 2; x < maxX; x += step) {
		for (let y = minY + step / 2; y < maxY; y += step) places.push({ x, y });
	}
	return places.sort((a, b) => distance(a, near) - distance(b, near));
}

function distance(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
}

/**
 * The cut path around all others of a part. Where tabs leave gaps in an outline its pieces are
 * joined, straight across the gaps.
 *
 * @throws RangeError for a part of which nothing is cut
 */
export function outlineOf({ marks, name }: Part): Path {
	const pieces = new Map<string, Path[]>();
	for (const { operation, path, feature } of marks) {
		if (operation !== "cut" || path.closed) continue;
		pieces.set(feature, [...(pieces.get(feature) ?? []), path]);
	}
	const whole = marks.filter((m) => m.operation === "cut" && m.path.closed).map((m) => m.path);
	const joined = [...pieces.values()].map(
		(paths): Path => ({ points: paths.flatMap((p) => p.points), closed: true }),
	);
	const all = [...whole, ...joined];
	if (all.length === 0) throw new RangeError(`${name} has no outline`);
	return all.reduce((a, b) => (signedArea(b) > signedArea(a) ? b : a));
}
