import { type Problem, problem } from "../../problem/index.js";
import { inchLabel, trimmed } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import { type Bench, OFF_WORKING_EDGE } from "../tool.js";
import type { Face } from "./settings.js";
import type { Shape } from "./shape.js";
import type { Wanted } from "./wanted.js";

/** Two lines between hole and arc: the radius, and where and how it is held. */
export function gaugeLabels(
	bench: Bench,
	{ radius, place }: Wanted,
	face: Face,
	{ shape, width, diameter }: { shape: Shape; width: number; diameter: number },
): Label[] | Problem {
	const { letters } = bench;
	const first = `${inchLabel(radius)}   R ${trimmed(radius, 2)} mm`;
	const second = place ? `${face}, ${place}` : face;
	const room = width - 2 * OFF_WORKING_EDGE;
	const heights = [heightToFit(letters, first, room, 3.5), heightToFit(letters, second, room, 2.5)];
	const [high, low] = heights as [number | null, number | null];
	if (high === null || low === null) {
		return problem("label-too-long", ["gauge-width"], {
			text: high === null ? first : second,
			room,
		});
	}
	const taken = OFF_WORKING_EDGE + (diameter > 0 ? diameter + 2 : 0);
	const block = high + low + 2;
	const middle =
		face === "concave"
			? (shape.sagitta + OFF_WORKING_EDGE + shape.top - taken) / 2
			: (shape.bottom + taken - OFF_WORKING_EDGE) / 2;
	const y = middle - block / 2;
	return [
		label(letters, "radius", first, {
			at: { x: 0, y: y + low + 2 },
			height: high,
			align: "centre",
		}),
		label(letters, "place", second, { at: { x: 0, y }, height: low, align: "centre" }),
	];
}
