import {
	crossingOf,
	fretLine,
	humpUnder,
	type Neck,
	radiusAt,
	type StringLine,
	stringLines,
	widthAt,
} from "../../neck/index.js";

/** How the board is curved across. */
export type BoardShape = "flat" | "cylinder" | "compound";

export function boardShape({ radius }: Neck): BoardShape {
	if (radius === "flat") return "flat";
	const [first] = radius.knots;
	return radius.knots.every((k) => k.value === first!.value) ? "cylinder" : "compound";
}

/** Length of the board from the theoretical nut to the last fret on the centre line, mm. */
export function boardLength(neck: Neck): number {
	return fretLine(neck, neck.frets).x;
}

/** Places between nut and last fret where width or radius may be greatest or least. */
export function boardPlaces(neck: Neck): number[] {
	const last = boardLength(neck);
	const knots = [neck.width, ...(neck.radius === "flat" ? [] : [neck.radius])].flatMap((p) =>
		p.knots.map((k) => k.x).filter((x) => x > 0 && x < last),
	);
	return [0, ...knots.sort((a, b) => a - b), last];
}

export function greatestWidth(neck: Neck): number {
	return Math.max(...boardPlaces(neck).map((x) => widthAt(neck, x)));
}

/**
 * The greatest y/R whose line stays on the board from nut to last fret; 0 on a flat board. Width
 * and radius are straight between their knots, so y/R has its extremes at them.
 */
export function outermostShare(neck: Neck): number {
	if (neck.radius === "flat") return 0;
	return Math.min(...boardPlaces(neck).map((x) => widthAt(neck, x) / 2 / radiusAt(neck, x)!));
}

/** Whether the radius grows at one rate all along, so that the board is one cone. */
export function isOneCone(neck: Neck): boolean {
	if (neck.radius === "flat") return false;
	const { knots } = neck.radius;
	const rates = knots.slice(1).map((k, i) => (k.value - knots[i]!.value) / (k.x - knots[i]!.x));
	return rates.every((rate) => Math.abs(rate - rates[0]!) < 1e-9);
}

/** What a straight beam is laid along when it follows the strings. */
export interface OuterLine {
	readonly name: string;
	/** Height of the board's hump under it between nut and last fret, mm. */
	readonly hump: number;
}

/** The line along which the hump is greatest: an outer string, or the edge where none are known. */
export function humpedLine(neck: Neck): OuterLine {
	const lines = neck.strings ? [stringLines(neck)[0]!, stringLines(neck).at(-1)!] : [edge(neck)];
	const humps = lines.map((line) =>
		humpUnder(neck, line, 0, crossingOf(neck, line, neck.frets).along),
	);
	return {
		name: neck.strings ? "the outer strings" : "the board's edge",
		hump: Math.max(...humps),
	};
}

/** The straight line between the edge's ends at nut and last fret. */
function edge(neck: Neck): StringLine {
	const last = boardLength(neck);
	return {
		nut: { x: 0, y: widthAt(neck, 0) / 2 },
		saddle: { x: last, y: widthAt(neck, last) / 2 },
	};
}
