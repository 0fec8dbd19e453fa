import { OPERATIONS, type Operation } from "../drawing/index.js";
import { type Path, pathLength } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import type { Problem } from "../problem/index.js";
import { asMade } from "./as-made.js";
import { found } from "./found.js";
import { labelPaths } from "./label-paths.js";
import { type LaidStroke, partName } from "./laid-strokes.js";
import type { PromisedFile, ReadDrawing } from "./types.js";

/** Paths on layers that stand for no operation, and numbers of paths that are not those promised. */
export function countFaults(
	drawing: ReadDrawing,
	laid: readonly LaidStroke[],
	promised: PromisedFile,
	letters: Lettering | null,
): Problem[] {
	const own = OPERATIONS.filter((operation) => operation !== "reference");
	return [
		...unknownLayers(laid),
		...own.flatMap((operation) => {
			const differs = countDiffers(operation, laid, promised);
			const isJoined = differs.length > 0 && operation === "engrave" && drawing.format === "dxf";
			return isJoined && isLettered(laid, promised, letters) ? [] : differs;
		}),
		...needlessReference(drawing, promised),
	];
}

function unknownLayers(laid: readonly LaidStroke[]): Problem[] {
	const strays = laid.filter(({ operation }) => operation === null);
	const layers = [...new Set(strays.map(({ layer }) => layer))];
	return layers.map((layer) => {
		const there = strays.filter((stroke) => stroke.layer === layer);
		const { x, y } = there[0]!.path.points[0]!;
		return found("layer-unknown", "error", { layer, count: there.length, x, y });
	});
}

function countDiffers(
	operation: Operation,
	laid: readonly LaidStroke[],
	promised: PromisedFile,
): Problem[] {
	const meant = promised.placed.map(({ part }) => part.marks[operation] ?? 0);
	const there = laid.filter((stroke) => stroke.operation === operation);
	const total = meant.reduce((sum, n) => sum + n, 0);
	if (there.length === total) return [];
	const parts = promised.placed.flatMap(({ part }, i) =>
		there.filter((stroke) => stroke.part === i).length === meant[i] ? [] : [part.name],
	);
	const strays = there.filter((stroke) => partName(promised, stroke) === "").length;
	const facts = { operation, found: there.length, promised: total, parts, strays };
	return [found("count-differs", "error", facts)];
}

/** What a length of engraving may be off by, mm, and its share of it where arcs are drawn for a stretch. */
const LENGTH = 0.01;
const OF_STRETCHED = 2e-4;

/**
 * Whether all that is engraved is as long as the labels are. A DXF of loose lines and arcs does not
 * say where its paths end, so that strokes which meet are read as one and are fewer than promised.
 */
function isLettered(
	laid: readonly LaidStroke[],
	{ placed, stretch }: PromisedFile,
	letters: Lettering | null,
): boolean {
	const engraved = laid.filter(({ operation }) => operation === "engrave");
	const meant = placed.map(({ part }) => labelPaths(part, letters));
	const isComplete = placed.every(
		({ part }, i) => part.marks.engrave === undefined || part.marks.engrave === meant[i]!.length,
	);
	if (!isComplete || engraved.length > meant.flat().length) return false;
	const is = lengthOf(engraved.map(({ path }) => asMade(path, stretch)));
	const should = lengthOf(meant.flat());
	const isStretched = stretch.x !== 1 || stretch.y !== 1;
	return Math.abs(is - should) <= LENGTH + (isStretched ? OF_STRETCHED * should : 0);
}

function lengthOf(paths: readonly Path[]): number {
	return paths.reduce((sum, path) => sum + pathLength(path), 0);
}

function needlessReference({ strokes, texts }: ReadDrawing, { dimensions }: PromisedFile) {
	const there = strokes.filter(({ operation }) => operation === "reference").length + texts.length;
	if (dimensions || there === 0) return [];
	const facts = { operation: "reference", found: there, promised: 0, parts: [], strays: 0 };
	return [found("count-differs", "error", facts)];
}
