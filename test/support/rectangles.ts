import type { Note } from "../../src/drawing/index.js";
import type { Point } from "../../src/geometry/index.js";

/** An upright or turned rectangle around a text, its corners in order. */
export interface Rectangle {
	readonly text: string;
	readonly corners: readonly Point[];
}

/** A rectangle from `low` to `high` in a frame turned about `at`. */
export function turnedRectangle(
	text: string,
	at: Point,
	turn: number,
	low: Point,
	high: Point,
): Rectangle {
	const [c, s] = [Math.cos(turn), Math.sin(turn)];
	const place = (x: number, y: number) => ({ x: at.x + c * x - s * y, y: at.y + s * x + c * y });
	const corners = [
		place(low.x, low.y),
		place(high.x, low.y),
		place(high.x, high.y),
		place(low.x, high.y),
	];
	return { text, corners };
}

/** A note's rectangle: from a little under its baseline, where g and p hang, to its capitals' tops. */
export function noteRectangle({ text, at, height, turn, width }: Note): Rectangle {
	return turnedRectangle(text, at, turn, { x: 0, y: -0.25 * height }, { x: width, y: height });
}

/** How deep two rectangles lie within each other, mm; 0 or less where they are apart. */
export function overlap(a: Rectangle, b: Rectangle): number {
	let depth = Number.POSITIVE_INFINITY;
	for (const { corners } of [a, b]) {
		for (const i of [0, 1]) {
			depth = Math.min(depth, overlapAlong(corners[i]!, corners[i + 1]!, a, b));
			if (depth <= 0) return depth;
		}
	}
	return depth;
}

/** How far the shadows of two rectangles on a direction lie within each other. */
function overlapAlong(from: Point, to: Point, a: Rectangle, b: Rectangle): number {
	const size = Math.hypot(to.x - from.x, to.y - from.y);
	const [dx, dy] = [(to.x - from.x) / size, (to.y - from.y) / size];
	const [lowA, highA] = shadow(a, dx, dy);
	const [lowB, highB] = shadow(b, dx, dy);
	return Math.min(highA, highB) - Math.max(lowA, lowB);
}

function shadow({ corners }: Rectangle, dx: number, dy: number): [number, number] {
	let low = Number.POSITIVE_INFINITY;
	let high = Number.NEGATIVE_INFINITY;
	for (const { x, y } of corners) {
		const along = x * dx + y * dy;
		if (along < low) low = along;
		if (along > high) high = along;
	}
	return [low, high];
}

/** Every two rectangles of a list that overlap by more than a hundredth, in words. */
export function overlaps(rectangles: readonly Rectangle[]): string[] {
	return rectangles.flatMap((a, i) =>
		rectangles
			.slice(i + 1)
			.filter((b) => overlap(a, b) > 0.01)
			.map((b) => `"${a.text}" and "${b.text}" by ${overlap(a, b).toFixed(2)}`),
	);
}

/** Half the width of a line as it is drawn, mm. */
const HALF = 0.01;

/** A straight stroke as the rectangle that its line covers. */
export function strokeRectangle(text: string, a: Point, b: Point): Rectangle {
	const turn = Math.atan2(b.y - a.y, b.x - a.x);
	const size = Math.hypot(b.x - a.x, b.y - a.y);
	return turnedRectangle(text, a, turn, { x: 0, y: -HALF }, { x: size, y: HALF });
}
