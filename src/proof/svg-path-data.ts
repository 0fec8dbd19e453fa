import type { Point } from "../geometry/index.js";
import type { Findings } from "./findings.js";
import { NumberReader } from "./number-reader.js";
import type { Pen } from "./pen.js";

/** How many numbers follow each letter (SVG 2, 9.3). */
const COUNTS: Readonly<Record<string, number>> = {
	M: 2,
	L: 2,
	H: 1,
	V: 1,
	C: 6,
	S: 4,
	Q: 4,
	T: 2,
	A: 7,
	Z: 0,
};

/** Where the drawing of path data stands. */
interface Place {
	at: Point;
	start: Point;
	/** The last control point of a curve, and which curve it was. */
	control: Point;
	last: string;
}

/**
 * Draws path data, relative or absolute, every contour of it. From the first thing that cannot
 * be read on nothing is drawn, nor is the contour it stands in.
 */
export function drawPathData(data: string, pen: Pen, place: string, findings: Findings): void {
	const reader = new NumberReader(data);
	const now: Place = { at: ORIGIN, start: ORIGIN, control: ORIGIN, last: "" };
	let letter = "";
	while (!reader.isAtEnd()) {
		const given = reader.letter();
		if (given !== null) letter = given;
		else if (letter === "Z" || letter === "z") letter = "";
		const kind = letter.toUpperCase();
		const numbers = Object.hasOwn(COUNTS, kind) ? readCount(reader, kind) : null;
		if (!numbers || (now.last === "" && kind !== "M") || !numbers.every(Number.isFinite)) {
			pen.drop();
			findings.noNumber(`${given ?? ""}${reader.rest()}`, place);
			return;
		}
		step(kind, absolute(kind, numbers, letter === kind ? ORIGIN : now.at), pen, now);
		if (letter === "M") letter = "L";
		if (letter === "m") letter = "l";
	}
	pen.lift();
}

const ORIGIN: Point = { x: 0, y: 0 };

function readCount(reader: NumberReader, kind: string): number[] | null {
	const result: number[] = [];
	for (let i = 0; i < COUNTS[kind]!; i++) {
		const value = kind === "A" && (i === 3 || i === 4) ? reader.flag() : reader.next();
		if (value === null) return null;
		result.push(value);
	}
	return result;
}

/** The numbers with the coordinates among them counted from the origin. */
function absolute(kind: string, numbers: readonly number[], { x, y }: Point): readonly number[] {
	if (x === 0 && y === 0) return numbers;
	if (kind === "V") return [numbers[0]! + y];
	const first = kind === "A" ? 5 : 0;
	return numbers.map((n, i) => (i < first ? n : n + ((i - first) % 2 === 0 ? x : y)));
}

function step(kind: string, n: readonly number[], pen: Pen, now: Place): void {
	const { at, control, last } = now;
	if (kind !== "M" && kind !== "Z" && last === "Z") pen.moveTo(at.x, at.y);
	const pairs = pointsOf(kind, n, at);
	const end = pairs.at(-1) ?? now.start;
	now.control = end;
	if (kind === "M") {
		pen.moveTo(end.x, end.y);
		now.start = end;
	} else if (kind === "Z") pen.close();
	else if (kind === "A") pen.arcTo({ x: n[0]!, y: n[1]! }, n[2]!, n[3] === 1, n[4] === 1, end);
	else if (kind === "C" || kind === "Q") {
		pen.curveTo(...pairs);
		now.control = pairs.at(-2)!;
	} else if (kind === "S" || kind === "T") {
		const smooth = (kind === "S" ? "CS" : "QT").includes(last);
		const mirrored = smooth ? { x: 2 * at.x - control.x, y: 2 * at.y - control.y } : at;
		pen.curveTo(mirrored, ...pairs);
		now.control = kind === "S" ? pairs[0]! : mirrored;
	} else pen.lineTo(end.x, end.y);
	now.at = end;
	now.last = kind;
}

function pointsOf(kind: string, n: readonly number[], at: Point): Point[] {
	if (kind === "H") return [{ x: n[0]!, y: at.y }];
	if (kind === "V") return [{ x: at.x, y: n[0]! }];
	const result: Point[] = [];
	for (let i = kind === "A" ? 5 : 0; i + 1 < n.length; i += 2) {
		result.push({ x: n[i]!, y: n[i + 1]! });
	}
	return result;
}
