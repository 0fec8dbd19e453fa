import { fretLine, type Neck } from "../../neck/index.js";
import { heightForSag, MATERIALS } from "../../shop/index.js";
import type { Bench } from "../tool.js";
import { AROUND_HOLE, type Hole, LEAST_HEIGHT, RELIEF } from "./measures.js";
import type { BarSettings } from "./settings.js";
import { type Dowels, dowelsBetween, heightUnderBody, type Stem, stemIn } from "./stem.js";

/** Most that the bar may sag on its feet by default, mm. */
const SAG = 0.01;

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
	/** The hole to hang it by, in the upper right corner; null for none. */
	readonly hole: Hole | null;
	/** Hole for the bolt through a dial's lug; null with a feeler or a held stem. */
	readonly dial: Hole | null;
	/** The dial's stem between laminations; null with a feeler or a bolted lug. */
	readonly stem: Stem | null;
	/** Through all laminations; null for none. */
	readonly dowels: Dowels | null;
}

/** Whether a feeler's pad stands over the fret that is read, and no dial. */
export function hasPad({ dial, stem }: Laid): boolean {
	return dial === null && stem === null;
}

/** Where letters must end before the hanging hole, mm. */
export function lettersEnd({ hole, span, foot }: Laid): number {
	const right = hole ? hole.x - hole.diameter / 2 : span + foot / 2 - AROUND_HOLE;
	return right - AROUND_HOLE;
}

/** Whether the bar is glued up around a dial's stem. */
export function holdsStem(s: BarSettings): boolean {
	return s["reads-with"] === "dial" && s["dial-held-by"] === "stem";
}

/** The fret strictly between two that lies nearest to the middle of both. */
export function middleFret(neck: Neck, first: number, last: number): number {
	const at = (n: number) => fretLine(neck, n).x;
	const middle = (at(first) + at(last)) / 2;
	const between = Array.from({ length: last - first - 1 }, (_, i) => first + 1 + i);
	return between.reduce((a, b) => (Math.abs(at(b) - middle) < Math.abs(at(a) - middle) ? b : a));
}

/** The least height of a bar of one sheet: for hole and letters, not for its sag. */
export function leastHeight(s: BarSettings): number {
	const dial = s["reads-with"] === "dial" ? s["dial-reach"]! + s["dial-hole"] / 2 : 0;
	return Math.max(LEAST_HEIGHT, dial + AROUND_HOLE);
}

function heightOf({ stock }: Bench, s: BarSettings, span: number): number {
	if (s["bar-height"] !== undefined) return s["bar-height"];
	if (holdsStem(s)) return heightUnderBody(s);
	const stiff = RELIEF + heightForSag(MATERIALS[stock.material], span, SAG);
	return Math.ceil(Math.max(leastHeight(s), stiff) - 1e-9);
}

/** The bar over two frets, at least one between them. */
export function layOut(bench: Bench, s: BarSettings): Laid {
	const { neck } = bench;
	const [first, last] = s["stand-on"] as [number, number];
	const read = middleFret(neck, first, last);
	const from = fretLine(neck, first).x;
	const span = fretLine(neck, last).x - from;
	const readAt = fretLine(neck, read).x - from;
	const height = heightOf(bench, s, span);
	const foot = s["foot-width"];
	const size = s["hanging-hole"];
	const hole =
		size === "none"
			? null
			: {
					x: span + foot / 2 - AROUND_HOLE - size / 2,
					y: height - AROUND_HOLE - size / 2,
					diameter: size,
				};
	const bolted = s["reads-with"] === "dial" && !holdsStem(s);
	const dial = bolted ? { x: readAt, y: s["dial-reach"]!, diameter: s["dial-hole"] } : null;
	const stem = holdsStem(s) ? stemIn(bench, s, readAt, height) : null;
	const laid = { first, last, read, span, readAt, foot, height, hole, dial, stem };
	return { ...laid, dowels: stem && s.dowel !== "none" ? dowelsOf(laid, stem, s.dowel) : null };
}

/** Where the pieces beside the channel have room for dowels: off their ends and the hanging hole. */
export function dowelRooms({ span, foot, hole }: Omit<Laid, "dowels">, stem: Stem) {
	const end = hole ? hole.x - hole.diameter / 2 : span + foot / 2;
	return [
		{ from: -foot / 2, to: stem.from },
		{ from: stem.to, to: end },
	] as const;
}

function dowelsOf(laid: Omit<Laid, "dowels">, stem: Stem, diameter: number): Dowels {
	const [left, right] = dowelRooms(laid, stem);
	return [
		dowelsBetween(left.from, left.to, laid.height, diameter),
		dowelsBetween(right.from, right.to, laid.height, diameter),
	];
}
