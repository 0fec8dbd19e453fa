import { around, type Extents, moved, type Point } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import type { Problem } from "../problem/index.js";
import { MM_PER_INCH } from "../units/index.js";
import { expected, fitShare } from "./fit-share.js";
import { found } from "./found.js";
import { longestLabel } from "./label-paths.js";
import { type LaidStroke, promisedBox } from "./laid-strokes.js";
import type { PromisedFile } from "./types.js";

/** What a drawing is too large by when a unit was taken for another: inches, dots of 96 and 72 to the inch, centimetres. */
const SLIPS = [MM_PER_INCH, 1 / MM_PER_INCH, 96 / 72, 72 / 96, 10, 0.1];
/** Share by which a size may differ from such a factor. */
const NEAR_SLIP = 0.005;

/** From this share of matching points on a drawing is the one promised. */
const FITS = 0.95;
/** What points of a matching drawing may be beside their paths, mm. */
const BESIDE = 0.05;
/** Points looked at of cuts and of labels. */
const LOOKS = 200;

/** That a whole drawing has the wrong size, or else that it is mirrored; null if it is neither. */
export function wholeFault(
	laid: readonly LaidStroke[],
	promised: PromisedFile,
	letters: Lettering | null,
): Problem | null {
	const cuts = laid.filter(({ operation }) => operation === "cut");
	if (cuts.length === 0 || promised.placed.length === 0) return null;
	const is = around(cuts.map(({ box }) => box));
	const should = around(promised.placed.map((_, i) => promisedBox(promised, i)));
	return unitSlip(is, should) ?? mirrored(laid, promised, letters, is, should);
}

function unitSlip(is: Extents, should: Extents): Problem | null {
	const [width, height] = sizeOf(is);
	const [promisedWidth, promisedHeight] = sizeOf(should);
	const isNear = (ratio: number, factor: number) => Math.abs(ratio / factor - 1) < NEAR_SLIP;
	const factor = SLIPS.find(
		(slip) => isNear(width / promisedWidth, slip) && isNear(height / promisedHeight, slip),
	);
	if (factor === undefined) return null;
	return found("unit-slip", "error", { factor, width, height, promisedWidth, promisedHeight });
}

function sizeOf({ minX, minY, maxX, maxY }: Extents): readonly [number, number] {
	return [maxX - minX, maxY - minY];
}

function mirrored(
	laid: readonly LaidStroke[],
	promised: PromisedFile,
	letters: Lettering | null,
	is: Extents,
	should: Extents,
): Problem | null {
	const share = shareOf(laid, promised, letters);
	if (share((p) => p) >= FITS) return null;
	const [x, y] = [is.minX + should.maxX, is.minY + should.maxY];
	const [dx, dy] = [is.minX - should.minX, is.minY - should.minY];
	if (share((p) => ({ x: x - p.x, y: p.y + dy })) >= FITS)
		return found("mirrored", "error", { axis: "x" });
	if (share((p) => ({ x: p.x + dx, y: y - p.y })) >= FITS)
		return found("mirrored", "error", { axis: "y" });
	return null;
}

/** The share of promised contours, or of promised labels if it is less, that is drawn where a move brings it. */
function shareOf(laid: readonly LaidStroke[], promised: PromisedFile, letters: Lettering | null) {
	const { placed, stretch } = promised;
	const drawn = (operation: string) =>
		laid.filter((s) => s.operation === operation).map(({ path }) => path);
	const widest = Math.max(...placed.map(({ part }) => part.kerf)) / 2 + BESIDE;
	const outlines = placed.flatMap(({ part, move }) => part.outline.map((p) => moved(p, move)));
	const labels = placed.flatMap(({ part, move }) =>
		longestLabel(part, letters).map((p) => moved(p, move)),
	);
	const views = [
		expected(outlines, drawn("cut"), widest, LOOKS),
		...(labels.length > 0 ? [expected(labels, drawn("engrave"), BESIDE, LOOKS)] : []),
	];
	return (onto: (p: Point) => Point) => {
		const place = ({ x, y }: Point) => onto({ x: x / stretch.x, y: y / stretch.y });
		return Math.min(...views.map((view) => fitShare(view, place)));
	};
}
