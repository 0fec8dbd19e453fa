import { bulgeOf, circle, line, open, type Path, reversed, vertex } from "../../geometry/index.js";
import { type Corner, outlineOf } from "../outline.js";
import { CORNER_RADIUS } from "../tool.js";
import { type Crate, type Dowels, type Joints, RAIL_END } from "./crate.js";

const round = CORNER_RADIUS;

/** A rib's contour: the arc below, slots for the rails from above. */
export function ribOutline({ radius, width, top, joints }: Crate): Path {
	const half = width / 2;
	const bulge = radius === null ? 0 : -bulgeOf(radius, width);
	const slot = ({ width: w, depth }: Joints, x: number): Corner[] => [
		{ x: x + w / 2, y: top },
		{ x: x + w / 2, y: top - depth },
		{ x: x - w / 2, y: top - depth },
		{ x: x - w / 2, y: top },
	];
	return outlineOf([
		{ x: half, y: top, round },
		...(joints ? [...slot(joints, joints.at), ...slot(joints, -joints.at)] : []),
		{ x: -half, y: top, round },
		{ x: -half, y: 0, bulge },
		{ x: half, y: 0 },
	]);
}

/** A rib's working edge by itself, left to right. */
export function ribEdge({ radius, width }: Crate): Path {
	const bulge = radius === null ? 0 : -bulgeOf(radius, width);
	return open(vertex(-width / 2, 0, bulge), vertex(width / 2, 0));
}

export function dowelHole({ x, y, diameter }: Dowels, side: 1 | -1): Path {
	return reversed(circle({ x: side * x, y }, diameter / 2));
}

/** Middles of a rail's slots from its left end, mm. */
export function slotPlaces({ count, pitch }: Crate, { width }: Joints): number[] {
	return Array.from({ length: count }, (_, i) => RAIL_END + width / 2 + i * pitch);
}

/** A rail's contour: slots for the ribs from below; only a flat beam's lower edge works. */
export function railOutline(crate: Crate, joints: Joints): Path {
	const { width, depth, height, length } = joints;
	const below = crate.radius === null ? {} : { round };
	return outlineOf([
		{ x: 0, y: 0, ...below },
		...slotPlaces(crate, joints).flatMap((x): Corner[] => [
			{ x: x - width / 2, y: 0 },
			{ x: x - width / 2, y: depth },
			{ x: x + width / 2, y: depth },
			{ x: x + width / 2, y: 0 },
		]),
		{ x: length, y: 0, ...below },
		{ x: length, y: height, round },
		{ x: 0, y: height, round },
	]);
}

/** The lands of a flat beam's rail, which bear between its ribs. */
export function railLands(crate: Crate, joints: Joints): Path[] {
	const places = slotPlaces(crate, joints);
	const from = [0, ...places.map((x) => x + joints.width / 2)];
	const to = [...places.map((x) => x - joints.width / 2), joints.length];
	return from.map((x, i) => line({ x, y: 0 }, { x: to[i]!, y: 0 }));
}
