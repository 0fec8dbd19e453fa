import { MaxRectsBin, MaxRectsPacker, type PACKING_LOGIC, Rectangle } from "maxrects-packer";
import type { Point } from "../../geometry/index.js";
import type { Room } from "./beside-diagonal.js";
import { type Boxed, mayTurn, turned } from "./boxed.js";

/** Where the lower left corner of a part's box comes to, in steps from the margin's corner. */
export interface Spot extends Boxed {
	readonly x: number;
	readonly y: number;
	readonly turned: boolean;
}

/** A part as the packer is given it: turned already or not. The packer may turn it once more. */
export interface Given {
	readonly box: Boxed;
	readonly before: boolean;
}

/**
 * One run of the packer.
 *
 * @param given - each of which fits the room, in the order in which they are placed
 */
export function packing(
	given: readonly Given[],
	room: Point,
	spacing: number,
	logic: PACKING_LOGIC,
): Spot[][] {
	const options = optionsFor(given, logic);
	const packer = new MaxRectsPacker<Rectangle>(room.x, room.y, spacing, options);
	const givenOf = new Map<Rectangle, Given>();
	for (const one of given) {
		const { width, height } = one.before ? turned(one.box) : one.box;
		givenOf.set(packer.add(new Rectangle(width, height)), one);
	}
	const sheets = packer.bins.map((bin) =>
		bin.rects.map((rectangle) => spotOf(givenOf.get(rectangle)!, rectangle)),
	);
	if (sheets.flat().length !== given.length) throw new Error("the packer lost a part");
	return sheets;
}

/** Parts that found room on a sheet, and those that did not. */
export interface Filling {
	readonly spots: readonly Spot[];
	readonly left: readonly Given[];
}

/**
 * Parts into rooms of one sheet, each in its turn where there is still room for it.
 *
 * @param given - in the order in which they are tried
 * @param rooms - may overlap
 */
export function filling(
	given: readonly Given[],
	rooms: readonly Room[],
	room: Point,
	spacing: number,
	logic: PACKING_LOGIC,
): Filling {
	if (given.length === 0) return { spots: [], left: [] };
	const bin = new MaxRectsBin<Rectangle>(room.x, room.y, spacing, optionsFor(given, logic));
	// As for the whole sheet: beyond its right and upper edge a room has the spacing besides.
	bin.freeRects = rooms.map(
		({ x, y, width, height }) => new Rectangle(width + spacing, height + spacing, x, y),
	);
	const spots: Spot[] = [];
	const left: Given[] = [];
	for (const one of given) {
		const { width, height } = one.before ? turned(one.box) : one.box;
		const rectangle = bin.add(new Rectangle(width, height));
		if (rectangle) spots.push(spotOf(one, rectangle));
		else left.push(one);
	}
	return { spots, left };
}

function optionsFor(given: readonly Given[], logic: PACKING_LOGIC) {
	const allowRotation = mayTurn(given[0]!.box.part);
	return { smart: false, pot: false, square: false, allowRotation, logic };
}

function spotOf({ box, before }: Given, { x, y, rot }: Rectangle): Spot {
	return { ...box, x, y, turned: before !== rot };
}
