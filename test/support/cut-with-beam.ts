import { Clipper, EndType, FillRule, JoinType, type PathsD } from "clipper2-ts";
import type { Part } from "../../src/drawing/index.js";
import {
	around,
	extents,
	grown,
	type Move,
	moved,
	type Path,
	pointAt,
	segments,
} from "../../src/geometry/index.js";

/** Arcs become chords within this, mm: a tenth of what a cut part may be off by. */
const CHORD = 2e-4;
/** Decimals that the clipper keeps. */
const DECIMALS = 6;

/** Paths as polygons of chords. */
export function polygonsOf(paths: readonly Path[]): PathsD {
	return paths.map((path) => {
		const points = segments(path).flatMap((s) => {
			const step = s.kind === "arc" ? 2 * Math.acos(1 - CHORD / s.radius) : 1;
			const count = s.kind === "arc" ? Math.ceil(Math.abs(s.sweep) / step) : 1;
			return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
		});
		return path.closed ? points : [...points, path.points.at(-1)!];
	});
}

export function inflated(polygons: PathsD, by: number, end: EndType): PathsD {
	return Clipper.inflatePathsD(polygons, by, JoinType.Round, end, 2, DECIMALS, CHORD);
}

/** What a round beam of this width leaves of the material within the outermost path. */
export function leftAfterCut(paths: readonly Path[], kerf: number): PathsD {
	const polygons = polygonsOf(paths);
	const swept = inflated(polygons, kerf / 2, EndType.Joined);
	return Clipper.differenceD(polygons, swept, FillRule.EvenOdd, DECIMALS);
}

/**
 * What a round beam of this width leaves in and around a part, as far out as the cut is wide.
 * Paths may be open: between them the part stays joined to its sheet.
 *
 * @param slack - by which the look around stops short of the far side of the cut
 */
export function leftNear(
	paths: readonly Path[],
	nominal: readonly Path[],
	kerf: number,
	slack: number,
): PathsD {
	const swept = paths.flatMap((path) =>
		inflated(polygonsOf([path]), kerf / 2, path.closed ? EndType.Joined : EndType.Round),
	);
	const closed = nominal.filter((path) => path.closed);
	const near = inflated(polygonsOf(closed), kerf - slack, EndType.Polygon);
	const all = Clipper.unionD(swept, [], FillRule.NonZero, DECIMALS);
	return Clipper.differenceD(near, all, FillRule.NonZero, DECIMALS);
}

/**
 * Area of what is left beyond the nominal part and of what is missing of it, both past
 * `slack`. Inside corners may keep the fillet of half the kerf that a round beam leaves.
 */
export function deviations(left: PathsD, nominal: readonly Path[], kerf: number, slack: number) {
	const wanted = polygonsOf(nominal.filter((path) => path.closed));
	const closing = inflated(inflated(wanted, kerf / 2, EndType.Polygon), -kerf / 2, EndType.Polygon);
	const most = inflated(closing, slack, EndType.Polygon);
	const least = inflated(wanted, -slack, EndType.Polygon);
	const area = (a: PathsD, b: PathsD) =>
		Math.abs(Clipper.areaPathsD(Clipper.differenceD(a, b, FillRule.NonZero, DECIMALS)));
	return { over: area(left, most), missing: area(least, left) };
}

/** What a round beam of this width burns away along each of some open paths. */
export function sweptBy(paths: readonly Path[], kerf: number): PathsD {
	return polygonsOf(paths).flatMap((path) => inflated([path], kerf / 2, EndType.Round));
}

/** Beyond its nominal box the paths of a part are looked for, mm: more than half a kerf. */
const AROUND = 0.5;

/** The written paths of one piece of a part, which lies so: others of the same name lie elsewhere. */
export function pathsWithin(
	written: readonly { readonly part: string | null; readonly path: Path }[],
	part: Part,
	move: Move,
): Path[] {
	const cuts = part.marks.filter((m) => m.operation === "cut").map((m) => moved(m.path, move));
	const room = grown(around(cuts.map(extents)), AROUND);
	return written.flatMap(({ part: name, path }) => {
		const box = extents(path);
		const isWithin =
			box.minX >= room.minX &&
			box.minY >= room.minY &&
			box.maxX <= room.maxX &&
			box.maxY <= room.maxY;
		return name === part.name && isWithin ? [path] : [];
	});
}
