import type { Mark, Note, Part, Pens, Sheet } from "../../src/drawing/index.js";
import {
	around,
	circle,
	extents,
	grown,
	line,
	type Move,
	moved,
	type Path,
	reversed,
	STAY,
	shift,
	type Vertex,
	vertex,
} from "../../src/geometry/index.js";
import { type Expected, WORK_ORDER } from "./compare-paths.js";

export const PENS: Pens = {
	cut: { colour: "#c2185b", width: 0.1 },
	score: { colour: "#2e7d32", width: 0.1 },
	engrave: { colour: "#5d4037", width: 0.15 },
	tab: { colour: "#f9a825", width: 0.3 },
	reference: { colour: "#607d8b", width: 0.2 },
};

/** A part with nothing but a name and marks. */
export function partOf(name: string, marks: readonly Mark[]): Part {
	return {
		name,
		tool: "test",
		title: `Part ${name}`,
		stock: { material: "plywood", thickness: 3 },
		marks,
		workingEdge: "lower edge",
		working: [],
		claims: [],
		notes: ["Keep it dry."],
	};
}

interface Contents {
	readonly placed: readonly { readonly part: Part; readonly move: Move }[];
	readonly marks?: readonly Mark[];
	readonly notes?: readonly Note[];
}

/** A sheet around what it holds, with a margin of 5 mm. */
export function sheetOf(name: string, { placed, marks = [], notes = [] }: Contents): Sheet {
	const paths = [
		...placed.flatMap(({ part, move }) => part.marks.map((m) => moved(m.path, move))),
		...marks.map((m) => m.path),
	];
	const size = grown(around(paths.map(extents)), 5);
	return { name, title: `Drawing ${name}`, size, placed, marks, notes };
}

/** What must be in any file of a sheet. */
export function expectedOf({ placed, marks, notes }: Sheet): Expected {
	const all = [
		...placed.flatMap(({ part, move }) =>
			part.marks.map((m) => ({ ...m, path: moved(m.path, move), part: part.name })),
		),
		...marks.map((m) => ({ ...m, part: null })),
	];
	return { marks: WORK_ORDER.flatMap((o) => all.filter((m) => m.operation === o)), notes };
}

function closed(...points: Vertex[]): Path {
	return { points, closed: true };
}

/** 10 in over a 56 mm chord (DXF reference: bulge = 2·sagitta/chord). */
const CROWN = 0.0552866;

const GAUGE: readonly Mark[] = [
	{
		operation: "cut",
		feature: "outline",
		path: closed(
			vertex(0, 0, CROWN),
			vertex(56, 0),
			vertex(56, 18, Math.tan(Math.PI / 8)),
			vertex(54, 20),
			vertex(40, 20, -0.3),
			vertex(20, 20),
			vertex(0, 20),
		),
	},
	{ operation: "engrave", feature: "label scale", path: wave(15, 5) },
	{ operation: "score", feature: "slot 7", path: line({ x: 30, y: 2 }, { x: 30.5, y: 15 }) },
	{ operation: "cut", feature: "hole", path: reversed(circle({ x: 10, y: 12 }, 3)) },
	{ operation: "score", feature: "slot 8", path: line({ x: 33, y: 2 }, { x: 33.5, y: 15 }) },
	{ operation: "cut", feature: "keyhole", path: closed(vertex(45, 10, -20), vertex(45.4, 10)) },
	{
		operation: "engrave",
		feature: "ring",
		path: { closed: false, points: [vertex(38, 8, 400), vertex(38.01, 8)] },
	},
];

function wave(x: number, y: number): Path {
	return { closed: false, points: [vertex(x, y, 0.5), vertex(x + 5, y, -0.5), vertex(x + 10, y)] };
}

const DIMENSION: Mark = {
	operation: "reference",
	feature: "dimension width",
	path: line({ x: 0, y: -8 }, { x: 56, y: -8 }),
};

/** Lines, arcs of both bulge signs, circles, near-full circles, score lines and notes. */
export function handDrawing(): Sheet {
	return sheetOf("hand", {
		placed: [
			{ part: partOf("gauge", GAUGE), move: shift(0.5, 0.25) },
			{ part: partOf("turned", GAUGE), move: { x: 90, y: 3, turn: Math.PI / 2, mirror: false } },
			{ part: partOf("mirrored", GAUGE), move: { x: 95, y: 30, turn: 0.3, mirror: true } },
		],
		marks: [DIMENSION],
		notes: [
			{ text: "56 mm", at: { x: 20, y: -7 }, height: 2.5, turn: 0, width: 12 },
			{ text: "R 254", at: { x: 3, y: 30 }, height: 3.5, turn: -0.7, width: 11.25 },
		],
	});
}

/** A triangle, for what a second document must not disturb. */
export function otherDrawing(): Sheet {
	const path = closed(vertex(-3, -4), vertex(7, -4), vertex(2, 11));
	const part = partOf("triangle", [{ operation: "cut", feature: "outline", path }]);
	return sheetOf("other", { placed: [{ part, move: STAY }] });
}

/** One part with one mark, as it stands. */
export function drawingOf(path: Path, operation: Mark["operation"] = "cut"): Sheet {
	return sheetOf("one", {
		placed: [{ part: partOf("one", [{ operation, feature: "thing", path }]), move: STAY }],
	});
}
