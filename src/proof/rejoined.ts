import { type Path, segments, vertex } from "../geometry/index.js";
import { problem } from "../problem/index.js";
import { joinedPieces } from "./join-pieces.js";
import type { PromisedFile, ReadDrawing, ReadStroke } from "./types.js";

/**
 * A drawing whose cuts were exploded into pieces, as drawing programs do it, with the pieces
 * joined again where they touch, and a warning that they were. Others are returned as they are.
 */
export function rejoined(drawing: ReadDrawing, { placed }: PromisedFile): ReadDrawing {
	const isPiece = ({ operation, path }: ReadStroke) => operation === "cut" && !path.closed;
	const open = drawing.strokes.filter(isPiece);
	const meant = placed.reduce((sum, { part }) => sum + part.open, 0);
	if (open.length <= meant) return drawing;
	const pieces = open.flatMap(({ path }) => segments(path).map(pieceOf));
	const joined = joinedPieces(pieces).map(({ path }) => path);
	if (joined.length >= open.length && !joined.some((path) => path.closed)) return drawing;
	const { layer } = open[0]!;
	const strokes: ReadStroke[] = [
		...drawing.strokes.filter((s) => !isPiece(s)),
		...joined.map((path): ReadStroke => ({ operation: "cut", layer, path })),
	];
	const facts = { pieces: open.length, joined: joined.length };
	const told = { ...problem("pieces-joined", [], facts), severity: "warning" as const };
	return { ...drawing, strokes, findings: [...drawing.findings, told] };
}

function pieceOf(segment: ReturnType<typeof segments>[number]): Path {
	const { start, end } = segment;
	const bulge = segment.kind === "arc" ? Math.tan(segment.sweep / 4) : 0;
	return { closed: false, points: [vertex(start.x, start.y, bulge), vertex(end.x, end.y)] };
}
