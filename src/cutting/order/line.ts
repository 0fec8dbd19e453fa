import type { Point } from "../../geometry/index.js";
import type { Step } from "./leg.js";

/**
 * Steps in an order that is being improved. The step at stop i has two numbers, i for the way it
 * is made and n + i for the same from its other end, where there is such a way; 2n stands for
 * where the head comes from and for where it goes.
 */
export interface Line {
	readonly order: Int32Array;
	/** Where each stop stands in the order. */
	readonly places: Int32Array;
	readonly near: readonly Int32Array[];
	/** Starts and ends of all steps, by their numbers. */
	readonly fromX: Float64Array;
	readonly fromY: Float64Array;
	readonly toX: Float64Array;
	readonly toY: Float64Array;
	/** Whether it is known where the head goes. */
	readonly isBound: boolean;
	/** From the first step to each, and the same against the order with all steps turned, mm. */
	readonly along: Float64Array;
	readonly against: Float64Array;
	/** Stops beside which nothing has changed since no exchange was found there. */
	readonly quiet: Uint8Array;
}

/**
 * Steps as a line.
 *
 * @param order - of every step the number of its stop
 * @param near - of every stop the numbers of those beside which it may be moved
 * @param toward - where the head goes afterwards, if that is known
 */
export function lineOf(
	steps: readonly Step[],
	order: Int32Array,
	near: Line["near"],
	head: Point,
	toward: Point | null,
): Line {
	const n = steps.length;
	const line = emptyLine(order, near, toward !== null);
	const put = (i: number, from: Point, to: Point) => {
		line.fromX[i] = from.x;
		line.fromY[i] = from.y;
		line.toX[i] = to.x;
		line.toY[i] = to.y;
	};
	steps.forEach((step, k) => {
		const other = turned(step).way;
		put(order[k]!, step.way.from, step.way.to);
		put(order[k]! + n, other.from, other.to);
	});
	put(2 * n, toward ?? head, head);
	reckon(line);
	return line;
}

function emptyLine(order: Int32Array, near: Line["near"], isBound: boolean): Line {
	const n = order.length;
	return {
		order,
		near,
		isBound,
		places: new Int32Array(n),
		fromX: new Float64Array(2 * n + 1),
		fromY: new Float64Array(2 * n + 1),
		toX: new Float64Array(2 * n + 1),
		toY: new Float64Array(2 * n + 1),
		along: new Float64Array(n),
		against: new Float64Array(n),
		quiet: new Uint8Array(n),
	};
}

/** The same way run from its other end, where there is such a one. */
function turned({ stop, way }: Step): Step {
	if (way.from === way.to || stop.marks.length > 1) return { stop, way };
	return { stop, way: stop.ways.find((other) => other !== way)! };
}

/** A step's number when it is run from its other end. */
export function otherWay(i: number, n: number): number {
	return i < n ? i + n : i - n;
}

/** Travel from the end of one step to the start of another, mm. */
export function hop(
	{ fromX, fromY, toX, toY, isBound, order }: Line,
	a: number,
	b: number,
): number {
	if (b === 2 * order.length && !isBound) return 0;
	const x = toX[a]! - fromX[b]!;
	const y = toY[a]! - fromY[b]!;
	return Math.sqrt(x * x + y * y);
}

/** The number of the step at a place of the order. */
export function stepAt({ order }: Line, k: number): number {
	return k < 0 || k >= order.length ? 2 * order.length : order[k]!;
}

/** Reckons a line anew after an exchange at some places. */
export function reckon(line: Line, ...changed: number[]): void {
	const { order, places, along, against, quiet } = line;
	const n = order.length;
	for (let k = 0; k < n; k++) places[order[k]! % n] = k;
	for (let i = 1; i < n; i++) {
		const [a, b] = [order[i - 1]!, order[i]!];
		along[i] = along[i - 1]! + hop(line, a, b);
		against[i] = against[i - 1]! + hop(line, otherWay(b, n), otherWay(a, n));
	}
	for (const k of changed) if (k >= 0 && k < n) quiet[order[k]! % n] = 0;
}
