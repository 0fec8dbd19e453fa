import type { SizeClaim } from "../drawing/index.js";
import {
	arcFromBulge,
	type Path,
	type Point,
	reversed,
	type Segment,
	segments,
	type Vertex,
} from "../geometry/index.js";
import { gap, WINDOW } from "./plane.js";

/** The end of an open path. */
export interface PathEnd {
	readonly path: number;
	readonly side: "start" | "end";
	readonly at: Point;
}

/** Two ends of cuts with a tab between them. */
export interface TabGap {
	readonly ends: readonly [PathEnd, PathEnd];
	/** mm, along the chord. */
	readonly size: number;
}

export function isTab(claim: SizeClaim): boolean {
	return claim.kind === "width" && /^tab \d+$/u.test(claim.feature);
}

/** The ends of open paths. */
function endsOf(paths: readonly Path[]): PathEnd[] {
	return paths.flatMap(({ points, closed }, path): PathEnd[] =>
		closed
			? []
			: [
					{ path, side: "start", at: points[0]! },
					{ path, side: "end", at: points.at(-1)! },
				],
	);
}

/** The two ends of open paths that are nearest to a tab's own ends; null where they lack. */
export function gapOfTab(paths: readonly Path[], { at }: SizeClaim): TabGap | null {
	const ends = endsOf(paths);
	const near = (p: Point, taken?: PathEnd) =>
		ends
			.filter((end) => end !== taken && gap(end.at, p) < WINDOW)
			.sort((a, b) => gap(a.at, p) - gap(b.at, p))[0];
	const one = near(at[0]!);
	const two = near(at[1]!, one);
	return one && two ? { ends: [one, two], size: gap(one.at, two.at) } : null;
}

/** Open paths that tabs part, joined over them, and what stays open. */
export function joinedOverTabs(paths: readonly Path[], gaps: readonly TabGap[]) {
	const other = new Map<string, PathEnd>();
	for (const { ends } of gaps) {
		if (ends.some((end) => other.has(keyOf(end)))) continue;
		other.set(keyOf(ends[0]), ends[1]);
		other.set(keyOf(ends[1]), ends[0]);
	}
	const used = new Set<number>();
	const closed: Path[] = [];
	for (let i = 0; i < paths.length; i++) {
		if (used.has(i) || paths[i]!.closed) continue;
		const ring = ringFrom(paths, other, i);
		if (!ring) continue;
		for (const { path } of ring) used.add(path);
		closed.push(
			ringPath(ring.map(({ path, ahead }) => (ahead ? paths[path]! : reversed(paths[path]!)))),
		);
	}
	return { closed, rest: paths.filter((path, i) => path.closed || !used.has(i)) };
}

function keyOf({ path, side }: Pick<PathEnd, "path" | "side">): string {
	return `${path} ${side}`;
}

/** The pieces that tabs lead to, one after the other, back to the first; null if they end somewhere. */
function ringFrom(paths: readonly Path[], other: ReadonlyMap<string, PathEnd>, first: number) {
	const ring = [{ path: first, ahead: true }];
	while (ring.length <= paths.length) {
		const last = ring.at(-1)!;
		const next = other.get(keyOf({ path: last.path, side: last.ahead ? "end" : "start" }));
		if (!next) return null;
		const ahead = next.side === "start";
		if (next.path === first) return ahead ? ring : null;
		ring.push({ path: next.path, ahead });
	}
	return null;
}

/** One closed path of open ones; each gap is drawn as what it interrupts: a line, or an arc. */
function ringPath(pieces: readonly Path[]): Path {
	const points = pieces.flatMap((piece, i): Vertex[] => {
		const next = pieces[(i + 1) % pieces.length]!;
		const bulge = bridgeBulge(segments(piece).at(-1)!, segments(next)[0]!);
		return [...piece.points.slice(0, -1), { ...piece.points.at(-1)!, bulge }];
	});
	return { points, closed: true };
}

/** Two arcs on either side of a tab are one if their circles agree within this, mm. */
const SAME_CIRCLE = 0.01;

function bridgeBulge(before: Segment, after: Segment): number {
	if (before.kind !== "arc" || after.kind !== "arc") return 0;
	const same =
		gap(before.centre, after.centre) + Math.abs(before.radius - after.radius) <
		SAME_CIRCLE * (1 + before.radius / 10);
	const size = gap(before.end, after.start);
	if (!same || Math.sign(before.sweep) !== Math.sign(after.sweep)) return 0;
	const half = Math.asin(Math.min(1, size / (2 * before.radius)));
	const bulge = Math.tan(half / 2) * Math.sign(before.sweep);
	const { centre } = arcFromBulge(before.end, after.start, bulge);
	return gap(centre, before.centre) < SAME_CIRCLE * (1 + before.radius / 10) ? bulge : 0;
}
