import type { Point } from "../geometry/index.js";
import { readNumbers } from "./number-reader.js";

/** x' = a·x + c·y + e, y' = b·x + d·y + f (SVG 2, 8.5; CSS Transforms 1, 13). */
export interface Matrix {
	readonly a: number;
	readonly b: number;
	readonly c: number;
	readonly d: number;
	readonly e: number;
	readonly f: number;
}

/** Editors print eight digits: this share of 500 mm is a twentieth of a micrometre. */
const SAME_SHAPE = 1e-7;

export function mappedPoint({ a, b, c, d, e, f }: Matrix, x: number, y: number): Point {
	return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** The matrix that does `inner` first, then `outer`. */
export function product(outer: Matrix, inner: Matrix): Matrix {
	return {
		a: outer.a * inner.a + outer.c * inner.b,
		b: outer.b * inner.a + outer.d * inner.b,
		c: outer.a * inner.c + outer.c * inner.d,
		d: outer.b * inner.c + outer.d * inner.d,
		e: outer.a * inner.e + outer.c * inner.f + outer.e,
		f: outer.b * inner.e + outer.d * inner.f + outer.f,
	};
}

/** By how much a matrix lengthens what runs along x. */
export function sizeOf({ a, b }: Matrix): number {
	return Math.hypot(a, b);
}

/** The most by which a matrix lengthens anything, or a little more. */
export function mostOf({ a, b, c, d }: Matrix): number {
	return Math.hypot(a, b, c, d);
}

/** Whether circles stay circles. */
export function keepsCircles({ a, b, c, d }: Matrix): boolean {
	const slack = SAME_SHAPE * Math.hypot(a, b, c, d);
	const turned = Math.hypot(a - d, b + c);
	const mirrored = Math.hypot(a + d, b - c);
	return Math.min(turned, mirrored) <= slack;
}

/** Whether lengths stay as they are. */
export function isRigid(matrix: Matrix): boolean {
	return keepsCircles(matrix) && Math.abs(sizeOf(matrix) - 1) <= SAME_SHAPE;
}

/** Whether a matrix turns left into right. */
export function isMirrored({ a, b, c, d }: Matrix): boolean {
	return a * d - b * c < 0;
}

const MOVE_NAMES = /[\s,]*([A-Za-z]+)\s*\(([^()]*)\)\s*/y;

/** The matrix of a `transform`, or null where it cannot be read. */
export function readTransform(text: string): Matrix | null {
	let result: Matrix | null = null;
	let at = 0;
	while (at < text.length && text.slice(at).trim() !== "") {
		MOVE_NAMES.lastIndex = at;
		const match = MOVE_NAMES.exec(text);
		const numbers = match && readNumbers(match[2]!);
		const step = numbers && stepMatrix(match[1]!, numbers);
		if (!step) return null;
		result = result ? product(result, step) : step;
		at = MOVE_NAMES.lastIndex;
	}
	return result ?? shifted(0, 0);
}

function stepMatrix(name: string, n: readonly number[]): Matrix | null {
	const count = n.length;
	if (name === "matrix" && count === 6) {
		return { a: n[0]!, b: n[1]!, c: n[2]!, d: n[3]!, e: n[4]!, f: n[5]! };
	}
	if (name === "translate" && (count === 1 || count === 2)) return shifted(n[0]!, n[1] ?? 0);
	if (name === "scale" && (count === 1 || count === 2)) {
		return { ...shifted(0, 0), a: n[0]!, d: n[1] ?? n[0]! };
	}
	if (name === "rotate" && (count === 1 || count === 3)) {
		const [x, y] = [n[1] ?? 0, n[2] ?? 0];
		return product(product(shifted(x, y), turned(n[0]!)), shifted(-x, -y));
	}
	if (name === "skewX" && count === 1) return { ...shifted(0, 0), c: tangent(n[0]!) };
	if (name === "skewY" && count === 1) return { ...shifted(0, 0), b: tangent(n[0]!) };
	return null;
}

export function shifted(e: number, f: number): Matrix {
	return { a: 1, b: 0, c: 0, d: 1, e, f };
}

function tangent(degrees: number): number {
	return Math.tan((degrees * Math.PI) / 180);
}

/** Exact for quarter turns, so that upright stays upright. */
function turned(degrees: number): Matrix {
	const quarters = degrees / 90;
	const [cos, sin] = Number.isInteger(quarters)
		? ([
				[1, 0],
				[0, 1],
				[-1, 0],
				[0, -1],
			][((quarters % 4) + 4) % 4] as [number, number])
		: [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
	return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 };
}
