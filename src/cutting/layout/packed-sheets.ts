import { PACKING_LOGIC } from "maxrects-packer";
import type { Placed } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import type { Bed } from "../machine.js";
import { roomsBeside } from "./beside-diagonal.js";
import { type Boxed, fits, fitsLying, mayTurn, ROUNDING, roomOf, STEPS, turned } from "./boxed.js";
import { withCorner } from "./corner.js";
import { filling, type Given, packing, type Spot } from "./packing.js";

/** In which order parts are given to the packer: largest first, by several measures. */
const ORDERS: readonly ((box: Boxed) => number)[] = [
	({ width, height }) => Math.max(width, height),
	({ width, height }) => width * height,
	({ width, height }) => Math.min(width, height),
	({ width, height }) => width + height,
	({ width }) => width,
	({ height }) => height,
];

/** How a part is given to the packer. */
const WAYS = ["drawn", "lying", "standing"] as const;

const LOGICS = [PACKING_LOGIC.MAX_EDGE, PACKING_LOGIC.MAX_AREA] as const;

/**
 * The packing with the fewest sheets, and of those the one that leaves most of the last sheet.
 *
 * @param diagonals - each on a sheet of its own, beside which parts are laid before others
 * @returns sheets without a diagonal first
 */
export function packedSheets(
	boxes: readonly Boxed[],
	diagonals: readonly Placed[],
	bed: Bed,
): Placed[][] {
	const spacing = spacingOf(bed);
	const room = roomOf(bed);
	const beside = bestFilling(boxes, diagonals, bed);
	const others = beside.left.map(({ box }) => box);
	const best = others.length > 0 ? bestPacking(others, room, spacing) : [];
	const last = best.slice(-1).map((spots) => tightened(spots, room, spacing));
	const placed = (spots: readonly Spot[]) => spots.map((spot) => placedAt(spot, bed.margin));
	return [
		...[...best.slice(0, -1), ...last].map(placed),
		...diagonals.map((diagonal, i) => [diagonal, ...placed(beside.sheets[i]!)]),
	];
}

/** What lies beside each diagonal, and what lies nowhere yet. */
interface Beside {
	readonly sheets: readonly (readonly Spot[])[];
	readonly left: readonly Given[];
}

/** Parts beside the diagonals, in the trial that leaves least of them over. */
function bestFilling(boxes: readonly Boxed[], diagonals: readonly Placed[], bed: Bed): Beside {
	if (boxes.length === 0) return { sheets: diagonals.map(() => []), left: [] };
	const spacing = spacingOf(bed);
	const room = roomOf(bed);
	const rooms = diagonals.map((diagonal) => roomsBeside(diagonal, bed));
	const tried = LOGICS.flatMap((logic) =>
		trials(boxes, room).map((given) =>
			rooms.reduce(
				({ sheets, left }: Beside, free): Beside => {
					const next = filling(left, free, room, spacing, logic);
					return { sheets: [...sheets, next.spots], left: next.left };
				},
				{ sheets: [], left: given },
			),
		),
	);
	const areaLeft = ({ left }: Beside) =>
		left.reduce((sum, { box }) => sum + box.width * box.height, 0);
	return tried.reduce((a, b) => (areaLeft(b) < areaLeft(a) ? b : a));
}

/** The spacing of a bed in steps. */
function spacingOf(bed: Bed): number {
	return Math.ceil(bed.spacing * STEPS - ROUNDING);
}

function bestPacking(boxes: readonly Boxed[], room: Point, spacing: number): Spot[][] {
	const all = trials(boxes, room);
	const packings = LOGICS.flatMap((logic) =>
		all.map((given) => packing(given, room, spacing, logic)),
	);
	return packings.reduce((a, b) =>
		b.length < a.length || (b.length === a.length && taken(b.at(-1)!) < taken(a.at(-1)!)) ? b : a,
	);
}

/** The boxes in every order and way, each list once. */
function trials(boxes: readonly Boxed[], room: Point): Given[][] {
	const ways = mayTurn(boxes[0]!.part) ? WAYS : WAYS.slice(0, 1);
	const numbers = new Map(boxes.map((box, i) => [box, i]));
	const lists = new Map<string, Given[]>();
	for (const order of ORDERS) {
		const sorted = [...boxes].sort((a, b) => order(b) - order(a));
		for (const way of ways) {
			const given = sorted.map((box) => ({ box, before: isGivenTurned(box, room, way) }));
			const key = given.map(({ box, before }) => `${numbers.get(box)} ${before}`).join();
			if (!lists.has(key)) lists.set(key, given);
		}
	}
	return [...lists.values()];
}

/** Whether a part is turned before the packer sees it: that refuses what only fits turned. */
function isGivenTurned(box: Boxed, room: Point, way: (typeof WAYS)[number]): boolean {
	if (!mayTurn(box.part) || !fitsLying(turned(box), room)) return false;
	if (!fitsLying(box, room)) return true;
	return way === "lying" ? box.height > box.width : way === "standing" && box.width > box.height;
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
