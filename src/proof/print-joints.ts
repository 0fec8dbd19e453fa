import {
	distance,
	distanceTo,
	type Path,
	type Point,
	reversed,
	segments,
	tangentAt,
	type Vertex,
} from "../geometry/index.js";
import type { Pieces } from "./print-seams.js";
import type { ReadStroke } from "./types.js";

/** How far apart the ends of one stroke may lie at a seam, mm: places on paper are 32-bit numbers. */
const JOINT = 1e-3;
/** A corner that a seam made is taken out where it lies so near to the line or arc over it, mm. */
const STRAIGHT = 2e-4;
/** What is less than so much of a circle is joined into one arc, radians. */
const MOST_SWEEP = 1.9 * Math.PI;

/** A stroke of a page up to the seams around its piece. */
export interface SeamStroke extends ReadStroke {
	/** The page it comes from. */
	readonly page: number;
}

/** One end of a stroke: of stroke i the start is end 2i, the other end 2i + 1. */
interface End {
	readonly index: number;
	readonly at: Point;
	/** Direction that leads out of the stroke. */
	readonly out: Point;
}

/** Strokes joined where they go on beyond a seam; closed where they come back to their start. */
export function joinedOverSeams(all: readonly SeamStroke[], { seams }: Pieces): ReadStroke[] {
	const mates = new Map<number, number>();
	const isOn = (axis: "x" | "y") => (p: Point) => seams[axis].includes(p[axis]);
	for (const axis of ["x", "y"] as const) {
		const ends = all.flatMap((stroke, i) => endsOf(stroke.path, i)).filter((e) => isOn(axis)(e.at));
		for (const [a, b] of pairs(ends, axis, all)) {
			if (mates.has(a) || mates.has(b)) continue;
			mates.set(a, b);
			mates.set(b, a);
		}
	}
	return chains(all, mates);
}

function endsOf(path: Path, i: number): End[] {
	if (path.closed) return [];
	const own = segments(path);
	const [a, b] = [own[0]!, own.at(-1)!];
	const back = tangentAt(a, 0);
	return [
		{ index: 2 * i, at: a.start, out: { x: -back.x, y: -back.y } },
		{ index: 2 * i + 1, at: b.end, out: tangentAt(b, 1) },
	];
}

/** Ends that may belong together, the most likely first: near to each other and in one line. */
function pairs(ends: readonly End[], axis: "x" | "y", all: readonly SeamStroke[]) {
	const along = axis === "x" ? "y" : "x";
	const sorted = [...ends].sort((a, b) => a.at[along] - b.at[along]);
	const found: { readonly pair: readonly [number, number]; readonly cost: number }[] = [];
	sorted.forEach((a, i) => {
		for (let k = i + 1; k < sorted.length; k++) {
			const b = sorted[k]!;
			if (b.at[along] - a.at[along] > JOINT || k - i > MOST_HEAPED) break;
			const apart = distance(a.at, b.at);
			const [one, two] = [all[a.index >> 1]!, all[b.index >> 1]!];
			if (apart > JOINT || one.page === two.page || one.operation !== two.operation) continue;
			const bend = 1 + a.out.x * b.out.x + a.out.y * b.out.y;
			found.push({ pair: [a.index, b.index], cost: apart + JOINT * bend });
		}
	});
	return found.sort((a, b) => a.cost - b.cost).map(({ pair }) => pair);
}

/** Ends beyond these at one place are heaped up by no template. */
const MOST_HEAPED = 50;

function chains(all: readonly SeamStroke[], mates: ReadonlyMap<number, number>): ReadStroke[] {
	const used = all.map(() => false);
	const result: ReadStroke[] = [];
	const follow = (first: number) => {
		const { operation, layer, path } = all[first >> 1]!;
		if (path.closed) {
			used[first >> 1] = true;
			return result.push({ operation, layer, path });
		}
		const points: Vertex[] = [];
		let end: number | undefined = first;
		while (end !== undefined && !used[end >> 1]) {
			used[end >> 1] = true;
			const own = all[end >> 1]!.path;
			append(points, end % 2 === 0 ? own.points : reversed(own).points);
			end = mates.get(end ^ 1);
		}
		return result.push({
			operation,
			layer,
			path: end === undefined ? open(points) : closed(points),
		});
	};
	all.forEach((_, i) => {
		if (!used[i] && !mates.has(2 * i)) follow(2 * i);
		else if (!used[i] && !mates.has(2 * i + 1)) follow(2 * i + 1);
	});
	all.forEach((_, i) => {
		if (!used[i]) follow(2 * i);
	});
	return result;
}

function append(points: Vertex[], more: readonly Vertex[]): void {
	const last = points.pop();
	const [first, ...rest] = more as [Vertex, ...Vertex[]];
	if (!last) points.push(first, ...rest);
	else {
		const joint = { x: (last.x + first.x) / 2, y: (last.y + first.y) / 2, bulge: first.bulge };
		const before = points.pop()!;
		const next = rest[0]!;
		const over = bulgeOver(before, joint, next);
		if (over === null) points.push(before, joint, ...rest);
		else points.push({ ...before, bulge: over }, ...rest);
	}
}

/** Bulge of the line or arc that leads on through a joint, or null if there is a corner. */
function bulgeOver(before: Vertex, joint: Vertex, next: Vertex): number | null {
	const isStraight = before.bulge === 0 && joint.bulge === 0;
	if (!isStraight && !(before.bulge * joint.bulge > 0)) return null;
	const sweep = 4 * (Math.atan(before.bulge) + Math.atan(joint.bulge));
	if (Math.abs(sweep) > MOST_SWEEP || distance(before, next) < JOINT) return null;
	const bulge = isStraight ? 0 : Math.tan(sweep / 4);
	const [whole] = segments(open([{ ...before, bulge }, next]));
	return distanceTo(whole!, joint) <= STRAIGHT ? bulge : null;
}

function open(points: readonly Vertex[]): Path {
	return { points, closed: false };
}

/** A chain whose end is its start: both are one corner, which goes where the seam made it. */
function closed(points: readonly Vertex[]): Path {
	const [first, ...rest] = points as [Vertex, ...Vertex[]];
	const last = rest.pop()!;
	const joint = { x: (first.x + last.x) / 2, y: (first.y + last.y) / 2, bulge: first.bulge };
	const before = rest.at(-1);
	const over = before && rest.length > 1 ? bulgeOver(before, joint, rest[0]!) : null;
	if (over === null) return { points: [joint, ...rest], closed: true };
	return { points: [...rest.slice(0, -1), { ...before!, bulge: over }], closed: true };
}
