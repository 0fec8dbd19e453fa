import { compensated } from "../src/cutting/index.js";
import type { Mark, Part } from "../src/drawing/index.js";
import {
	circle,
	closed,
	filletedAt,
	offset,
	type Path,
	type Point,
	reversed,
	vertex,
} from "../src/geometry/index.js";
import { trimmed } from "../src/units/index.js";
import { pairOf, pathData } from "../src/writers/svg-path.js";

/** Ten times what a laser cuts, mm, so that it is seen. */
const KERF = 1.6;
/** What the picture covers, mm: left, lower, right and upper end. */
const [LEFT, LOW, RIGHT, HIGH] = [-5, -10, 107, 41];
/** Size of the text, mm. */
const TEXT = 2.5;
/** The colours of the usual pens. */
const COLOURS = { path: "#0b7a75", nominal: "#b5530d", ink: "#5f6673", part: "#5b3fa0" } as const;

/** The corner of the notch that is shown again, larger, and where. */
const DETAIL = { of: { x: 27, y: 8 }, reach: 2.6, at: { x: 88, y: 18 }, scale: 5 } as const;

const OUTLINE = filletedAt(
	closed(
		vertex(0, 0),
		vertex(15, 0),
		vertex(15, 8),
		vertex(27, 8),
		vertex(27, 0),
		vertex(60, 0),
		vertex(60, 30),
		vertex(0, 30),
	),
	[[7, 5]],
);
const HOLE = reversed(circle({ x: 45, y: 13 }, 6));

function cut(feature: string, path: Path): Mark {
	return { operation: "cut", path, feature };
}

const PART: Part = {
	name: "part",
	tool: "picture",
	title: "A part with a notch and a hole",
	stock: { material: "acrylic", thickness: 3 },
	marks: [cut("hole", HOLE), cut("outline", OUTLINE)],
	workingEdge: "none",
	working: [],
	claims: [],
	notes: [],
};

/** A compensated part in three layers: what is left of it, the beam's way, nominal contours. */
function layers(scale: number): string[] {
	const told = compensated(PART, KERF);
	if (!told.ok) throw new Error(JSON.stringify(told.problems));
	const paths = told.part.marks.map((m) => m.path);
	const left = offset(paths, -KERF / 2).paths;
	const data = (of: readonly Path[]) => of.map(pathData).join(" ");
	const width = (mm: number) => trimmed(mm / scale, 3);
	return [
		`<path d="${data(left)}" fill="${COLOURS.part}" fill-opacity="0.2" fill-rule="evenodd"/>`,
		`<path d="${data(paths)}" fill="none" stroke="${COLOURS.path}" stroke-opacity="0.25" stroke-width="${KERF}" stroke-linejoin="round"/>`,
		`<path d="${data([OUTLINE, HOLE])}" fill="none" stroke="${COLOURS.nominal}" stroke-width="${width(0.3)}"/>`,
		`<path d="${data(paths)}" fill="none" stroke="${COLOURS.path}" stroke-width="${width(0.35)}" stroke-dasharray="${width(1.6)} ${width(0.8)}"/>`,
	];
}

function numbers({ x, y }: Point): readonly [string, string] {
	return pairOf({ x, y })
		.split(" ")
		.map((n) => trimmed(Number(n), 6)) as [string, string];
}

function text(at: Point, words: string, colour: string = COLOURS.ink, anchor = "start"): string {
	const [x, y] = numbers(at);
	return `<text x="${x}" y="${y}" fill="${colour}" text-anchor="${anchor}">${words}</text>`;
}

function stroke(colour: string, ...points: readonly [Point, Point, ...Point[]]): string {
	const path = { closed: false, points: points.map(({ x, y }) => vertex(x, y)) };
	return `<path d="${pathData(path)}" fill="none" stroke="${colour}" stroke-width="0.2"/>`;
}

function ring({ x, y }: Point, radius: number, colour: string, more = ""): string {
	const [cx, cy] = numbers({ x, y });
	return `<circle cx="${cx}" cy="${cy}" r="${trimmed(radius, 6)}" fill="none" stroke="${colour}" stroke-width="0.25"${more}/>`;
}

/** A slim arrowhead with its tip at a point, pointing up (1) or down (−1). */
function head({ x, y }: Point, way: 1 | -1): string {
	const back = y - way * 2;
	const path = closed(vertex(x, y), vertex(x - 0.4, back), vertex(x + 0.4, back));
	return `<path d="${pathData(path)}" fill="${COLOURS.ink}"/>`;
}

