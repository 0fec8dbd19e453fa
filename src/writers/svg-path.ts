import {
	type Move,
	moved,
	movedPoint,
	type Path,
	type Point,
	segments,
} from "../geometry/index.js";
import { fixed } from "../units/index.js";
import { inPieces } from "./pieces.js";

/** SVG counts y downward: the only place where y changes its sign. */
export const FLIP_Y: Move = { x: 0, y: 0, turn: 0, mirror: true };

/** A hundredth of the micrometre that is promised, for coordinates, sizes and pens. */
const DECIMALS = 6;

/** A number in the file's millimetres. */
export function mm(value: number): string {
	return fixed(value, DECIMALS);
}

/** A point after the flip, as "x y". */
export function pairOf(p: Point): string {
	const { x, y } = movedPoint(p, FLIP_Y);
	return `${mm(x)} ${mm(y)}`;
}

/**
 * Path data of one contour: `A` arcs of a quarter turn at most, closed with Z.
 *
 * A quarter turn keeps the arc that a reader rebuilds from six decimals within 1.25e-6 mm; a
 * half circle in one `A` could be off by a thousand times as much (see `inPieces`). The sweep
 * flag is 1 in the direction of growing angles of the file's own axes (SVG 2, 9.3.8), and the
 * flip has changed the bulge's sign already.
 *
 * @throws RangeError on NaN and infinities
 * @example pathData(line({ x: 0, y: 0 }, { x: 1, y: 2 })) // "M 0.000000 0.000000 L 1.000000 -2.000000"
 */
export function pathData(path: Path): string {
	if (path.points.every(({ bulge }) => bulge === 0)) return straightData(moved(path, FLIP_Y));
	const flipped = moved(inPieces(path, Math.PI / 2), FLIP_Y);
	const all = segments(flipped);
	const last = all.length - 1;
	const steps = all.flatMap((s, i): string[] => {
		const end = `${mm(s.end.x)} ${mm(s.end.y)}`;
		if (s.kind === "arc") {
			const radius = mm(s.radius);
			return [`A ${radius} ${radius} 0 0 ${s.sweep > 0 ? 1 : 0} ${end}`];
		}
		return flipped.closed && i === last ? [] : [`L ${end}`];
	});
	const { x, y } = flipped.points[0]!;
	return [`M ${mm(x)} ${mm(y)}`, ...steps, ...(flipped.closed ? ["Z"] : [])].join(" ");
}

/** A path without arcs, as most strokes of letters are: no segments need be made of it. */
function straightData({ points, closed }: Path): string {
	let data = "";
	for (const { x, y } of points) data += `${data === "" ? "M" : " L"} ${mm(x)} ${mm(y)}`;
	return closed ? `${data} Z` : data;
}
