import type { Note } from "../drawing/index.js";
import { type Path, type Point, type Segment, segments, type Vertex } from "../geometry/index.js";
import { checkNote, type Stroke } from "./drawn.js";
import { bulge, degrees, point, real, type Tag, tag, whole } from "./dxf-tags.js";
import { dxfText } from "./dxf-text.js";
import { oneLine } from "./one-line.js";
import { fullCircle, inPieces } from "./pieces.js";

/**
 * `r2000`: AC1015 with LWPOLYLINE. `r12`: AC1009 with POLYLINE. `loose`: AC1009 whose paths are
 * LINE, ARC and CIRCLE alone, for the simplest readers.
 */
export type DxfFlavour = "r2000" | "r12" | "loose";

/** One record of the ENTITIES section, without what the version adds. */
export interface Entity {
	readonly type: string;
	readonly layer: string;
	/** Subclass marker of R2000; null for the records of R12 alone. */
	readonly subclass: string | null;
	readonly tags: readonly Tag[];
	/** R2000 repeats TEXT's marker after its tags. */
	readonly markedTwice?: boolean;
}

/** An arc of at most half a turn: longer ones magnify rounding. */
const HALF_TURN = Math.PI;
/**
 * Up to here nine decimals of a degree place an arc's ends within 1e-5 mm along the arc, a
 * hundredth of what is promised; flatter arcs need the bulge of the other flavours.
 */
const LARGEST_LOOSE_RADIUS = 1e6;
/** Characters in a string of R12, and from R2000 on (DXF reference, group code value types). */
const LONGEST_TEXT = { r2000: 2049, r12: 255, loose: 255 } as const;

/** The layer of an operation. */
export function layerOf(operation: string): string {
	return operation.toUpperCase();
}

/**
 * The records of one stroke: CIRCLE for a full circle; LINE for an open straight stroke; else
 * one polyline with bulges, or, loose, a LINE or ARC for every piece.
 *
 * @throws RangeError on an arc too flat for a loose file
 */
export function strokeEntities({ path, operation }: Stroke, flavour: DxfFlavour): Entity[] {
	const layer = layerOf(operation);
	const straight = path.points.every(({ bulge }) => bulge === 0);
	const circle = straight ? null : fullCircle(path);
	if (circle) return [circleEntity(layer, circle.centre, circle.radius)];
	const pieces = straight ? path : inPieces(path, HALF_TURN);
	if (straight && !path.closed && path.points.length === 2) {
		return [lineEntity(layer, path.points[0]!, path.points[1]!)];
	}
	if (flavour === "loose") return segments(pieces).map((s) => segmentEntity(layer, s));
	return flavour === "r2000" ? [lightPolyline(layer, pieces)] : oldPolyline(layer, pieces);
}

function circleEntity(layer: string, { x, y }: Point, radius: number): Entity {
	const tags = [...point(10, x, y), real(40, radius)];
	return { type: "CIRCLE", layer, subclass: "AcDbCircle", tags };
}

function lineEntity(layer: string, start: Point, end: Point): Entity {
	const tags = [...point(10, start.x, start.y), ...point(11, end.x, end.y)];
	return { type: "LINE", layer, subclass: "AcDbLine", tags };
}

/** ARC runs counter-clockwise only, so that the other arcs are given from their end. */
function segmentEntity(layer: string, s: Segment): Entity {
	if (s.kind === "line") return lineEntity(layer, s.start, s.end);
	if (s.radius > LARGEST_LOOSE_RADIUS) {
		throw new RangeError(`an arc of radius ${s.radius} is too flat for a loose DXF file`);
	}
	const from = s.sweep > 0 ? s.startAngle : s.startAngle + s.sweep;
	const tags = [
		...point(10, s.centre.x, s.centre.y),
		real(40, s.radius),
		degrees(50, from),
		degrees(51, from + Math.abs(s.sweep)),
	];
	return { type: "ARC", layer, subclass: null, tags };
}

function lightPolyline(layer: string, { points, closed }: Path): Entity {
	const tags = [
		whole(90, points.length),
		whole(70, closed ? 1 : 0),
		points.map(vertexTags).join(""),
	];
	return { type: "LWPOLYLINE", layer, subclass: "AcDbPolyline", tags };
}

/** A bulge left out is 0 (DXF reference, LWPOLYLINE group 42). */
function vertexTags(p: Vertex): Tag {
	const at = real(10, p.x) + real(20, p.y);
	return p.bulge === 0 ? at : at + bulge(p.bulge);
}

function oldPolyline(layer: string, { points, closed }: Path): Entity[] {
	const record = (type: string, tags: readonly Tag[]) => ({ type, layer, subclass: null, tags });
	return [
		record("POLYLINE", [whole(66, 1), ...point(10, 0, 0), whole(70, closed ? 1 : 0)]),
		...points.map((p) => record("VERTEX", [...point(10, p.x, p.y), bulge(p.bulge)])),
		record("SEQEND", []),
	];
}

/**
 * A note as TEXT, its baseline's left end at the given place.
 *
 * @throws RangeError on a note without text or size, or longer than the version's strings
 */
export function noteEntity(note: Note, flavour: DxfFlavour): Entity {
	const { at, height, turn, width } = note;
	checkNote(oneLine(note.text), height, width, at);
	const text = dxfText(note.text);
	if (text.length > LONGEST_TEXT[flavour]) {
		throw new RangeError(`a note of ${text.length} characters is too long for a DXF file`);
	}
	const tags = [
		...point(10, at.x, at.y),
		real(40, height),
		tag(1, text),
		degrees(50, turn),
		tag(7, flavour === "r2000" ? "Standard" : "STANDARD"),
	];
	return {
		type: "TEXT",
		layer: layerOf("reference"),
		subclass: "AcDbText",
		tags,
		markedTwice: true,
	};
}