/** A leader with a dot at the place that it speaks of. */
function leader(colour: string, ...points: readonly [Point, Point, ...Point[]]): string[] {
	const [x, y] = numbers(points[0]);
	return [stroke(colour, ...points), `<circle cx="${x}" cy="${y}" r="0.5" fill="${colour}"/>`];
}

/** The dimension of a band between two heights right of the part, arrows outside. */
function dimension(low: number, high: number, x: number, words: string): string[] {
	return [
		stroke(COLOURS.ink, { x: 62, y: low }, { x: x + 1, y: low }),
		stroke(COLOURS.ink, { x: 62, y: high }, { x: x + 1, y: high }),
		stroke(COLOURS.ink, { x, y: low - 4 }, { x, y: low }),
		stroke(COLOURS.ink, { x, y: high }, { x, y: high + 4 }),
		head({ x, y: low }, 1),
		head({ x, y: high }, -1),
		text({ x: x + 1.5, y: (low + high) / 2 - 0.9 }, words),
	];
}

/** What is said of the part at its place. */
function labels(): string[] {
	return [
		...leader(COLOURS.path, { x: 12, y: 30 + KERF / 2 }, { x: 12, y: 35 }),
		text({ x: 3, y: 36 }, "path: in the waste, k/2 outside the outline", COLOURS.path),
		...leader(COLOURS.path, { x: 21, y: 8 - KERF / 2 }, { x: 21, y: -4.8 }),
		text({ x: 20.5, y: -7.5 }, "and k/2 inside a notch or hole", COLOURS.path),
		...leader(COLOURS.nominal, { x: 6, y: 0 }, { x: 6, y: -4.8 }),
		text({ x: -3.5, y: -7.5 }, "nominal outline", COLOURS.nominal),
		text({ x: 5, y: 23 }, "what is left has the nominal outline", COLOURS.part),
		text({ x: 45, y: 12.2 }, "waste", COLOURS.ink, "middle"),
		...dimension(-KERF, 0, 66, "k: width of the cut"),
	];
}

/** The notch's corner again, larger, with the beam that cannot reach into it. */
function detail(): string[] {
	const { of, at, reach, scale } = DETAIL;
	const radius = reach * scale;
	const [x, y] = numbers(at);
	const [fromX, fromY] = numbers({ x: -of.x, y: -of.y });
	const beam = {
		x: at.x - (KERF / 2) * scale,
		y: at.y - (KERF / 2) * scale,
	};
	const r = (KERF / 2) * scale;
	const end = { x: at.x + 3, y: at.y + 3 };
	return [
		`<clipPath id="lens"><circle cx="${x}" cy="${y}" r="${radius}"/></clipPath>`,
		`<g clip-path="url(#lens)"><g transform="translate(${x} ${y}) scale(${scale}) translate(${fromX} ${fromY})">`,
		...layers(scale),
		"</g></g>",
		ring(beam, r, COLOURS.path),
		...leader(COLOURS.path, beam, end),
		text({ x: end.x + 0.4, y: end.y + 0.2 }, "k/2", COLOURS.path),
		ring(at, radius, COLOURS.ink),
		text({ x: at.x, y: at.y + radius + 4.7 }, "A: an inside corner", COLOURS.part, "middle"),
		text({ x: at.x, y: at.y + radius + 1.5 }, "keeps a fillet of k/2", COLOURS.part, "middle"),
		ring(of, reach, COLOURS.ink),
		text({ x: of.x + 2.6, y: of.y + 1.5 }, "A"),
	];
}

/** The picture of what a kerf does to a path, as SVG. */
export function kerfPicture(): string {
	const [width, height] = [RIGHT - LEFT, HIGH - LOW];
	return `${[
		`<svg xmlns="http://www.w3.org/2000/svg" width="${width * 8}" height="${height * 8}" viewBox="${LEFT} ${-HIGH} ${width} ${height}" font-family="sans-serif" font-size="${TEXT}">`,
		"<title>Where a path runs for a cut of the width k, and what is left</title>",
		`<rect x="${LEFT}" y="${-HIGH}" width="${width}" height="${height}" fill="#ffffff"/>`,
		...layers(1),
		...labels(),
		...detail(),
		"</svg>",
	].join("\n")}\n`;
}
