import { MaxRectsPacker, PACKING_LOGIC, Rectangle } from "maxrects-packer";
import { outlineOf, type Part, type Placed, type Stock } from "../drawing/index.js";
import {
	around,
	contains,
	type Extents,
	extents,
	fractionOfAngle,
	distanceTo as fromPoint,
	meetings,
	moved,
	type Path,
	type Point,
	pointAt,
	type Segment,
	STAY,
	segmentExtents,
	segments,
	signedArea,
} from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { type Bed, isSameStock } from "./machine.js";

/** One sheet on the bed, from its lower left corner, with the parts at their places. */
export interface Layout {
	readonly stock: Stock;
	readonly placed: readonly Placed[];
	/** Share of the bed's area within the parts' outlines, 0 to 1. */
	readonly used: number;
}

/** Every sheet, or why some part goes on none. */
export type Layouts =
	| { readonly ok: true; readonly layouts: readonly Layout[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/** A part with its box as it is drawn, in steps of the packer. */
interface Boxed {
	readonly part: Part;
	readonly width: number;
	readonly height: number;
}

/** Where the lower left corner of a part's box comes to, in steps from the margin's corner. */
interface Spot extends Boxed {
	readonly x: number;
	readonly y: number;
	readonly turned: boolean;
}

/** The packer counts in nanometres: sums and differences of whole numbers are exact. */
const STEPS = 1e6;
/** Of a step: what is less than this over a whole number is rounding. */
const ROUNDING = 1e-3;
/** What positions and distances may be off by, mm. */
const EXACT = 1e-8;

/**
 * Parts laid out on as few sheets as the packer finds, each sheet of one material, thickness and
 * grain, in the order in which these first appear.
 *
 * Parts are turned by 90° where that helps, or not at all where their sheet has a grain. A part
 * that is too long for both goes alone on a sheet, at the angle that leaves it the most room.
 * The same parts and bed give the same sheets.
 *
 * @param parts - compensated already; a part that stands several times is placed several times
 * @returns one problem for each part that fits in no way
 * @throws Error if the sheets do not keep the margin and the spacing
 * @example a bar of 300 x 100 mm on a bed of 120 x 320 mm: turned by 90°
 */
export function layOut(parts: readonly Part[], bed: Bed): Layouts {
	const room = roomOf(bed);
	const diagonals = new Map<Part, Placed | null>();
	const boxed = new Map(parts.map((part) => [part, boxOf(part)]));
	for (const part of new Set(parts)) {
		if (!fits(boxed.get(part)!, room)) diagonals.set(part, onDiagonal(part, bed));
	}
	const refused = [...diagonals].filter(([, placed]) => !placed).map(([part]) => part);
	if (refused.length > 0) return { ok: false, problems: refusals(refused, bed) };
	const layouts = groupsOf(parts).flatMap((group): Layout[] => {
		const packed = group.filter((part) => !diagonals.has(part)).map((part) => boxed.get(part)!);
		const alone = group.flatMap((part) => diagonals.get(part) ?? []);
		const sheets = [...packedSheets(packed, bed), ...alone.map((placed) => [placed])];
		return sheets.map((placed) => ({
			stock: group[0]!.stock,
			placed,
			used: areaOf(placed) / (bed.size.x * bed.size.y),
		}));
	});
	const faults = layouts.flatMap(({ placed }) => layoutFaults(placed, bed));
	if (faults.length > 0) throw new Error(`parts laid out wrongly: ${faults.join("; ")}`);
	return { ok: true, layouts };
}

/** Parts by their sheet: what is laid out together. */
function groupsOf(parts: readonly Part[]): Part[][] {
	const groups: Part[][] = [];
	for (const part of parts) {
		const group = groups.find(([first]) => {
			const { stock } = first!;
			return isSameStock(stock, part.stock) && stock.grain === part.stock.grain;
		});
		if (group) group.push(part);
		else groups.push([part]);
	}
	return groups;
}

/** What the machine does along the paths of a part: all of it needs its place on the bed. */
function pathsOf({ part, move }: Placed): Path[] {
	return part.marks.filter((m) => m.operation !== "reference").map((m) => moved(m.path, move));
}

function extentsOf(placed: Placed): Extents {
	return around(pathsOf(placed).map(extents));
}

function boxOf(part: Part): Boxed {
	const box = extentsOf({ part, move: STAY });
	const steps = (mm: number) => Math.ceil(mm * STEPS - ROUNDING);
	return { part, width: steps(box.maxX - box.minX), height: steps(box.maxY - box.minY) };
}

/** The bed within its margin, in steps. */
function roomOf(bed: Bed): Point {
	const steps = (mm: number) => Math.floor((mm - 2 * bed.margin) * STEPS + ROUNDING);
	return { x: steps(bed.size.x), y: steps(bed.size.y) };
}

function fits(box: Boxed, room: Point): boolean {
	return fitsLying(box, room) || (mayTurn(box.part) && fitsLying(turned(box), room));
}

function fitsLying({ width, height }: Boxed, room: Point): boolean {
	return width <= room.x && height <= room.y;
}

function turned(box: Boxed): Boxed {
	return { ...box, width: box.height, height: box.width };
}

function mayTurn(part: Part): boolean {
	return part.stock.grain === undefined;
}

/** In which order parts are given to the packer: largest first, by several measures. */
const ORDERS: readonly ((box: Boxed) => number)[] = [
	({ width, height }) => Math.max(width, height),
	({ width, height }) => width * height,
	({ width, height }) => Math.min(width, height),
	({ width, height }) => width + height,
	({ width }) => width,
	({ height }) => height,
];
const LOGICS = [PACKING_LOGIC.MAX_EDGE, PACKING_LOGIC.MAX_AREA] as const;
/** How a part is given to the packer, which may turn it once more. */
const WAYS = ["drawn", "lying", "standing"] as const;

/** The packing with the fewest sheets, and of those the one that leaves most of the last sheet. */
function packedSheets(boxes: readonly Boxed[], bed: Bed): Placed[][] {
	if (boxes.length === 0) return [];
	const spacing = Math.ceil(bed.spacing * STEPS - ROUNDING);
	const room = roomOf(bed);
	const best = bestPacking(boxes, room, spacing);
	const last = tightened(best.at(-1)!, room, spacing);
	return [...best.slice(0, -1), last].map((spots) =>
		spots.map((spot) => placedAt(spot, bed.margin)),
	);
}

function bestPacking(boxes: readonly Boxed[], room: Point, spacing: number): Spot[][] {
	const ways = mayTurn(boxes[0]!.part) ? WAYS : WAYS.slice(0, 1);
	const trials = LOGICS.flatMap((logic) =>
		ORDERS.flatMap((order) =>
			ways.map((way) => packing(boxes, room, spacing, { logic, order, way })),
		),
	);
	return trials.reduce((a, b) =>
		b.length < a.length || (b.length === a.length && taken(b.at(-1)!) < taken(a.at(-1)!)) ? b : a,
	);
}

/** How often the height that a sheet's parts take is halved in search of the least. */
const HALVINGS = 6;

/** A sheet's parts packed once more into less height, so that more of the sheet is left. */
function tightened(spots: readonly Spot[], room: Point, spacing: number): readonly Spot[] {
	let best = spots;
	let high = topOf(spots);
	let low = spots.reduce((area, { width, height }) => area + width * height, 0) / room.x;
	for (let i = 0; i < HALVINGS; i++) {
		const lower = { x: room.x, y: Math.round((low + high) / 2) };
		const packed = spots.every((box) => fits(box, lower)) ? bestPacking(spots, lower, spacing) : [];
		if (packed.length === 1) {
			high = topOf(packed[0]!);
			if (taken(packed[0]!) < taken(best)) best = packed[0]!;
		} else low = lower.y;
	}
	return best;
}

interface Trial {
	readonly logic: PACKING_LOGIC;
	readonly order: (box: Boxed) => number;
	readonly way: (typeof WAYS)[number];
}

/**
 * One run of the packer.
 *
 * @param boxes - each of which fits the room
 */
function packing(
	boxes: readonly Boxed[],
	room: Point,
	spacing: number,
	{ logic, order, way }: Trial,
): Spot[][] {
	const allowRotation = mayTurn(boxes[0]!.part);
	const options = { smart: false, pot: false, square: false, allowRotation, logic };
	const packer = new MaxRectsPacker<Rectangle>(room.x, room.y, spacing, options);
	const sorted = [...boxes].sort((a, b) => order(b) - order(a));
	const boxOfRectangle = new Map<Rectangle, { readonly box: Boxed; readonly before: boolean }>();
	for (const box of sorted) {
		const before = isGivenTurned(box, room, way);
		const { width, height } = before ? turned(box) : box;
		boxOfRectangle.set(packer.add(new Rectangle(width, height)), { box, before });
	}
	const sheets = packer.bins.map((bin) =>
		bin.rects.map((rectangle): Spot => {
			const { box, before } = boxOfRectangle.get(rectangle)!;
			return { ...box, x: rectangle.x, y: rectangle.y, turned: before !== rectangle.rot };
		}),
	);
	if (sheets.flat().length !== boxes.length) throw new Error("the packer lost a part");
	return sheets;
}

/** Whether a part is turned before the packer sees it: that refuses what only fits turned. */
function isGivenTurned(box: Boxed, room: Point, way: Trial["way"]): boolean {
	if (!mayTurn(box.part) || !fitsLying(turned(box), room)) return false;
	if (!fitsLying(box, room)) return true;
	return way === "lying" ? box.height > box.width : way === "standing" && box.width > box.height;
}

/** The corner of a sheet that its parts take up. */
function taken(spots: readonly Spot[]): number {
	const right = spots.map((s) => s.x + (s.turned ? s.height : s.width));
	return Math.max(...right) * topOf(spots);
}

function topOf(spots: readonly Spot[]): number {
	return Math.max(...spots.map((s) => s.y + (s.turned ? s.width : s.height)));
}

function placedAt({ part, x, y, turned }: Spot, margin: number): Placed {
	return withCorner(part, turned ? Math.PI / 2 : 0, {
		x: margin + x / STEPS,
		y: margin + y / STEPS,
	});
}

/** A part turned, the lower left corner of its box at a point. */
function withCorner(part: Part, turn: number, corner: Point): Placed {
	const box = extentsOf({ part, move: { ...STAY, turn } });
	return { part, move: { x: corner.x - box.minX, y: corner.y - box.minY, turn, mirror: false } };
}

/** Coarse turns of half a circle; a part turned by half a circle more takes the same room. */
const COARSE = 180;
/** How often the turns around a good one are looked at ten times as closely. */
const CLOSER = 9;

/**
 * A part alone in the middle of the bed at the turn that leaves most room beside it, or null
 * where it fits at none. The room is taken from the part's moved paths, not from its box.
 */
function onDiagonal(part: Part, bed: Bed): Placed | null {
	if (!mayTurn(part)) return null;
	const slack = (turn: number) => roomLeft(part, turn, bed);
	const step = Math.PI / COARSE;
	const coarse = Array.from({ length: COARSE }, (_, i) => slack(i * step));
	const peaks = coarse.flatMap((here, i) => {
		const before = coarse.at(i - 1)!;
		const after = coarse[(i + 1) % COARSE]!;
		return here >= before && here >= after ? [peakNear(slack, i * step, step)] : [];
	});
	const best = peaks.reduce((a, b) => (slack(b) > slack(a) ? b : a));
	if (slack(best) < -EXACT) return null;
	// Half a circle less leaves no part upside down.
	const turn = best > Math.PI / 2 ? best - Math.PI : best;
	const { minX, minY, maxX, maxY } = extentsOf({ part, move: { ...STAY, turn } });
	const x = (bed.size.x - (maxX - minX)) / 2;
	const y = (bed.size.y - (maxY - minY)) / 2;
	return withCorner(part, turn, { x, y });
}

/** What is left of the usable bed in the direction in which less is left, mm; below 0 outside. */
function roomLeft(part: Part, turn: number, { size, margin }: Bed): number {
	const box = extentsOf({ part, move: { ...STAY, turn } });
	const across = size.x - 2 * margin - (box.maxX - box.minX);
	return Math.min(across, size.y - 2 * margin - (box.maxY - box.minY));
}

function peakNear(slack: (turn: number) => number, from: number, step: number): number {
	let best = { turn: from, left: slack(from) };
	let reach = step;
	for (let i = 0; i < CLOSER; i++) {
		const middle = best.turn;
		for (let k = -10; k <= 10; k++) {
			const turn = middle + (k * reach) / 10;
			const left = slack(turn);
			if (left > best.left) best = { turn, left };
		}
		reach /= 10;
	}
	return best.turn;
}

function refusals(parts: readonly Part[], { size, margin }: Bed): Problem[] {
	const names = new Map(parts.map((part) => [part.name, part]));
	return [...names].map(([name, part]) => {
		const box = extentsOf({ part, move: STAY });
		return problem("part-larger-than-bed", [], {
			part: name,
			width: box.maxX - box.minX,
			height: box.maxY - box.minY,
			bedWidth: size.x - 2 * margin,
			bedHeight: size.y - 2 * margin,
			grain: part.stock.grain ?? "",
		});
	});
}

/** Area within the outlines of some parts, mm². */
function areaOf(placed: readonly Placed[]): number {
	return placed.reduce((sum, { part }) => sum + signedArea(outlineOf(part)), 0);
}

/** A part at its place, ready to be measured. */
interface Lying {
	readonly name: string;
	readonly paths: readonly Path[];
	readonly outline: Path;
	readonly box: Extents;
}

/**
 * What is wrong with parts at their places, in words: paths in the margin, parts nearer to each
 * other than the spacing or one within another. Nothing of the packer is relied upon.
 */
export function layoutFaults(placed: readonly Placed[], bed: Bed): string[] {
	const { size, margin, spacing } = bed;
	const all = placed.map(
		(p): Lying => ({
			name: p.part.name,
			paths: pathsOf(p),
			outline: moved(outlineOf(p.part), p.move),
			box: extentsOf(p),
		}),
	);
	const outside = all.filter(
		({ box }) =>
			Math.min(box.minX, box.minY) < margin - EXACT ||
			box.maxX > size.x - margin + EXACT ||
			box.maxY > size.y - margin + EXACT,
	);
	const near = all.flatMap((a, i) =>
		all.slice(i + 1).flatMap((b) => {
			if (gapBetween(a.box, b.box) >= spacing - EXACT) return [];
			const apart = distanceBetween(a, b, spacing);
			return apart >= spacing - EXACT ? [] : [`${a.name} and ${b.name} are ${apart} apart`];
		}),
	);
	return [...outside.map(({ name }) => `${name} lies in the margin`), ...near];
}

/** Distance of two boxes, mm; 0 where they overlap. */
function gapBetween(a: Extents, b: Extents): number {
	const x = Math.max(0, b.minX - a.maxX, a.minX - b.maxX);
	const y = Math.max(0, b.minY - a.maxY, a.minY - b.maxY);
	return Math.hypot(x, y);
}

/** Distance between the paths of two parts, mm: 0 where one part lies within the other. */
function distanceBetween(a: Lying, b: Lying, most: number): number {
	const isWithin = (inner: Lying, outer: Lying) =>
		contains(outer.outline, inner.outline.points[0]!);
	if (isWithin(a, b) || isWithin(b, a)) return 0;
	const boxed = (paths: readonly Path[]) =>
		paths.flatMap(segments).map((segment) => ({ segment, box: segmentExtents(segment) }));
	const others = boxed(b.paths);
	let least = Number.POSITIVE_INFINITY;
	for (const one of boxed(a.paths)) {
		for (const other of others) {
			if (gapBetween(one.box, other.box) >= Math.min(most, least)) continue;
			least = Math.min(least, segmentDistance(one.segment, other.segment));
		}
	}
	return least;
}

/** Distance between two segments, mm: 0 where they meet. */
function segmentDistance(a: Segment, b: Segment): number {
	if (meetings(a, b).length > 0) return 0;
	return Math.min(
		...[a.start, a.end, ...facing(a, b)].map((p) => fromPoint(b, p)),
		...[b.start, b.end, ...facing(b, a)].map((p) => fromPoint(a, p)),
	);
}

/** The points of an arc where its normal passes another arc's centre or is square to a line. */
function facing(arc: Segment, other: Segment): Point[] {
	if (arc.kind === "line") return [];
	const { centre } = arc;
	const toward =
		other.kind === "arc"
			? Math.atan2(other.centre.y - centre.y, other.centre.x - centre.x)
			: Math.atan2(other.end.x - other.start.x, other.start.y - other.end.y);
	return [toward, toward + Math.PI].flatMap((angle) => {
		const fraction = fractionOfAngle(arc, angle);
		return fraction === null ? [] : [pointAt(arc, fraction)];
	});
}
