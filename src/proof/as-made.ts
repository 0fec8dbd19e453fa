import { type Path, type Point, stretched } from "../geometry/index.js";

/** A path of a file as a machine of that stretch makes it: the stretch that it was drawn for undone. */
export function asMade(path: Path, stretch: Point): Path {
	return stretched(path, { x: 1 / stretch.x, y: 1 / stretch.y });
}
