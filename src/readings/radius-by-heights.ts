import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import { type CircleFit, circleFitGeometric } from "./circle-fit-geometric.js";
import type { Estimate } from "./estimate.js";
import { beyondBoard } from "./radius-checks.js";
import { type ReadingPath, reach95, type SectionCurvature, stepSd } from "./radius-estimate.js";
import type { HeightsReading } from "./radius-reading.js";
import { tQuantile } from "./statistics.js";

/**
 * Curvature of the circle through heights across the board.
 *
 * A tilted straight line to measure from turns the circle and leaves its radius. The uncertainty is
 * that of the residuals (n − 3 degrees of freedom, Student's t) or that of the steps the heights and
 * places are read to, whichever interval is wider; three heights leave no residuals.
 */
export function sectionByHeights(
	reading: HeightsReading,
	path: ReadingPath,
): SectionCurvature | Problem[] {
	const faults = heightFaults(reading, path);
	if (faults.length > 0) return faults;
	const { heights } = reading;
	const fit = circleFitGeometric(heights.map(({ y, height }) => ({ x: y, y: height })));
	const { curvature, decidedBySteps } = curvatureOf(fit, reading);
	const facts = { count: heights.length, resolution: reading.resolution };
	const notes =
		heights.length === 3
			? [note("heights-three", path, facts)]
			: decidedBySteps
				? [note("heights-by-step", path, facts)]
				: [];
	return { curvature, chord: spanOf(reading), notes };
}

function curvatureOf(fit: CircleFit, { resolution, chordResolution }: HeightsReading) {
	const { leverage, normals, residuals } = fit;
	// A height that is off moves its point across the circle by the normal's share of it.
	const bySteps = Math.hypot(
		...leverage.flatMap((l, i) => [
			l * normals[i]!.y * stepSd(resolution),
			l * normals[i]!.x * stepSd(chordResolution),
		]),
	);
	const df = residuals.length - 3;
	const scatter = df > 0 ? Math.hypot(...residuals) / Math.sqrt(df) : 0;
	const byScatter = scatter * Math.hypot(...leverage);
	const stepReach = reach95() * bySteps;
	const scatterReach = df > 0 ? tQuantile(0.975, df) * byScatter : 0;
	const reach = Math.max(stepReach, scatterReach);
	const curvature: Estimate = {
		value: fit.curvature,
		standard: Math.max(bySteps, byScatter),
		low: fit.curvature - reach,
		high: fit.curvature + reach,
	};
	return { curvature, decidedBySteps: stepReach >= scatterReach };
}

function spanOf({ heights }: HeightsReading): number {
	const ys = heights.map((h) => h.y);
	return Math.max(...ys) - Math.min(...ys);
}

function heightFaults(reading: HeightsReading, path: ReadingPath): Problem[] {
	const { heights, board } = reading;
	const at = [...path, "heights"];
	const unread = heights.flatMap((h, i) =>
		(["y", "height"] as const)
			.filter((key) => !Number.isFinite(h[key]))
			.map((key) =>
				problem("reading-not-a-length", [...at, i, key], { key, given: String(h[key]) }),
			),
	);
	if (unread.length > 0) return unread;
	const places = new Set(heights.map((h) => h.y)).size;
	if (places < 3) return [problem("heights-too-few", at, { count: heights.length, places })];
	const ys = heights.map((h) => h.y);
	const [least, most] = [Math.min(...ys), Math.max(...ys)];
	if (least >= 0 || most <= 0) return [problem("heights-on-one-side", at, { least, most })];
	return beyondBoard("heights", most - least, board, path);
}
