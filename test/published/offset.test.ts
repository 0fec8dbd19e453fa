import { Clipper, EndType, JoinType, type PathsD, PointInPolygonResult } from "clipper2-ts";
import { describe, expect, test } from "vitest";
import {
	extents,
	offset,
	type Path,
	type Point,
	pathLength,
	pointAt,
	rectangle,
	segments,
	signedArea,
} from "../../src/geometry/index.js";
import {
	beam,
	hole,
	hollowGauge,
	random,
	randomContour,
	randomDistance,
} from "../support/offset-cases.js";
import { covers, distanceToContours } from "../support/offset-oracle.js";
import { TRIALS } from "../support/offset-trials.js";

/**
 * General-purpose reference library clipper2-ts 2.0.1, a polygon clipper: its offset of
 * polygons whose arcs are chords within `CHORD`, its round joins within `CHORD` too.
 */
const CHORD = 1e-4;
/** Its result may be off by both, and by its grid of 1e-6. */
const OFF = 2 * CHORD + 2e-6;

function polygonsOf(paths: readonly Path[]): PathsD {
	return paths.map((path) =>
		segments(path).flatMap((s) => {
			const step = s.kind === "arc" ? 2 * Math.acos(1 - CHORD / s.radius) : 1;
			const count = s.kind === "arc" ? Math.ceil(Math.abs(s.sweep) / step) : 1;
			return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
		}),
	);
}

function inflated(paths: readonly Path[], distance: number): PathsD {
	const polygons = polygonsOf(paths);
	return Clipper.inflatePathsD(polygons, distance, JoinType.Round, EndType.Polygon, 2, 6, CHORD);
}

function holds(polygons: PathsD, p: Point): boolean {
	const around = polygons.filter(
		(polygon) => Clipper.pointInPolygonD(p, polygon, 6) === PointInPolygonResult.IsInside,
	);
	return around.length % 2 === 1;
}

/** Compares area and, away from the boundary, membership of points. */
function expectSame(contours: readonly Path[], distance: number, seed: number): void {
	const { paths } = offset(contours, distance);
	const polygons = inflated(contours, distance);
	const area = paths.reduce((sum, p) => sum + signedArea(p), 0);
	const around = paths.reduce((sum, p) => sum + pathLength(p), 0);
	expect(Math.abs(area - Clipper.areaPathsD(polygons))).toBeLessThan(around * OFF + 1e-4);
	const box = extents({ closed: true, points: contours.flatMap((p) => p.points) });
	const next = random(seed);
	let compared = 0;
	for (let i = 0; i < 60; i++) {
		const near = pointAt(segments(contours[i % contours.length]!)[0]!, next());
		const [x, y] = i % 2 === 0 ? [box.minX, box.minY] : [near.x - 3, near.y - 3];
		const [w, h] = i % 2 === 0 ? [box.maxX - box.minX, box.maxY - box.minY] : [6, 6];
		const p = { x: x + w * next(), y: y + h * next() };
		if (Math.abs(distanceToContours(contours, p) - Math.abs(distance)) < 2 * OFF) continue;
		compared++;
		expect(covers(paths, p)).toBe(holds(polygons, p));
	}
	expect(compared).toBeGreaterThan(45);
}

describe("clipper2-ts agrees within what its chords are off by", () => {
	test.each<[string, readonly Path[]]>([
		["a bar with 22 notches", [beam()]],
		["a hollowed gauge", [hollowGauge(241.3)]],
		["a plate with holes", [rectangle(0, 0, 40, 20), hole(10, 10, 4), hole(19, 10, 4)]],
	])("on %s", (_, contours) => {
		for (const distance of [0.075, -0.075, 1.5875, -1.5875]) {
			expectSame(contours, distance, 1);
		}
	});

	test("on random contours", () => {
		for (let seed = 1; seed <= 25; seed++) {
			const next = random(seed);
			expectSame([randomContour(next)], randomDistance(next), seed);
		}
	});

	test("on several contours that merge and split", () => {
		for (let seed = 1; seed <= 10; seed++) {
			const { contours, distance } = TRIALS.plate(random(seed));
			expectSame(contours, distance, seed);
		}
	});
});
