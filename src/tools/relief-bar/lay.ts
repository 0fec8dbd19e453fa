import { fretLine, type Neck } from "../../neck/index.js";
import { heightForSag, MATERIALS } from "../../shop/index.js";
import type { Bench } from "../tool.js";
import type { BarSettings } from "./settings.js";

/** How far the edge between the feet is relieved, mm. */
export const RELIEF = 2;
/** Most that the bar may sag on its feet by default, mm. */
const SAG = 0.01;
/** Lowest bar that is made by default, and plate around holes, mm. */
const LEAST_HEIGHT = 20;
export const AROUND_HOLE = 5;

/** Where the bar stands and reads: places from the first foot's middle, mm. */
export interface Laid {
	readonly first: number;
	readonly last: number;
	/** The fret nearest the middle between the two. */
	readonly read: number;
	readonly span: number;
	readonly readAt: number;
	readonly foot: number;
	readonly height: number;
	/** Middle and diameter of the dial's hole; null with a feeler. */
	readonly dial: { readonly x: number; readonly y: number; readonly diameter: number } | null;
}

/** The fret strictly between two that lies nearest to the middle of both. */
export function middleFret(neck: Neck, first: number, last: number): number {
	const at = (n: number) => fretLine(neck, n).x;
	const middle = (at(first) + at(last)) / 2;
	const between = Array.from({ length: last - first - 1 }, (_, i) => first + 1 + i);
	return between.reduce((a, b) => (Math.abs(at(b) - middle) < Math.abs(at(a) - middle) ? b : a));
}

/** The least height of the bar: for hole and letters, not for its sag. */
export function leastHeight(s: BarSettings): number {
	const dial = s["reads-with"] === "dial" ? s["dial-reach"]! + s["dial-hole"] / 2 : 0;
	return Math.max(LEAST_HEIGHT, dial + AROUND_HOLE);
}

/** The bar over two frets, at least one between them. */
export function layOut(bench: Bench, s: BarSettings): Laid {
	const { neck, stock } = bench;
	const [first, last] = s["stand-on"] as [number, number];
	const read = middleFret(neck, first, last);
	const from = fretLine(neck, first).x;
	const span = fretLine(neck, last).x - from;
	const readAt = fretLine(neck, read).x - from;
	const stiff = RELIEF + heightForSag(MATERIALS[stock.material], span, SAG);
	const height = s["bar-height"] ?? Math.ceil(Math.max(leastHeight(s), stiff) - 1e-9);
	const dial =
		s["reads-with"] === "dial"
			? { x: readAt, y: s["dial-reach"]!, diameter: s["dial-hole"] }
			: null;
	return { first, last, read, span, readAt, foot: s["foot-width"], height, dial };
}
