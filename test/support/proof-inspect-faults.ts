import { layOut } from "../../src/cutting/index.js";
import {
	circle,
	line,
	type Move,
	moved,
	open,
	type Path,
	type Point,
	rectangle,
	reversed,
	type Segment,
	STAY,
	segments,
	shift,
	startedAt,
	vertex,
} from "../../src/geometry/index.js";
import type { Problem } from "../../src/problem/index.js";
import { inspect } from "../../src/proof/inspect.js";
import type { PromisedFile, ReadDrawing, ReadStroke } from "../../src/proof/types.js";
import { jobWith, LETTERS, madeParts } from "./made-parts.js";
import { drawingOf, promisedFile, promisedPart, strokesOf } from "./read-drawings.js";

const STRINGS = { strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 } };
const MAKE = ["notched-straightedge", "radius-gauge", "slot-strip", "kerf-coupon"];
const { parts } = madeParts(jobWith(STRINGS, MAKE));
const partNamed = (name: string) => parts.find((part) => part.name === name)!;

/** An ordinary straightedge, gauge, strip and coupon. */
export const BAR = partNamed("notched-straightedge");
export const GAUGE = partNamed("radius-gauge-concave");
export const STRIP = partNamed("slot-strip");
export const COUPON = partNamed("kerf-coupon");

/** A drawing and what it should hold. */
export interface Drawn {
	readonly drawing: ReadDrawing;
	readonly promised: PromisedFile;
}

/** A part in its own file, undamaged. */
export function drawn(part: typeof BAR, values: Partial<PromisedFile> = {}): Drawn {
	const promised = promisedFile([{ part: promisedPart(part), move: STAY }], values);
	return { drawing: drawingOf(strokesOf(part)), promised };
}

/** Two gauges on a bed that has just room for them, undamaged. */
export function drawnBed(
	stretch: Point = { x: 1, y: 1 },
): Drawn & { readonly moves: readonly Move[] } {
	const bed = { size: { x: 140, y: 120 }, margin: 5, spacing: 3 };
	const laid = layOut([GAUGE, GAUGE], bed);
	if (!laid.ok || laid.layouts.length !== 1) throw new Error("the gauges do not fit");
	const { placed } = laid.layouts[0]!;
	const part = promisedPart(GAUGE);
	return {
		moves: placed.map(({ move }) => move),
		drawing: drawingOf(placed.flatMap((p) => strokesOf(p.part, p.move, stretch))),
		promised: promisedFile(
			placed.map(({ move }) => ({ part, move })),
			{ bed, stretch },
		),
	};
}

type Change = (strokes: readonly ReadStroke[]) => readonly ReadStroke[];

/** The same with other strokes. */
export function changed({ drawing, promised }: Drawn, change: Change): Drawn {
	return { drawing: { ...drawing, strokes: change(drawing.strokes) }, promised };
}

/** The same with every path changed. */
export function everyPath(from: Drawn, change: (path: Path) => Path): Drawn {
	return changed(from, (strokes) => strokes.map((s) => ({ ...s, path: change(s.path) })));
}

const isOutline = ({ operation, path }: ReadStroke) =>
	operation === "cut" && path.closed && path.points.length > 4;

/** The same with its outline changed. */
export function otherOutline(from: Drawn, change: (path: Path) => Path): Drawn {
	return changed(from, (strokes) => {
		const outline = strokes.findLast(isOutline)!;
		return strokes.map((s) => (s === outline ? { ...s, path: change(s.path) } : s));
	});
}

/** The same with one more stroke. */
export function with1(from: Drawn, operation: ReadStroke["operation"], path: Path): Drawn {
	const layer = operation?.toUpperCase() ?? "0";
	return changed(from, (strokes) => [...strokes, { operation, layer, path }]);
}

export function scaled(path: Path, x: number, y = x): Path {
	return { ...path, points: path.points.map((v) => ({ ...v, x: v.x * x, y: v.y * y })) };
}

const LABEL = BAR.marks.find((m) => m.operation === "engrave")!.path;
const OUTLINE = BAR.marks.find((m) => m.feature === "outline")!.path;
const CORNER = OUTLINE.points[5]!;

const HOLE = segments(BAR.marks.find((m) => m.operation === "cut" && m.path !== OUTLINE)!.path)[0]!;

