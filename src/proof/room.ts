import {
	around,
	type Extents,
	extents,
	type Path,
	type Segment,
	segmentDistance,
	segmentExtents,
	segments,
} from "../geometry/index.js";
import type { Problem } from "../problem/index.js";
import { found } from "./found.js";
import { type LaidStroke, partName } from "./laid-strokes.js";
import type { PromisedFile, ReadDrawing } from "./types.js";

/** What coordinates of a file may be off by, mm: the budget of a written file. */
const ROUNDING = 0.001;
/** What distances on a bed may be off by, mm: arcs are drawn for a machine's stretch piece by piece. */
const ON_BED = 0.01;

/** What lies outside the page, and outside the bed or in its margin. */
export function roomFaults(
	{ page, strokes }: ReadDrawing,
	laid: readonly LaidStroke[],
	promised: PromisedFile,
): Problem[] {
	const { bed, stretch } = promised;
	const drawn = page
		? strokes.map(({ path, layer }) => ({ box: extents(path), layer, part: -1 }))
		: [];
	const outside = page ? beyond(drawn, page, ROUNDING) : null;
	const usable = bed && {
		minX: bed.margin / stretch.x,
		minY: bed.margin / stretch.y,
		maxX: (bed.size.x - bed.margin) / stretch.x,
		maxY: (bed.size.y - bed.margin) / stretch.y,
	};
	const inMargin = usable ? beyond(laid, usable, ON_BED) : null;
	return [
		...(outside ? [found("outside-page", "error", outside.facts)] : []),
		...(inMargin
			? [
					found("outside-bed", "error", {
						...inMargin.facts,
						part: partName(promised, inMargin),
						margin: bed!.margin,
					}),
				]
			: []),
	];
}

/** Who reaches farthest out of a box, where and how far; null if nobody does. */
function beyond(
	all: readonly { readonly box: Extents; readonly layer: string; readonly part: number }[],
	room: Extents,
	slack: number,
) {
	let count = 0;
	let worst: { by: number; x: number; y: number; layer: string; part: number } | null = null;
	for (const { box, layer, part } of all) {
		const left = room.minX - box.minX;
		const right = box.maxX - room.maxX;
		const under = room.minY - box.minY;
		const over = box.maxY - room.maxY;
		const by = Math.max(left, right, under, over);
		if (by <= slack) continue;
		count++;
		if (worst && by <= worst.by) continue;
		const x = left > right ? box.minX : box.maxX;
		const y = under > over ? box.minY : box.maxY;
		worst = { by, x, y, layer, part };
	}
	if (!worst) return null;
	const { by, x, y, layer, part } = worst;
	return { part, facts: { count, layer, by, x, y } };
}

/** Parts whose cuts come nearer to each other than the bed's spacing. */
export function spacingFaults(laid: readonly LaidStroke[], promised: PromisedFile): Problem[] {
	const { placed, bed, stretch } = promised;
	if (!bed) return [];
	const onBed = (path: Path): Path => ({
		closed: path.closed,
		points: path.points.map((v) => ({ ...v, x: v.x * stretch.x, y: v.y * stretch.y })),
	});
	const bodies = placed.flatMap(({ part: { name } }, i) => {
		const cuts = laid.filter(({ part, operation }) => part === i && operation === "cut");
		if (cuts.length === 0) return [];
		const pieces = cuts
			.flatMap(({ path }) => segments(onBed(path)))
			.map((segment) => ({ segment, box: segmentExtents(segment) }));
		return [{ name, pieces, box: around(pieces.map(({ box }) => box)) }];
	});
	return bodies.flatMap((a, i) =>
		bodies.slice(i + 1).flatMap((b) => {
			const near = nearest(a, b, bed.spacing - ON_BED);
			if (!near) return [];
			const { x, y } = near.at;
			const facts = { part: a.name, other: b.name, apart: near.apart, spacing: bed.spacing };
			return [found("parts-too-near", "error", { ...facts, x: x / stretch.x, y: y / stretch.y })];
		}),
	);
}

interface Piece {
	readonly segment: Segment;
	readonly box: Extents;
}

interface Body {
	readonly pieces: readonly Piece[];
	readonly box: Extents;
}

/** Where two parts come nearest, if nearer than `least`. */
function nearest(a: Body, b: Body, least: number) {
	let apart = least;
	let at = null;
	const mine = a.pieces.filter(({ box }) => gapBetween(box, b.box) < least);
	const others = b.pieces.filter(({ box }) => gapBetween(box, a.box) < least);
	for (const one of mine) {
		for (const other of others) {
			if (gapBetween(one.box, other.box) >= apart) continue;
			const between = segmentDistance(one.segment, other.segment);
			if (between < apart) [apart, at] = [between, one.segment.start];
		}
	}
	return at && { apart, at };
}

/** Distance of two boxes, mm; 0 where they overlap. */
function gapBetween(a: Extents, b: Extents): number {
	const x = Math.max(0, b.minX - a.maxX, a.minX - b.maxX);
	const y = Math.max(0, b.minY - a.maxY, a.minY - b.maxY);
	return Math.hypot(x, y);
}
