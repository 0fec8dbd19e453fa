import { filletedAt, type Path, type Point, type Vertex } from "../geometry/index.js";

/** A corner of an outline being built; `round` asks for a fillet of that radius. */
export interface Corner extends Point {
	readonly bulge?: number;
	readonly round?: number;
}

/** A closed outline from its corners, rounded where they ask for it. */
export function outlineOf(corners: readonly Corner[]): Path {
	const points = corners.map(({ x, y, bulge }): Vertex => ({ x, y, bulge: bulge ?? 0 }));
	const rounds = corners.flatMap(({ round }, i) => (round ? [[i, round] as const] : []));
	return filletedAt({ points, closed: true }, rounds);
}
