import type { Findings } from "./findings.js";
import { type Matrix, product } from "./matrix.js";
import { operationNamed } from "./operation-named.js";
import { MOST_PIECES } from "./path-web.js";
import { pdfPaths } from "./pdf-path.js";
import type { ReadStroke } from "./types.js";

/** What a page tells to paint, one operator after the other. */
export interface PageOperators {
	readonly fnArray: readonly number[];
	readonly argsArray: readonly unknown[];
}

/** Codes of operators by their names. */
export type Codes = Readonly<Record<string, number>>;

/** Most operators of a page: fifty times those of one that is crowded. */
const MOST_OPERATORS = 2 * MOST_PIECES;

/** Strokes and fills that a path's last operator may be. */
const STROKED = ["stroke", "closeStroke"];
const BOTH = ["fillStroke", "eoFillStroke", "closeFillStroke", "closeEOFillStroke"];
const FILLED = ["fill", "eoFill", "shadingFill", "rawFillPath"];

const CLOSING = ["closeStroke", "closeFillStroke", "closeEOFillStroke"];

/** Code that closes a path. */
const CLOSE = 4;

/**
 * The stroked paths of a page, mm.
 *
 * @param matrix - from its units to millimetres
 * @param nth - the page's number, from 1
 */
export function pageStrokes(
	{ fnArray, argsArray }: PageOperators,
	codes: Codes,
	matrix: Matrix,
	nth: number,
	findings: Findings,
): ReadStroke[] {
	if (fnArray.length > MOST_OPERATORS) {
		findings.add("drawing-too-large", "error", {
			limit: MOST_OPERATORS,
			of: "operators on a page",
		});
		return [];
	}
	const names = new Map(Object.entries(codes).map(([name, code]) => [code, name]));
	const reader = new PageReader(matrix, nth, findings, codes);
	fnArray.forEach((code, i) => {
		reader.take(names.get(code) ?? "", (argsArray[i] ?? []) as readonly unknown[]);
	});
	return reader.strokes;
}

class PageReader {
	readonly strokes: ReadStroke[] = [];
	readonly #saved: Matrix[] = [];
	readonly #tags: string[] = [];
	#matrix: Matrix;
	#count = 0;
	/** Within notes that a viewer lays over the page. */
	#isBeside = false;

	constructor(
		matrix: Matrix,
		private readonly nth: number,
		private readonly findings: Findings,
		private readonly codes: Codes,
	) {
		this.#matrix = matrix;
	}

	take(name: string, args: readonly unknown[]): void {
		if (name === "beginAnnotation") {
			this.#isBeside = true;
			this.#notRead("a note laid over the page");
		} else if (name === "endAnnotation") this.#isBeside = false;
		else if (this.#isBeside) return;
		else if (name === "constructPath") this.#path(args);
		else if (!this.#place(name, args)) this.#other(name);
	}

	/** What changes where things are drawn, or what they are called. */
	#place(name: string, args: readonly unknown[]): boolean {
		if (name === "save") this.#saved.push(this.#matrix);
		else if (name === "restore") this.#matrix = this.#saved.pop() ?? this.#matrix;
		else if (name === "transform") this.#turn(args);
		else if (name === "paintFormXObjectBegin") {
			this.#saved.push(this.#matrix);
			if (args[0]) this.#turn(args[0] as readonly unknown[]);
		} else if (name === "paintFormXObjectEnd") this.#matrix = this.#saved.pop() ?? this.#matrix;
		else if (name.startsWith("beginMarkedContent")) this.#tags.push(tagOf(args[0]));
		else if (name === "endMarkedContent") this.#tags.pop();
		else return false;
		return true;
	}

	#turn(args: readonly unknown[]): void {
		const [a, b, c, d, e, f] = args.map(Number) as [number, number, number, number, number, number];
		this.#matrix = product(this.#matrix, { a, b, c, d, e, f });
	}

	#other(name: string): void {
		if (/^(?:show|nextLine(?:Set|Show))/u.test(name)) this.#notRead("text");
		else if (/Image/u.test(name)) this.#notRead("a picture");
		else if (name === "clip" || name === "eoClip") this.#notRead("what a clip path hides");
		else if (FILLED.includes(name)) this.#notRead("a filled area");
	}

	#path([operator, paths]: readonly unknown[]): void {
		const [steps] = (paths ?? []) as readonly (ArrayLike<number> | null)[];
		const is = (names: readonly string[]) => names.some((n) => this.codes[n] === operator);
		if (is(FILLED) || is(BOTH)) this.#notRead("a filled area");
		if (!steps || !(is(STROKED) || is(BOTH))) return;
		this.#count++;
		const place = `path ${this.#count} of page ${this.nth}`;
		if (!this.findings.mayUse(steps.length / 3)) return;
		const closed = is(CLOSING) && steps[steps.length - 1] !== CLOSE;
		const whole = closed ? [...Array.from(steps), CLOSE] : steps;
		const layer = this.#layer();
		const operation = operationNamed(layer);
		for (const path of pdfPaths(whole, this.#matrix, place, this.findings)) {
			this.strokes.push({ operation, layer, path });
		}
	}

	/** The innermost tag that is called by an operation, else the innermost. */
	#layer(): string {
		return this.#tags.findLast((tag) => operationNamed(tag)) ?? this.#tags.at(-1) ?? "";
	}

	#notRead(what: string): void {
		const isDrawn = operationNamed(this.#layer()) !== "reference";
		const kind = `${what} on page ${this.nth}`;
		this.findings.add("not-read", isDrawn ? "error" : "warning", { kind }, `${kind} ${isDrawn}`);
	}
}

function tagOf(tag: unknown): string {
	if (typeof tag === "string") return tag;
	const { name } = (tag ?? {}) as { readonly name?: unknown };
	return typeof name === "string" ? name : "";
}
