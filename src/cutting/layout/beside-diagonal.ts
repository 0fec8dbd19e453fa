import type { Placed } from "../../drawing/index.js";
import { line, moved, type Point, STAY } from "../../geometry/index.js";
import type { Bed } from "../machine.js";
import { ROUNDING, roomOf, STEPS } from "./boxed.js";
import { extentsOf } from "./corner.js";

/** A rectangle of a sheet on which nothing lies, in steps from the margin's corner. */
export interface Room {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

/** Places along the bed at which the room beside a slanted part is looked at. */
const PLACES = 64;

/**
 * The rectangles of a bed beside a part that lies slanted on it, the spacing kept: in both corners
 * that it leaves, each reaching from the bed's edges to the strip in which the part lies. They
 * overlap: together they are a staircase along the strip.
 */
export function roomsBeside({ part, move }: Placed, bed: Bed): Room[] {
	const box = extentsOf({ part, move: STAY });
	const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
	const turn = width >= height ? move.turn : move.turn - (Math.sign(move.turn) * Math.PI) / 2;
	const across = { x: -Math.sin(turn), y: Math.cos(turn) };
	const diagonals = [
		line({ x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY }),
		line({ x: box.minX, y: box.maxY }, { x: box.maxX, y: box.minY }),
	];
	const corners = diagonals.flatMap((d) => moved(d, move).points);
	const heights = corners.map((p) => p.x * across.x + p.y * across.y);
	const strip = { low: Math.min(...heights), high: Math.max(...heights) };
	const room = roomOf(bed);
	const places = Array.from({ length: PLACES + 1 }, (_, i) => Math.round((room.x * i) / PLACES));
	return places.flatMap((x) => roomsAt(x, across, strip, room, bed));
}

/** The rooms below and above the strip that have a corner on its line at a place. */
function roomsAt(
	x: number,
	across: Point,
	strip: { readonly low: number; readonly high: number },
	room: Point,
	{ margin, spacing }: Bed,
): Room[] {
	const onLine = (height: number) =>
		((height - across.x * (margin + x / STEPS)) / across.y - margin) * STEPS;
	const below = Math.min(room.y, Math.floor(onLine(strip.low - spacing) + ROUNDING));
	const above = Math.max(0, Math.ceil(onLine(strip.high + spacing) - ROUNDING));
	const left = { x: 0, width: x };
	const right = { x, width: room.x - x };
	const rises = across.x < 0;
	const rooms = [
		{ ...(rises ? right : left), y: 0, height: below },
		{ ...(rises ? left : right), y: above, height: room.y - above },
	];
	return rooms.filter((r) => r.width > 0 && r.height > 0);
}
