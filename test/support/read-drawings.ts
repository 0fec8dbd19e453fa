import { pathMoved } from "../../src/cutting/index.js";
import type { Operation, Part } from "../../src/drawing/index.js";
import { around, extents, type Move, moved, STAY, stretched } from "../../src/geometry/index.js";
import type { PromisedFile, PromisedPart, ReadDrawing, ReadStroke } from "../../src/proof/types.js";

/** What a manifest says of a part. */
export function promisedPart(nominal: Part, cut: Part = nominal, kerf = 0): PromisedPart {
	const marks: Partial<Record<Operation, number>> = {};
	for (const { operation } of cut.marks) marks[operation] = (marks[operation] ?? 0) + 1;
	const cuts = nominal.marks.filter((m) => m.operation === "cut");
	return {
		name: nominal.name,
		tool: nominal.tool,
		stock: nominal.stock,
		claims: nominal.claims,
		working: nominal.working,
		box: around(nominal.marks.map((m) => extents(m.path))),
		marks,
		open: cut.marks.filter((m) => m.operation === "cut" && !m.path.closed).length,
		outline: cuts.map((m) => m.path),
		scores: nominal.marks.filter((m) => m.operation === "score").map((m) => m.path),
		kerf: 2 * pathMoved(nominal, kerf),
		nominal: nominal.nominal === true,
	};
}

/** Coordinates as an SVG holds them. */
const sixDecimals = (x: number) => Math.round(x * 1e6) / 1e6;

/** The strokes of a part at its place, as a file's reader gives them. */
export function strokesOf(part: Part, move: Move = STAY, stretch = { x: 1, y: 1 }): ReadStroke[] {
	return part.marks.map(({ operation, path }): ReadStroke => {
		const { closed, points } = stretched(moved(path, move), stretch);
		const rounded = points.map((v) => ({ ...v, x: sixDecimals(v.x), y: sixDecimals(v.y) }));
		return { operation, layer: operation.toUpperCase(), path: { closed, points: rounded } };
	});
}

/** A drawing of some strokes. */
export function drawingOf(strokes: readonly ReadStroke[]): ReadDrawing {
	return { format: "dxf", page: null, strokes, texts: [], findings: [] };
}

/** What a manifest says of a file with parts at their places. */
export function promisedFile(
	placed: PromisedFile["placed"],
	values: Partial<PromisedFile> = {},
): PromisedFile {
	const file = { name: "a.dxf", format: "dxf", stretch: { x: 1, y: 1 }, bed: null } as const;
	return { ...file, dimensions: false, placed, ...values };
}
