import {
	around,
	extents,
	line,
	type Path,
	type Point,
	type Segment,
	segments,
	selfCrossings,
} from "../../src/geometry/index.js";
import type { DxfFlavour } from "../../src/writers/index.js";
import {
	circleFault,
	type Expected,
	type Finding,
	gap,
	isCircle,
	isMeasurable,
	openCuts,
	pathFault,
	repeatedVertices,
} from "./compare-paths.js";
import { type DxfEntity, type DxfFile, numberAt, textAt } from "./read-dxf.js";

/** Nine decimals put a point within 0.7e-9 mm, the middle of a half circle within 1.3e-9. */
const NEAR = 2e-9;
/** An ARC's ends follow from degrees with nine decimals: half a unit is 8.7e-12 rad. */
const NEAR_BY_ANGLE = 1e-11;

/** How far the points of some paths may be off in a file, mm. */
function nearOf(paths: readonly Path[], byAngle: boolean): number {
	if (!byAngle) return NEAR;
	const radii = paths.flatMap(segments).map((s) => (s.kind === "arc" ? s.radius : 0));
	return NEAR + NEAR_BY_ANGLE * Math.max(0, ...radii);
}

/**
 * Contours on the cut layer closed, but for those that are expected open; no vertex repeated,
 * nothing crossing itself.
 */
export function contours(
	{ entities }: DxfFile,
	flavour: DxfFlavour,
	expected?: Expected,
): Finding[] {
	const found: Finding[] = [];
	const gaps = entities.filter(({ layer, path }) => layer === "CUT" && path && !path.closed);
	if (flavour !== "loose" && gaps.length > openCuts(expected)) {
		found.push(...gaps.map(({ type }) => ({ rule: "open-contour", detail: type })));
	}
	for (const { type, layer, path } of entities) {
		if (!path) continue;
		for (const i of repeatedVertices(path)) found.push({ rule: "repeated-vertex", detail: `${i}` });
		if (isMeasurable(path) && selfCrossings(path).length > 0) {
			found.push({ rule: "self-crossing", detail: `${type} on ${layer}` });
		}
	}
	if (flavour === "loose") found.push(...looseEnds(entities, 2 * openCuts(expected)));
	return found;
}

/** In a loose file every end on the cut layer must meet exactly one other end, but for `free` ones. */
function looseEnds(entities: readonly DxfEntity[], free: number): Finding[] {
	const ends = entities.flatMap(({ layer, path }) =>
		layer === "CUT" && path && !path.closed ? [path.points[0]!, path.points.at(-1)!] : [],
	);
	const met = (end: Point) => ends.filter((other) => gap(end, other) < 1e-6).length - 1;
	const single = ends.filter((end) => met(end) === 0);
	const wrong = ends.filter((end) => met(end) > 1);
	return [...wrong, ...(single.length > free ? single : [])].map((end) => ({
		rule: "open-contour",
		detail: `${end.x}, ${end.y} meets ${met(end)}`,
	}));
}

/** $EXTMIN and $EXTMAX are the box of all paths. */
export function extentsAgree({ header, entities }: DxfFile): Finding[] {
	const paths = entities.flatMap(({ path }) => (path && isMeasurable(path) ? [path] : []));
	if (paths.length === 0) return [{ rule: "extents", detail: "nothing drawn" }];
	const { minX, minY, maxX, maxY } = around(paths.map(extents));
	const least = header.get("$EXTMIN") ?? [];
	const most = header.get("$EXTMAX") ?? [];
	const off = Math.max(
		Math.abs(numberAt(least, 10) - minX),
		Math.abs(numberAt(least, 20) - minY),
		Math.abs(numberAt(most, 10) - maxX),
		Math.abs(numberAt(most, 20) - maxY),
	);
	return off <=
		nearOf(
			paths,
			entities.some((e) => e.type === "ARC"),
		)
		? []
		: [{ rule: "extents", detail: `${off} off` }];
}

/** What one mark must become: the type and path of each entity, in order. */
interface Wanted {
	readonly type: string;
	readonly layer: string;
	readonly path: Path;
}