/** A tenth of a turn around the same centre, its radius larger by so much. */
function arcBeside(hole: Segment, by: number): Path {
	if (hole.kind !== "arc") throw new Error("no hole");
	const on = (angle: number) => {
		const radius = hole.radius + by;
		return [
			hole.centre.x + radius * Math.cos(angle),
			hole.centre.y + radius * Math.sin(angle),
		] as const;
	};
	const sweep = Math.PI / 5;
	return open(vertex(...on(0.4), Math.tan(sweep / 4)), vertex(...on(0.4 + sweep)));
}

/** The hole begun at another angle, clockwise if it was not and the other way round. */
function turnedHole(angle: number): Path {
	if (HOLE.kind !== "arc") throw new Error("no hole");
	const { centre, radius, sweep } = HOLE;
	const around = moved(circle({ x: 0, y: 0 }, radius), { ...centre, turn: angle, mirror: false });
	return sweep > 0 ? reversed(around) : around;
}

/** Where the outline's vertex is that lies nearest to a working edge. */
function onWorkingEdge(path: Path): Path {
	const at = BAR.working.flatMap((w) => w.points)[0]!;
	const away = path.points.map((p) => Math.hypot(p.x - at.x, p.y - at.y));
	return startedAt(path, away.indexOf(Math.min(...away)));
}

const PAGE = { minX: -100, minY: -100, maxX: 500, maxY: 200 };

/** Damages by what they are, each with the codes of what must be found. */
export const DAMAGES: readonly (readonly [
	title: string,
	damage: () => Drawn,
	...codes: string[],
])[] = [
	["the outline opened at its last corner", () => otherOutline(drawn(BAR), opened), "contour-open"],
	["a line of a coupon closed", () => closedLine(), "contour-joined"],
	[
		"two corners of the outline exchanged",
		() => otherOutline(drawn(BAR), twisted),
		"contour-crosses-itself",
	],
	[
		"a line drawn across the bar",
		() => with1(drawn(BAR), "cut", line({ x: 200.5, y: -9 }, { x: 200.5, y: 99 })),
		"count-differs",
		"contour-open",
		"cuts-cross",
	],
	[
		"a hole drawn across the outline",
		() => with1(drawn(BAR), "cut", circle(CORNER, 1.5)),
		"count-differs",
		"cuts-cross",
	],
	["the outline there twice", () => with1(drawn(BAR), "cut", OUTLINE), "count-differs", "doubled"],
	[
		"a stretch of the outline there twice",
		() => with1(drawn(BAR), "cut", rightSide()),
		"count-differs",
		"contour-open",
		"doubled",
	],
	[
		"an arc of the hole there twice, 3 µm beside it",
		() => with1(drawn(BAR), "cut", arcBeside(HOLE, 0.003)),
		"count-differs",
		"contour-open",
		"doubled",
	],
	[
		"the hole there twice, begun elsewhere and run the other way",
		() => with1(drawn(BAR), "cut", turnedHole(1)),
		"count-differs",
		"doubled",
	],
	[
		"a stroke of a label there twice",
		() => with1(drawn(BAR), "engrave", LABEL),
		"count-differs",
		"doubled",
	],
	["a stroke missing", () => changed(drawn(BAR), (s) => s.slice(1)), "count-differs"],
	["a score made a cut", () => scoreMadeCut(), "count-differs", "count-differs", "contour-open"],
	[
		"a path on a layer of its own",
		() => with1(drawn(BAR), null, line({ x: 5, y: 12 }, { x: 9, y: 12 })),
		"layer-unknown",
	],
	[
		"a reference layer that is not promised",
		() => with1(drawn(BAR), "reference", line({ x: 5, y: 12 }, { x: 9, y: 12 })),
		"count-differs",
	],
	[
		"a crumb of a path",
		() => with1(drawn(BAR), "score", line({ x: 5, y: 12 }, { x: 5.005, y: 12 })),
		"count-differs",
		"path-too-short",
	],
	["a page that is too narrow", () => pageOf(drawn(BAR), { ...PAGE, maxX: 300 }), "outside-page"],
	[
		"a begin on the working edge",
		() => otherOutline(drawn(BAR), onWorkingEdge),
		"start-on-working-edge",
	],
	["everything in inches", () => everyPath(drawn(BAR), (p) => scaled(p, 1 / 25.4)), "unit-slip"],
	[
		"inches taken for millimetres twice",
		() => everyPath(drawn(STRIP), (p) => scaled(p, 25.4)),
		"unit-slip",
	],
	["96 dots taken for 72", () => everyPath(drawn(STRIP), (p) => scaled(p, 96 / 72)), "unit-slip"],
	["72 dots taken for 96", () => everyPath(drawn(GAUGE), (p) => scaled(p, 72 / 96)), "unit-slip"],
	[
		"centimetres taken for millimetres",
		() => everyPath(drawn(COUPON), (p) => scaled(p, 0.1)),
		"unit-slip",
	],
	[
		"a bar upside down",
		() => everyPath(drawn(BAR), (p) => moved(p, { ...shift(3, 7), mirror: true })),
		"mirrored",
	],
	[
		"a symmetric gauge's other side",
		() => everyPath(drawn(GAUGE), (p) => moved(p, { ...STAY, turn: Math.PI, mirror: true })),
		"mirrored",
	],
	["a part nearer to another", () => partMoved(-0.5), "parts-too-near"],
	["a part in the margin", () => partMoved(20), "outside-bed"],
];

