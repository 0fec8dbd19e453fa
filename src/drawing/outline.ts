import { type Path, signedArea } from "../geometry/index.js";
import type { Part } from "./part.js";

/**
 * The cut path around all others of a part. Where tabs leave gaps in an outline its pieces are
 * joined, straight across the gaps.
 *
 * @throws RangeError for a part of which nothing is cut
 */
export function outlineOf({ marks, name }: Part): Path {
	const pieces = new Map<string, Path[]>();
	for (const { operation, path, feature } of marks) {
		if (operation !== "cut" || path.closed) continue;
		pieces.set(feature, [...(pieces.get(feature) ?? []), path]);
	}
	const whole = marks.filter((m) => m.operation === "cut" && m.path.closed).map((m) => m.path);
	const joined = [...pieces.values()].map(
		(paths): Path => ({ points: paths.flatMap((p) => p.points), closed: true }),
	);
	const all = [...whole, ...joined];
	if (all.length === 0) throw new RangeError(`${name} has no outline`);
	return all.reduce((a, b) => (signedArea(b) > signedArea(a) ? b : a));
}
