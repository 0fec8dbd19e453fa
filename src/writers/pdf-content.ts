import { OPERATIONS, type Pen, type Pens } from "../drawing/index.js";
import type { Path, Point } from "../geometry/index.js";
import { MM_PER_INCH, trimmed } from "../units/index.js";
import { piecesOf } from "./bezier.js";
import { channels, type Stroke } from "./drawn.js";

/** Units of a page to the inch (ISO 32000-1, 8.3.2.3). */
const POINTS_PER_INCH = 72;
/** A hundredth of the micrometre that is promised, for coordinates, sizes, pens and colours. */
const DECIMALS = 6;
/** For the scale alone: over 5 m of paper it is off by less than 1e-8 mm. */
const SCALE_DECIMALS = 12;

/** Millimetres as the points of a page, in writing. */
export function pointsText(mm: number): string {
	return written((mm * POINTS_PER_INCH) / MM_PER_INCH);
}

/**
 * The content stream of a page (ISO 32000-1, 8.2): one scaling, after which every number is in
 * millimetres; then for every operation in the order of work its pen and its paths, as marked
 * content with the operation's name for a tag.
 *
 * Caps are butt, so that a rule or a slot ends where its line does; a round one would reach further
 * by half the pen. Joins are round: a mitre would stand out at sharp corners.
 */
export function pageContent(strokes: readonly Stroke[], pens: Pens): string {
	const scale = trimmed(POINTS_PER_INCH / MM_PER_INCH, SCALE_DECIMALS);
	const lines = ["q", `${scale} 0 0 ${scale} 0 0 cm`, "0 J", "1 j"];
	for (const operation of OPERATIONS) {
		const own = strokes.filter((s) => s.operation === operation);
		if (own.length === 0) continue;
		lines.push(`/${operation} BMC`, ...penLines(pens[operation]));
		for (const { path } of own) lines.push(...pathLines(path));
		lines.push("EMC");
	}
	return `${[...lines, "Q"].join("\n")}\n`;
}

function penLines({ colour, width }: Pen): string[] {
	const shares = channels(colour).map((channel) => written(channel / 255));
	return [`${shares.join(" ")} RG`, `${written(width)} w`];
}

/** A closing line is left to `h`, which joins it to the first. */
function pathLines(path: Path): string[] {
	const pieces = piecesOf(path);
	const last = pieces.length - 1;
	const lines = [`${pair(path.points[0]!)} m`];
	for (const [i, piece] of pieces.entries()) {
		if (piece.kind === "curve") {
			lines.push(`${pair(piece.one)} ${pair(piece.two)} ${pair(piece.end)} c`);
		} else if (!path.closed || i < last) lines.push(`${pair(piece.end)} l`);
	}
	return [...lines, ...(path.closed ? ["h"] : []), "S"];
}

function pair({ x, y }: Point): string {
	return `${written(x)} ${written(y)}`;
}

/** No exponent and no negative zero, of which PDF knows neither (ISO 32000-1, 7.3.3). */
function written(value: number): string {
	return trimmed(value, DECIMALS);
}
