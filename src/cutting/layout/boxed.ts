import type { Part } from "../../drawing/index.js";
import { type Point, STAY } from "../../geometry/index.js";
import type { Bed } from "../machine.js";
import { extentsOf } from "./corner.js";

/** The packer counts in nanometres: sums and differences of whole numbers are exact. */
export const STEPS = 1e6;

/** Of a step: what is less than this over a whole number is rounding. */
export const ROUNDING = 1e-3;

/** A part with its box as it is drawn, in steps of the packer. */
export interface Boxed {
	readonly part: Part;
	readonly width: number;
	readonly height: number;
}

/** The box of a part as it is drawn, rounded up to steps. */
export function boxOf(part: Part): Boxed {
	const box = extentsOf({ part, move: STAY });
	const steps = (mm: number) => Math.ceil(mm * STEPS - ROUNDING);
	return { part, width: steps(box.maxX - box.minX), height: steps(box.maxY - box.minY) };
}

/** The bed within its margin, in steps. */
export function roomOf(bed: Bed): Point {
	const steps = (mm: number) => Math.floor((mm - 2 * bed.margin) * STEPS + ROUNDING);
	return { x: steps(bed.size.x), y: steps(bed.size.y) };
}

/** Whether a box fits the room, turned if it may be. */
export function fits(box: Boxed, room: Point): boolean {
	return fitsLying(box, room) || (mayTurn(box.part) && fitsLying(turned(box), room));
}

/** Whether it fits as it is. */
export function fitsLying({ width, height }: Boxed, room: Point): boolean {
	return width <= room.x && height <= room.y;
}

/** The box turned by 90°. */
export function turned(box: Boxed): Boxed {
	return { ...box, width: box.height, height: box.width };
}

/** Whether a part may be turned: not where its sheet has a grain. */
export function mayTurn(part: Part): boolean {
	return part.stock.grain === undefined;
}
