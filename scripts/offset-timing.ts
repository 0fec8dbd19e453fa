/**
 * Times the offset beside two general-purpose libraries and prints milliseconds:
 *
 * npx esbuild scripts/offset-timing.ts --bundle --packages=external --platform=node --format=esm |
 *   node --input-type=module -
 */
import { Clipper, EndType, JoinType, type PathD } from "clipper2-ts";
import makerjs from "makerjs";
import {
	circle,
	closed,
	offset,
	type Path,
	pointAt,
	rectangle,
	segments,
	vertex,
} from "../src/geometry/index.js";
import { beam, comb, hole } from "../test/support/offset-cases.js";

/** Median of some runs after some that warm up, in ms. */
function median(run: () => unknown, runs: number): number {
	for (let i = 0; i < runs; i++) run();
	const times = Array.from({ length: runs }, () => {
		const start = performance.now();
		run();
		return performance.now() - start;
	});
	return times.sort((a, b) => a - b)[Math.floor(runs / 2)]!;
}

function print(what: string, ms: number): void {
	console.log(`${what.padEnd(52)} ${ms.toFixed(2).padStart(10)} ms`);
}

/** A path as a model of lines and arcs. */
function modelOf(path: Path): makerjs.IModel {
	const degrees = (angle: number) => (angle * 180) / Math.PI;
	const paths = segments(path).map((s) => {
		if (s.kind === "line")
			return new makerjs.paths.Line([s.start.x, s.start.y], [s.end.x, s.end.y]);
		const [a, b] = [degrees(s.startAngle), degrees(s.startAngle + s.sweep)];
		const [from, to] = s.sweep > 0 ? [a, b] : [b, a];
		return new makerjs.paths.Arc([s.centre.x, s.centre.y], s.radius, from, to);
	});
	return { paths: Object.fromEntries(paths.map((p, i) => [`s${i}`, p])) };
}

/** A path as a polygon whose arcs are within 1 µm. */
function polygonOf(path: Path): PathD {
	return segments(path).flatMap((s) => {
		const step = s.kind === "arc" ? 2 * Math.acos(1 - 0.001 / s.radius) : 1;
		const count = s.kind === "arc" ? Math.ceil(Math.abs(s.sweep) / step) : 1;
		return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
	});
}

const bar = beam();
for (const distance of [0.075, -0.075, 1.5875]) {
	print(
		`beam of 22 notches by ${distance}`,
		median(() => offset([bar], distance), 100),
	);
	const polygon = [polygonOf(bar)];
	const inflate = () =>
		Clipper.inflatePathsD(polygon, distance, JoinType.Round, EndType.Polygon, 2, 6, 0.001);
	print(`  clipper2-ts, arcs as chords within 1 µm`, median(inflate, 100));
	const outline = () => makerjs.model.outline(modelOf(bar), Math.abs(distance), 0, distance < 0);
	print(`  makerjs model.outline`, median(outline, 3));
}

const many: readonly (readonly [string, readonly Path[]])[] = [
	...[1000, 10_000, 100_000].map((n) => [`comb of ${n} segments`, [comb(n)]] as const),
	["circle as 10000 lines", [closed(...ring(10_000))]],
	["sheet with 5000 holes, 10004 segments", [rectangle(-2, -2, 300, 152), ...holes(100, 50)]],
	["2500 squares, 10000 segments", squares(50, 50)],
	["2500 bars of 1000 × 1 on each other, 10000 segments", squares(1, 2500, 1000)],
];

function ring(n: number) {
	return Array.from({ length: n }, (_, i) => {
		const angle = (i / n) * 2 * Math.PI;
		return vertex(300 * Math.cos(angle), 300 * Math.sin(angle));
	});
}

function holes(columns: number, rows: number): Path[] {
	return Array.from({ length: columns * rows }, (_, i) =>
		hole(3 * (i % columns), 3 * Math.floor(i / columns), 1),
	);
}

function squares(columns: number, rows: number, width = 1): Path[] {
	return Array.from({ length: columns * rows }, (_, i) => {
		const [x, y] = [2 * (i % columns), 2 * Math.floor(i / columns)];
		return rectangle(x, y, x + width, y + 1);
	});
}

for (const [what, paths] of many) {
	for (const distance of [0.075, 1.5875]) {
		print(
			`${what} by ${distance}`,
			median(() => offset(paths, distance), 3),
		);
	}
}
print(
	"circle by −0.3",
	median(() => offset([circle({ x: 0, y: 0 }, 1)], -0.3), 100),
);
