import type { Part } from "../../src/drawing/index.js";
import {
	line,
	moved,
	type Path,
	type Point,
	pointAt,
	segments,
	shift,
} from "../../src/geometry/index.js";
import type { Problem } from "../../src/problem/index.js";
import { judged } from "../../src/proof/judge.js";
import { measurePart } from "../../src/proof/measure.js";
import { jobWith, LETTERS, madeParts } from "./made-parts.js";
import { promisedOf, strokesOf } from "./measured-parts.js";

/*
 * Parts spoilt in one way each, as a slip in a drawing program or in a writer would spoil them.
 */

/** A part whose paths of one feature are replaced; a feature that it lacks is an error. */
export function withPaths(part: Part, feature: string, change: (path: Path) => Path[]): Part {
	if (!part.marks.some((m) => m.feature === feature)) throw new Error(`no ${feature}`);
	const marks = part.marks.flatMap((mark) =>
		mark.feature === feature ? change(mark.path).map((path) => ({ ...mark, path })) : [mark],
	);
	return { ...part, marks };
}

/** A part without a feature's paths. */
export function without(part: Part, feature: string): Part {
	return withPaths(part, feature, () => []);
}

/** A part whose feature lies elsewhere by so much. */
export function shifted(part: Part, feature: string, x: number, y: number): Part {
	return withPaths(part, feature, (path) => [moved(path, shift(x, y))]);
}

/** Whether a corner of the outline belongs to a notch: between its flanks, from the edge to its floor. */
function notchCorners(part: Part, notch: string): (p: Point) => boolean {
	const width = part.claims.find((c) => c.id === `${notch}-width`)!;
	const depth = part.claims.find((c) => c.id === `${notch}-depth`)!;
	const [a, b] = width.at as readonly [Point, Point];
	const [from, to] = [Math.min(a.x, b.x) - 1e-6, Math.max(a.x, b.x) + 1e-6];
	const ys = [depth.at[0]!.y, depth.at[1]!.y];
	return ({ x, y }) => x > from && x < to && y > Math.min(...ys) - 0.1 && y < Math.max(...ys) + 0.1;
}

/** A straightedge whose notch lies elsewhere along the edge by so much. */
export function notchMoved(part: Part, notch: string, by: number): Part {
	const isOwn = notchCorners(part, notch);
	return withPaths(part, "outline", ({ points, closed }) => [
		{ closed, points: points.map((p) => (isOwn(p) ? { ...p, x: p.x + by } : p)) },
	]);
}

/** A straightedge without one of its notches. */
export function notchFilled(part: Part, notch: string): Part {
	const isOwn = notchCorners(part, notch);
	return withPaths(part, "outline", ({ points, closed }) => [
		{ closed, points: points.filter((p) => !isOwn(p)) },
	]);
}

/** Place of the corner from which the outline's longest arc leaves. */
function longestArc({ points }: Path): number {
	const chord = (i: number) => {
		const [p, q] = [points[i]!, points[(i + 1) % points.length]!];
		return p.bulge === 0 ? 0 : Math.hypot(q.x - p.x, q.y - p.y);
	};
	return points.map((_, i) => i).reduce((a, b) => (chord(b) > chord(a) ? b : a));
}

/** A gauge whose arc bends to the other side. */
export function arcFlipped(part: Part): Part {
	return withPaths(part, "outline", ({ points, closed }) => {
		const at = longestArc({ points, closed });
		return [{ closed, points: points.map((p, i) => (i === at ? { ...p, bulge: -p.bulge } : p)) }];
	});
}

/** A gauge whose arc is drawn as chords. */
export function arcFaceted(part: Part, count: number): Part {
	return withPaths(part, "outline", (path) => {
		const at = longestArc(path);
		const arc = segments(path)[at]!;
		const corners = Array.from({ length: count }, (_, k) => ({
			...pointAt(arc, k / count),
			bulge: 0,
		}));
		return [{ closed: true, points: path.points.flatMap((p, i) => (i === at ? corners : [p])) }];
	});
}

/** A part whose two labels stand in each other's place. */
export function labelsSwapped(part: Part, one: string, two: string): Part {
	const at = (feature: string) => part.claims.find((c) => c.feature === feature)!.at[0]!;
	const [a, b] = [at(one), at(two)];
	const once = shifted(part, one, b.x - a.x, b.y - a.y);
	return shifted(once, two, a.x - b.x, a.y - b.y);
}

/** A hole made larger, or moved. */
export function holeChanged(part: Part, wider: number, x: number): Part {
	return withPaths(part, "hanging hole", ({ points, closed }) => {
		const middle = (points[0]!.x + points[1]!.x) / 2;
		return [
			{
				closed,
				points: points.map((p) => ({ ...p, x: p.x + x + (Math.sign(p.x - middle) * wider) / 2 })),
			},
		];
	});
}

/** A stroke drawn over a label. */
export function scribbledOver(part: Part, feature: string): Part {
	const { x, y } = part.claims.find((c) => c.feature === feature)!.at[0]!;
	const path = line({ x, y: y + 0.5 }, { x: x + 1, y: y + 0.7 });
	return { ...part, marks: [...part.marks, { operation: "engrave", path, feature: "scribble" }] };
}

/** What is found in a spoilt part that promises what a good one does. */
export function findingsIn(good: Part, spoilt: Part): Problem[] {
	return judged(measurePart(promisedOf(good, 0), strokesOf(spoilt), LETTERS));
}

/** One fault of every kind that measuring finds. */
export function measuringFaults(): Problem[] {
	const { parts } = madeParts(jobWith({}, ["notched-straightedge", "radius-gauge"]));
	const [bar, gauge] = parts as [Part, Part];
	const other = { ...LETTERS, name: "another" };
	return [
		...findingsIn(bar, notchMoved(bar, "notch-5", 0.02)),
		...findingsIn(bar, notchFilled(bar, "notch-5")),
		...findingsIn(bar, without(bar, "label fret-5")),
		...findingsIn(gauge, arcFaceted(gauge, 20)),
		...findingsIn(gauge, holeChanged(gauge, 0, 0.05)),
		...judged(measurePart(promisedOf(bar, 0), strokesOf(bar), other)),
	];
}
