import { type Path, type Point, pointAt, segments, type Vertex } from "../geometry/index.js";

/** A hair of sweep by which an arc may exceed a limit and stay whole, as a share of the limit. */
const WHOLE = 1e-9;

/**
 * The same path with every arc of more than `most` radians cut into equal arcs.
 *
 * Files hold rounded numbers, and long arcs magnify the rounding. From two ends and a radius a
 * reader finds the centre at √(r² − c²/4) from the chord, which moves by 1/cos(sweep/2) for
 * every unit of the radius: on a half circle of 1 mm, half a nanometre becomes a micrometre and
 * more. From two ends and a bulge it finds a radius that moves by 1/(2·sin(sweep/2)) for every
 * unit of the chord: without bound toward a full turn.
 *
 * @param most - greater than 0
 */
export function inPieces(path: Path, most: number): Path {
	const all = segments(path);
	const points = all.flatMap((s, i): Vertex[] => {
		const start = path.points[i]!;
		const count = s.kind === "line" ? 1 : Math.ceil(Math.abs(s.sweep) / most - WHOLE);
		if (s.kind === "line" || count <= 1) return [start];
		const bulge = Math.tan(s.sweep / count / 4);
		return Array.from({ length: count }, (_, k) => ({ ...pointAt(s, k / count), bulge }));
	});
	const { closed } = path;
	return { closed, points: closed ? points : [...points, { ...path.points.at(-1)!, bulge: 0 }] };
}

/** Two arcs with centres and radii nearer than this lie on one circle, mm. */
const ONE_CIRCLE = 1e-9;

/** Centre and radius of a path that is one full circle, else null. */
export function fullCircle(path: Path): { centre: Point; radius: number } | null {
	const all = segments(path);
	const first = all[0];
	if (!path.closed || first?.kind !== "arc") return null;
	let turned = 0;
	for (const s of all) {
		if (s.kind !== "arc") return null;
		const apart = Math.hypot(s.centre.x - first.centre.x, s.centre.y - first.centre.y);
		if (apart > ONE_CIRCLE || Math.abs(s.radius - first.radius) > ONE_CIRCLE) return null;
		turned += s.sweep;
	}
	if (Math.abs(Math.abs(turned) - 2 * Math.PI) > 1e-9) return null;
	return { centre: first.centre, radius: first.radius };
}
