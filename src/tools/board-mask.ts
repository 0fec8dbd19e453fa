import type { Mark, Part } from "../drawing/index.js";
import { radiusAt, widthAt } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import { pieceClaims } from "./board-mask/claims.js";
import { lackOfRail, numberLabels, titleLabel } from "./board-mask/labels.js";
import {
	LEAST_LAND,
	type MaskPiece,
	pieceOutline,
	piecesOf,
	startLine,
} from "./board-mask/pieces.js";
import { type MaskSettings, settings } from "./board-mask/settings.js";
import { landAfter, landBetween, windowsOf, windowWidth } from "./board-mask/sheet.js";
import { offCrown } from "./shop-sheet/wire.js";
import { outOfRange } from "./size.js";
import { fretList } from "./slot-strip/labels.js";
import { type Slot, slotFlanks, slotHole } from "./slot-strip/lay.js";
import { type Bench, type Built, builtOf, tool } from "./tool.js";

/** Thickest sheet that bends over a board that is not flat, mm (common practice, no source). */
const MOST_BENT = 0.5;

/** The mask's thickness is at most this share of the crown's height: a file must reach its shoulders (common practice, no source). */
const UNDER_CROWN = 0.5;

function offBoard(at: string, width: number, radius: number): Problem {
	return problem("radius-below-half-board", [], { at, width, radius });
}

/** Ends of pieces, before the first or beyond the last window, where the board is no more. */
function endProblems({ neck }: Bench, pieces: readonly MaskPiece[]): Problem[] {
	const points = pieces.flatMap(({ lower, upper }) => [...lower, ...upper]);
	const lost = points.find(({ y }) => !Number.isFinite(y));
	if (!lost) return [];
	const at = `the mask's end, ${trimmed(lost.x, 3)} mm from the nut`;
	return [offBoard(at, widthAt(neck, lost.x), radiusAt(neck, lost.x)!)];
}

/** What forbids a mask before it is laid out. */
function refusals({ neck, wire, stock, layers }: Bench): Problem[] {
	const found: Problem[] = [];
	const bends = neck.radius !== "flat";
	const under = wire.crownHeight * UNDER_CROWN;
	const most = bends ? Math.min(MOST_BENT, under) : under;
	const thickness = stock.thickness * layers;
	if (thickness > most) {
		const why = bends && thickness > MOST_BENT ? "bend" : "crown";
		const facts = { thickness, most, why, crown: wire.crownHeight };
		found.push(problem("mask-too-thick", [], facts));
	}
	const off = offCrown(neck);
	if (off) found.push(offBoard(`fret ${off.fret}`, 2 * off.half, off.radius));
	return found;
}

/** Lands between windows that would tear, the narrowest named; and the first one, at the nut. */
function landProblems(bench: Bench, windows: readonly Slot[], width: number): Problem[] {
	const { neck } = bench;
	const first = windows[0]!;
	const atNut = landAfter(startLine(neck, width), first, width);
	const lands = windows.slice(1).map((after, i) => ({
		fret: after.fret.n,
		land: landBetween(windows[i]!, after, width),
	}));
	const all = neck.zeroFret ? lands : [{ fret: first.fret.n, land: atNut }, ...lands];
	const tight = all.filter(({ land }) => land < LEAST_LAND - 1e-9);
	if (tight.length === 0) return [];
	const { fret, land } = tight.reduce((a, b) => (b.land < a.land ? b : a));
	const facts = { fret, before: fret - 1, land, least: LEAST_LAND, more: tight.length - 1 };
	return [problem("mask-land-too-narrow", ["crown-clearance"], facts)];
}

