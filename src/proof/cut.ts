import { contains, extents, type Path, type Point, pointAt, segments } from "../geometry/index.js";

/** What a beam leaves of contours: closed, straight segments, material on their left. */
export type Cutter = (contours: readonly Path[], kerf: number) => Path[];

type Clipper = typeof import("clipper2-ts");

/** Farthest that a chord lies beside its arc, mm: a tenth of what a cut part may be off by. */
const FACET = 2e-4;
/** Decimals of a millimetre that the clipper keeps. */
const DECIMALS = 6;
/** Mitres are never drawn: every corner is round, as the beam is. */
const NO_MITRE = 2;

/** The cutter, with the library that it needs: only who cuts waits for it. */
export async function loadCutter(): Promise<Cutter> {
	const clipper = await import("clipper2-ts");
	return (contours, kerf) => cutByBeam(clipper, contours, kerf);
}

/**
 * What a round beam of width `kerf` leaves when its middle follows closed paths: of an outline what
 * lies deeper in it than half of that, around a hole what lies farther out. Each path is swept
 * alone, once; one that nothing is left of has no contour.
 */
function cutByBeam(clipper: Clipper, contours: readonly Path[], kerf: number): Path[] {
	const { Clipper, EndType, JoinType } = clipper;
	const holes = holesAmong(contours);
	return contours.flatMap((path, i) => {
		const by = holes[i] ? kerf / 2 : -kerf / 2;
		const swept = Clipper.inflatePathsD(
			[chordsOf(path)],
			by,
			JoinType.Round,
			EndType.Polygon,
			NO_MITRE,
			DECIMALS,
			FACET,
		);
		return swept.map((points): Path => {
			const vertices = points.map(({ x, y }) => ({ x, y, bulge: 0 }));
			return { points: vertices, closed: true };
		});
	});
}

/** For each closed path, whether it lies within an odd number of the others. */
export function holesAmong(contours: readonly Path[]): boolean[] {
	const boxes = contours.map(extents);
	return contours.map(({ points: [p] }, i) => {
		let around = 0;
		boxes.forEach(({ minX, minY, maxX, maxY }, k) => {
			if (k === i || p!.x < minX || p!.x > maxX || p!.y < minY || p!.y > maxY) return;
			if (contains(contours[k]!, p!)) around++;
		});
		return around % 2 === 1;
	});
}

function chordsOf(path: Path): Point[] {
	return segments(path).flatMap((s) => {
		if (s.kind === "line") return [s.start];
		const step = 2 * Math.acos(Math.max(0, 1 - FACET / s.radius));
		const count = Math.ceil(Math.abs(s.sweep) / step);
		return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
	});
}
