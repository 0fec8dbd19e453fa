import { inflateSync } from "node:zlib";
import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Sheet } from "../../src/drawing/index.js";
import { moved, type Point, shift } from "../../src/geometry/index.js";

/** One step of a path; a curve has its two handles before its end. */
export interface Step {
	readonly kind: "move" | "line" | "curve" | "close";
	readonly points: readonly Point[];
}

export interface PdfPath {
	readonly tag: string;
	readonly colour: string;
	/** As its operator gives it, before any scaling. */
	readonly width: number;
	readonly steps: readonly Step[];
}

export interface PdfPage {
	/** Left, bottom, right, top in points. */
	readonly view: readonly number[];
	/** Points per unit of the coordinates. */
	readonly scale: number;
	readonly paths: readonly PdfPath[];
	/** Names of all operators, in order. */
	readonly operators: readonly string[];
}

/** A sheet moved so that it starts at 0, 0 as a page does, without its notes. */
export function asPage({ size, placed, marks, ...sheet }: Sheet): Sheet {
	const [x, y] = [-size.minX, -size.minY];
	return {
		...sheet,
		size: { minX: 0, minY: 0, maxX: size.maxX + x, maxY: size.maxY + y },
		placed: placed.map(({ part, move }) => ({
			part,
			move: { ...move, x: move.x + x, y: move.y + y },
		})),
		marks: marks.map((m) => ({ ...m, path: moved(m.path, shift(x, y)) })),
		notes: [],
	};
}

/** A PDF as a viewer of another maker takes it in. */
export async function openPdf(bytes: Uint8Array) {
	return await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
}

export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
	const document = await openPdf(bytes);
	const pages: PdfPage[] = [];
	for (let i = 1; i <= document.numPages; i++) {
		const page = await document.getPage(i);
		const { fnArray, argsArray } = await page.getOperatorList();
		pages.push({ view: page.view, ...pageOf(fnArray, argsArray) });
	}
	return pages;
}

const NAMES = new Map(Object.entries(OPS).map(([name, code]) => [code as number, name]));

// biome-ignore lint/suspicious/noExplicitAny: the arguments are of a kind for each operator
function pageOf(codes: readonly number[], given: readonly any[]): Omit<PdfPage, "view"> {
	const paths: PdfPath[] = [];
	const state = { tag: "", colour: "", width: Number.NaN };
	let scale = Number.NaN;
	const operators = codes.map((code) => NAMES.get(code)!);
	for (const [i, name] of operators.entries()) {
		const args = given[i];
		if (name === "transform") scale = args[0];
		if (name === "beginMarkedContent") state.tag = args[0].name;
		if (name === "endMarkedContent") state.tag = "";
		if (name === "setStrokeRGBColor") state.colour = args[0];
		if (name === "setLineWidth") state.width = args[0];
		if (name === "constructPath") paths.push({ ...state, steps: stepsOf([...args[1][0]]) });
	}
	return { scale, paths, operators };
}

const STEPS = [
	["move", 1],
	["line", 1],
	["curve", 3],
] as const;

function stepsOf(numbers: readonly number[]): Step[] {
	const steps: Step[] = [];
	for (let i = 0; i < numbers.length; ) {
		const [kind, count] = STEPS[numbers[i]!] ?? (["close", 0] as const);
		i++;
		const points = Array.from({ length: count }, (_, k) => ({
			x: numbers[i + 2 * k]!,
			y: numbers[i + 2 * k + 1]!,
		}));
		steps.push({ kind, points });
		i += 2 * count;
	}
	return steps;
}

/** The content streams of a PDF's pages as text, found by their keywords and inflated. */
export function contentsOf(bytes: Uint8Array): string[] {
	const found = [...textOf(bytes).matchAll(/\nstream\n(.*?)\nendstream/gsu)];
	return found.map((match) => inflateSync(Buffer.from(match[1]!, "latin1")).toString("latin1"));
}

/** The bytes of a PDF, a character each. */
export function textOf(bytes: Uint8Array): string {
	return Buffer.from(bytes).toString("latin1");
}

/** The same steps from a content stream, path by path, with all its digits. */
export function stepsIn(content: string): Step[][] {
	const kinds = { m: "move", l: "line", c: "curve", h: "close" } as const;
	const paths: Step[][] = [];
	for (const line of content.split("\n")) {
		const match = /^(?:(.*) )?([mlch])$/u.exec(line);
		if (!match) continue;
		const numbers = match[1]?.split(" ").map(Number) ?? [];
		const points = Array.from({ length: numbers.length / 2 }, (_, k) => ({
			x: numbers[2 * k]!,
			y: numbers[2 * k + 1]!,
		}));
		if (match[2] === "m") paths.push([]);
		paths.at(-1)!.push({ kind: kinds[match[2] as "m"], points });
	}
	return paths;
}

/** A point of a cubic Bézier curve at t, by de Casteljau's construction. */
export function onCurve(points: readonly Point[], t: number): Point {
	let row = points;
	while (row.length > 1) {
		row = row.slice(1).map((p, i) => ({
			x: row[i]!.x * (1 - t) + p.x * t,
			y: row[i]!.y * (1 - t) + p.y * t,
		}));
	}
	return row[0]!;
}