function notes(
	bench: Bench,
	s: MaskSettings,
	width: number,
	{ isFirst, unnumbered }: { readonly isFirst: boolean; readonly unnumbered: readonly number[] },
): string[] {
	const { neck, stock, wire } = bench;
	const end = neck.zeroFret
		? "The mask reaches 4 mm behind the zero fret's window: where the nut stands nearer, cut it off there."
		: "Its nut end lies half a millimetre from the nut's face.";
	return [
		"Lay it over the frets, each crown through its window, and hold the rails down with tape on the sides of the neck while the crowns are filed and polished.",
		`A window is ${trimmed(width, 3)} mm wide, ${trimmed(width - wire.crownWidth, 3)} mm more than the crown, and reaches 1 mm beyond either end of its fret.`,
		...(isFirst ? [end] : []),
		...(neck.radius === "flat"
			? []
			: [
					`The sheet is bent over the board: across it, sizes are those over the board's radius, longer than straight across. ${trimmed(stock.thickness, 3)} mm bend by hand.`,
				]),
		...(s.pieces > 1
			? ["Lay the pieces end to end in the order of their frets, and tape over the joints."]
			: []),
		"Thin sheet has sharp edges: break them before it is handled, and wear gloves.",
		...(unnumbered.length > 0 ? [`No room for the number at ${fretList(neck, unnumbered)}.`] : []),
	];
}

function partOf(
	bench: Bench,
	s: MaskSettings,
	piece: MaskPiece,
	{ name, isFirst }: { readonly name: string; readonly isFirst: boolean },
): Part | Problem {
	const width = windowWidth(bench, s);
	const title = titleLabel(bench, piece, width);
	if ("code" in title) return title;
	const numbers = numberLabels(bench, piece, width);
	const labels = [title, ...numbers.labels];
	const cut = (feature: string, path: Mark["path"]): Mark => ({ operation: "cut", path, feature });
	return {
		name,
		tool: "board-mask",
		title: "Board mask",
		stock: bench.stock,
		marks: [
			...labels.flatMap((l) => l.marks),
			...piece.windows.map((w) => cut(`window ${w.fret.n}`, slotHole(w, width))),
			cut("outline", pieceOutline(piece)),
		],
		workingEdge: "the long sides of the windows",
		working: piece.windows.flatMap((w) => slotFlanks(w, width)),
		claims: [...pieceClaims(bench, piece, width, isFirst), ...labels.map((l) => l.claim)],
		notes: notes(bench, s, width, { isFirst, unnumbered: numbers.unnumbered }),
	};
}

function build(bench: Bench, s: MaskSettings, name: string): Built {
	const refuse = (...problems: Problem[]): Built => ({ parts: [], problems });
	const unsound = refusals(bench);
	if (unsound.length > 0) return refuse(...unsound);
	const width = windowWidth(bench, s);
	const windows = windowsOf(bench.neck);
	const lands = landProblems(bench, windows, width);
	if (lands.length > 0) return refuse(...lands);
	const pieces = piecesOf(bench.neck, windows, s, width);
	if (!Array.isArray(pieces)) return refuse(pieces);
	const lost = endProblems(bench, pieces);
	if (lost.length > 0) return refuse(...lost);
	const lack = Math.max(...pieces.map((piece) => lackOfRail(piece, width)));
	if (lack > 0) {
		const least = Math.ceil((s.rail + lack) * 10) / 10;
		const allowed = `${trimmed(least, 1)} mm or more, for letters beside windows so slanted`;
		const tooNarrow = outOfRange("rail", s.rail, allowed);
		return refuse(tooNarrow);
	}
	const made = pieces.map((piece, i) => {
		const own = pieces.length === 1 ? name : `${name}-${i + 1}`;
		return partOf(bench, s, piece, { name: own, isFirst: i === 0 });
	});
	return builtOf(made);
}

export const boardMask = tool({
	id: "board-mask",
	title: "Board mask",
	purpose:
		"Covers wood and finish while the crowns are dressed: a thin sheet with a window for every fret. Lay it over the frets and tape its rails to the sides of the neck.",
	settings,
	defaults: () => ({}),
	build,
});