/** The entities that a drawing must become in a flavour. */
export function wantedEntities({ marks }: Expected, flavour: DxfFlavour): Wanted[] {
	return marks.flatMap(({ operation, path }): Wanted[] => {
		const layer = operation.toUpperCase();
		const all = segments(path);
		if (isCircle(path)) return [{ type: "CIRCLE", layer, path }];
		if (flavour === "loose") return all.flatMap((s) => looseOf(s, layer));
		const straight = !path.closed && all.length === 1 && all[0]!.kind === "line";
		const type = flavour === "r2000" ? "LWPOLYLINE" : "POLYLINE";
		return [{ type: straight ? "LINE" : type, layer, path }];
	});
}

function looseOf(s: Segment, layer: string): Wanted[] {
	if (s.kind === "line") return [{ type: "LINE", layer, path: line(s.start, s.end) }];
	const { start, end, sweep, centre, radius, startAngle } = s;
	const count = Math.abs(sweep) > Math.PI + 1e-6 ? 2 : 1;
	const middle = {
		x: centre.x + radius * Math.cos(startAngle + sweep / 2),
		y: centre.y + radius * Math.sin(startAngle + sweep / 2),
	};
	const stops = count === 1 ? [start, end] : [start, middle, end];
	return stops.slice(1).map((to, i) => {
		const ccw = sweep > 0;
		const [a, b] = ccw ? [stops[i]!, to] : [to, stops[i]!];
		const bulge = Math.tan(Math.abs(sweep) / count / 4);
		const points = [
			{ ...a, bulge },
			{ ...b, bulge: 0 },
		];
		return { type: "ARC", layer, path: { closed: false, points } };
	});
}

/** Number and kind of entities per layer, then the geometry of each, then the notes. */
export function contents(file: DxfFile, flavour: DxfFlavour, expected: Expected): Finding[] {
	const wanted = wantedEntities(expected, flavour);
	const drawn = file.entities.filter((e) => e.type !== "TEXT");
	const texts = file.entities.filter((e) => e.type === "TEXT");
	const given = drawn.map((e) => `${e.layer} ${e.type}`).join(", ");
	const due = wanted.map((w) => `${w.layer} ${w.type}`).join(", ");
	if (given !== due) return [{ rule: "count", detail: `${given} instead of ${due}` }];
	if (texts.length !== expected.notes.length) {
		return [{ rule: "count", detail: `${texts.length} texts` }];
	}
	const found = wanted.flatMap(({ type, path }, i): Finding[] => {
		const fault = entityFault(type, path, drawn[i]!.path);
		return fault ? [{ rule: "geometry", detail: `${type} ${i}: ${fault}` }] : [];
	});
	return [...found, ...noteFaults(texts, expected)];
}

function entityFault(type: string, expected: Path, found: Path | null): string | null {
	if (!found || !isMeasurable(found)) return "not measurable";
	if (type === "CIRCLE") return circleFault(expected, found, NEAR);
	return pathFault(expected, found, nearOf([expected], type === "ARC"));
}

function noteFaults(texts: readonly DxfEntity[], { notes }: Expected): Finding[] {
	return notes.flatMap(({ at, height, turn }, i): Finding[] => {
		const { tags, layer } = texts[i]!;
		const place = { x: numberAt(tags, 10), y: numberAt(tags, 20) };
		const degrees = numberAt(tags, 50);
		const over = (degrees * Math.PI) / 180 - turn;
		const turned = Math.hypot(Math.cos(over) - 1, Math.sin(over));
		const near = Math.abs(numberAt(tags, 40) - height) <= NEAR && turned < 1e-9;
		const text = textAt(tags, 1) ?? "";
		const neutral = /^[ -~]+$/.test(text) && !/%%|\^|\\(?!U\+[0-9A-F]{4})/.test(text);
		const found: Finding[] = [];
		if (!(gap(place, at) <= NEAR) || !near) found.push({ rule: "note", detail: `${i}` });
		if (layer !== "REFERENCE") found.push({ rule: "note-layer", detail: layer });
		if (!neutral) found.push({ rule: "note-text", detail: text });
		return found;
	});
}
