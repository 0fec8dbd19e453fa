import type { LabelClaim, Mark, Part } from "../../src/drawing/index.js";
import {
	contains,
	distanceTo,
	extents,
	type Path,
	type Point,
	pointAt,
	type Segment,
	segments,
	selfCrossings,
	signedArea,
} from "../../src/geometry/index.js";
import { outlineOf } from "./measure-part.js";
import {
	overlap,
	overlaps,
	type Rectangle,
	strokeRectangle,
	turnedRectangle,
} from "./rectangles.js";

/** Points of a path: its vertices and two more on every arc. */
function pointsOn(path: Path): Point[] {
	const all = segments(path);
	return [
		...path.points,
		...all.flatMap((s) => (s.kind === "arc" ? [pointAt(s, 1 / 3), pointAt(s, 2 / 3)] : [])),
	];
}

function distanceToPath(all: readonly Segment[], p: Point): number {
	return Math.min(...all.map((s) => distanceTo(s, p)));
}

/** Whether a path stays within the outline; it may touch it. */
function isWithin(outline: Path, path: Path): boolean {
	const rim = segments(outline);
	return pointsOn(path).every((p) => contains(outline, p) || distanceToPath(rim, p) < 1e-9);
}

/** The strokes of every label, in the frame of its baseline, as a rectangle around them. */
export function labelRectangles(part: Part): Rectangle[] {
	return part.claims
		.filter((c): c is LabelClaim => c.kind === "label")
		.map((claim) => {
			const { at, turn, text } = claim;
			const strokes = part.marks.filter((m) => m.feature === claim.feature).map((m) => m.path);
			const [c, s] = [Math.cos(turn), Math.sin(turn)];
			const boxes = strokes.map((path) =>
				extents({
					...path,
					points: path.points.map((p) => {
						const [dx, dy] = [p.x - at[0].x, p.y - at[0].y];
						return { x: c * dx + s * dy, y: c * dy - s * dx, bulge: p.bulge };
					}),
				}),
			);
			const low = {
				x: Math.min(...boxes.map((b) => b.minX)),
				y: Math.min(...boxes.map((b) => b.minY)),
			};
			const high = {
				x: Math.max(...boxes.map((b) => b.maxX)),
				y: Math.max(...boxes.map((b) => b.maxY)),
			};
			return turnedRectangle(text, at[0], turn, low, high);
		});
}

/** Faults of a part's contours: open, crossing, the wrong way round, outside. */
export function contourFaults(part: Part): string[] {
	const outline = outlineOf(part);
	const cuts = part.marks.filter((m) => m.operation === "cut");
	const single = cuts.filter((m) => !m.path.closed && m.feature.startsWith("slot "));
	const holes = cuts.filter((m) => m.path !== outline && !single.includes(m));
	const faults = cuts.flatMap(({ path, feature }) => [
		...(path.closed || single.some((m) => m.path === path) ? [] : [`${feature} is open`]),
		...(selfCrossings(path).length > 0 ? [`${feature} crosses itself`] : []),
	]);
	if (!(signedArea(outline) > 0)) faults.push("the outline runs clockwise");
	for (const { path, feature } of holes) {
		if (!(signedArea(path) < 0)) faults.push(`${feature} runs counter-clockwise`);
		if (!pointsOn(path).every((p) => contains(outline, p))) faults.push(`${feature} is outside`);
		if (segments(outline).some((s) => distanceToPath(segments(path), s.start) < 0.5)) {
			faults.push(`${feature} comes near a corner of the outline`);
		}
	}
	for (const { path, feature } of single) {
		if (path.points.length !== 2) faults.push(`${feature} is no single line`);
		if (!isWithin(outline, path)) faults.push(`${feature} leaves the outline`);
	}
	return [...faults, ...scoreFaults(part, outline)];
}

function scoreFaults(part: Part, outline: Path): string[] {
	return part.marks
		.filter((m) => m.operation === "score" && !isWithin(outline, m.path))
		.map((m) => `${m.feature} leaves the outline`);
}

/** Faults of a part's labels: over each other, over a cut, beside the part, or no label at all. */
export function labelFaults(part: Part): string[] {
	const outline = outlineOf(part);
	const rectangles = labelRectangles(part);
	const outside = rectangles
		.filter(({ corners }) => !corners.every((p) => contains(outline, p)))
		.map(({ text }) => `"${text}" leaves the outline`);
	const claimed = new Set(part.claims.map((c) => c.feature));
	const unclaimed = part.marks
		.filter((m) => m.operation === "engrave" && !claimed.has(m.feature))
		.map((m) => `${m.feature} is engraved but not claimed`);
	return [
		...outside,
		...unclaimed,
		...overlaps(rectangles),
		...crossed(
			rectangles,
			part.marks.filter((m) => m.operation === "cut"),
		),
	];
}

/** Labels that a stroke of some marks runs through. */
export function crossed(rectangles: readonly Rectangle[], marks: readonly Mark[]): string[] {
	return marks.flatMap(({ path, feature }) =>
		segments(path).flatMap((s) => {
			const stroke = strokeRectangle(feature, s.start, s.end);
			return rectangles
				.filter((r) => overlap(r, stroke) > 0.015)
				.map(({ text }) => `"${text}" is crossed by ${feature}`);
		}),
	);
}
