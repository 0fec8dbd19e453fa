import type { Mark, Part, Placed } from "../../drawing/index.js";
import { type Path, pointAt, segments, signedArea, windingNumber } from "../../geometry/index.js";
import { startsOf } from "../starts.js";
import { type Stop, waysOf } from "./stop.js";

/** Every cut as a stop, with what must be cut before it. */
export function cutStops(cuts: readonly Mark[], part: Part, placed: Placed): Stop[] {
	const before = cutsBefore(cuts);
	return cuts.map((mark, i) => ({
		marks: [mark],
		ways: waysOf([startsOf(mark.path, part.working)], placed),
		before: before[i]!,
	}));
}

/** A closed contour, or one that tabs left open, by the numbers of its cuts. */
interface Loop {
	readonly cuts: readonly number[];
	readonly path: Path;
	readonly area: number;
}

/** For each cut the cuts that come before it: those within it, and open ones before outer ones. */
function cutsBefore(cuts: readonly Mark[]): number[][] {
	const loops = loopsOf(cuts);
	const loopOf = (i: number) => loops.find((loop) => loop.cuts.includes(i))!;
	const probes = cuts.map(({ path }) => pointAt(segments(path)[0]!, 0.5));
	const within = loops.map((loop) => {
		const around = segments(loop.path);
		return cuts.flatMap((_, i) => {
			if (loop.cuts.includes(i) || loopOf(i).area >= loop.area) return [];
			return windingNumber(around, probes[i]!) !== 0 ? [i] : [];
		});
	});
	return cuts.map(({ path }, i) => {
		const inside = within[loops.indexOf(loopOf(i))]!;
		if (!path.closed || within.some((others) => others.includes(i))) return inside;
		return cuts.flatMap((cut, k) => (!cut.path.closed || inside.includes(k) ? [k] : []));
	});
}

/** Closed cuts one by one; open ones of one feature joined by straight lines across their gaps. */
function loopsOf(cuts: readonly Mark[]): Loop[] {
	const groups = new Map<string, number[]>();
	cuts.forEach(({ path, feature }, i) => {
		const key = path.closed ? `closed ${i}` : `open ${feature}`;
		groups.set(key, [...(groups.get(key) ?? []), i]);
	});
	return [...groups.values()].map((members): Loop => {
		const points = members.flatMap((i) => cuts[i]!.path.points);
		const path = { points, closed: true };
		return { cuts: members, path, area: Math.abs(signedArea(path)) };
	});
}