function opened({ points }: Path): Path {
	return { points: [...points.slice(0, -1), { ...points.at(-1)!, bulge: 0 }], closed: false };
}

/** The corners of the first notch's floor change their places. */
function twisted(path: Path): Path {
	const points = path.points.map((p) => vertex(p.x, p.y));
	const floor = points.findIndex((p, i) => {
		const before = points[i - 1];
		return before && p.y === before.y && p.y > 0 && Math.abs(p.x - before.x) < 5;
	});
	const [a, b] = [points[floor - 1]!, points[floor]!];
	return { closed: true, points: points.with(floor - 1, b).with(floor, a) };
}

/** The middle of the bar's longest straight side. */
function rightSide(): Path {
	const { points } = OUTLINE;
	const length = (i: number) =>
		Math.hypot(points[i + 1]!.x - points[i]!.x, points[i + 1]!.y - points[i]!.y);
	const straight = points.slice(0, -1).flatMap((p, i) => (p.bulge === 0 ? [i] : []));
	const i = straight.reduce((a, b) => (length(b) > length(a) ? b : a));
	const between = (u: number) =>
		vertex(
			points[i]!.x + u * (points[i + 1]!.x - points[i]!.x),
			points[i]!.y + u * (points[i + 1]!.y - points[i]!.y),
		);
	return open(between(0.7), between(0.4));
}

function closedLine(): Drawn {
	return changed(drawn(COUPON), (strokes) => {
		const i = strokes.findIndex((s) => s.operation === "cut" && !s.path.closed);
		const [a] = strokes[i]!.path.points;
		return strokes.with(i, { ...strokes[i]!, path: rectangle(a!.x + 1, 8, a!.x + 1.5, 9) });
	});
}

function scoreMadeCut(): Drawn {
	return changed(drawn(STRIP), (strokes) => {
		const i = strokes.findIndex(
			(s) =>
				s.operation === "score" && !s.path.closed && s.path.points[0]!.x === s.path.points[1]!.x,
		);
		return strokes.with(i, { ...strokes[i]!, operation: "cut" });
	});
}

function pageOf({ drawing, promised }: Drawn, page: ReadDrawing["page"]): Drawn {
	return { drawing: { ...drawing, page }, promised };
}

/** The second part of a bed farther from the first by so much, mm. */
function partMoved(by: number): Drawn {
	const { moves, ...bed } = drawnBed();
	const [a, b] = moves;
	const [dx, dy] = [b!.x - a!.x, b!.y - a!.y];
	const far =
		Math.abs(dx) > Math.abs(dy) ? shift(Math.sign(dx) * by, 0) : shift(0, Math.sign(dy) * by);
	const count = bed.drawing.strokes.length / 2;
	return changed(bed, (strokes) =>
		strokes.map((s, i) => (i < count ? s : { ...s, path: moved(s.path, far) })),
	);
}

/** What is found in damaged drawings, every kind of fault once at least. */
export function problemsOfInspection(): readonly Problem[] {
	return DAMAGES.flatMap(([, damage]) => {
		const { drawing, promised } = damage();
		return inspect(drawing, promised, LETTERS);
	});
}
