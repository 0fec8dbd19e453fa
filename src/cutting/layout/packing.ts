import { MaxRectsPacker, type PACKING_LOGIC, Rectangle } from "maxrects-packer";
import type { Point } from "../../geometry/index.js";
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
	const allowRotation = mayTurn(given[0]!.box.part);
	const options = { smart: false, pot: false, square: false, allowRotation, logic };
	const packer = new MaxRectsPacker<Rectangle>(room.x, room.y, spacing, options);
	const givenOf = new Map<Rectangle, Given>();
	for (const one of given) {
		const { width, height } = one.before ? turned(one.box) : one.box;
		givenOf.set(packer.add(new Rectangle(width, height)), one);
	}
	const sheets = packer.bins.map((bin) =>
		bin.rects.map((rectangle): Spot => {
			const { box, before } = givenOf.get(rectangle)!;
			return { ...box, x: rectangle.x, y: rectangle.y, turned: before !== rectangle.rot };
		}),
	);
	if (sheets.flat().length !== given.length) throw new Error("the packer lost a part");
	return sheets;
}
