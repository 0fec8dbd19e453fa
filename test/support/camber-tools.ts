import fc from "fast-check";
import { expect } from "vitest";
import type { Mark, Part } from "../../src/drawing/index.js";
import { distanceTo, pointAt, segments } from "../../src/geometry/index.js";
import { madeParts } from "./made-parts.js";
import { outlineOf } from "./measure-part.js";
import { claimFaults, foundInDamaged, fullyMade } from "./part-checks.js";
import { contourFaults, labelFaults } from "./part-faults.js";
import { RUNS, randomJob } from "./random-neck.js";

/** Everything that may be wrong with a part by itself, as sentences. */
function faultsOf(part: Part): string[] {
	return [...contourFaults(part), ...labelFaults(part), ...claimFaults(part), ...nearEdge(part)];
}

/** Letters and holes nearer than 3 mm to a working edge. */
function nearEdge(part: Part): string[] {
	const outline = outlineOf(part);
	const edges = part.working.flatMap(segments);
	return part.marks
		.filter((m) => m.path !== outline)
		.filter(({ path }) =>
			segments(path)
				.flatMap((s) => [s.start, pointAt(s, 0.25), pointAt(s, 0.5), pointAt(s, 0.75), s.end])
				.some((p) => edges.some((edge) => distanceTo(edge, p) < 3 - 1e-9)),
		)
		.map((m) => `${m.feature} is too near the working edge`);
}

/**
 * Checks every part that a tool makes of random necks, and that it made enough of them.
 *
 * @param settings - of the tool, drawn anew for each neck
 * @param also - what else may be wrong with a part
 */
export function checkParts(
	tool: string,
	settings: fc.Arbitrary<object>,
	also: (part: Part) => readonly string[] = () => [],
): void {
	const job = fc
		.tuple(randomJob({ leastGap: 5, strings: true }), settings)
		.map(([{ job }, own]) => ({ ...job, make: [{ [tool]: own }] }));
	let seen = 0;
	fc.assert(
		fc.property(job, (one) => {
			const { parts } = madeParts(one);
			seen += parts.length;
			const faults = parts.flatMap((p) =>
				[...faultsOf(p), ...also(p)].map((f) => `${p.name}: ${f}`),
			);
			expect(faults).toEqual([]);
		}),
		RUNS,
	);
	expect(seen).toBeGreaterThan(RUNS.numRuns / 4);
}

/** A job made in every format, each file proven: what is found. @throws Error if it is refused */
export async function foundInJob(text: string): Promise<readonly unknown[]> {
	const drawn = await fullyMade(text, { formats: ["svg", "dxf"] });
	const printed = await fullyMade(text, { paper: "A4" });
	const proven = [...drawn.proven, ...printed.proven];
	expect(proven.length).toBeGreaterThan(2);
	for (const { measured } of proven) expect(measured.length).toBeGreaterThan(0);
	return proven.flatMap(({ findings }) => findings);
}

/** Codes found in the SVG of a job's first part, after a change to what is written. */
export async function foundAfter(text: string, change: (part: Part) => Part): Promise<string[]> {
	const made = await fullyMade(text, { formats: ["svg"], dimensions: false, proof: false });
	return foundInDamaged(made, made.drawings[0]!.sheet.name, change);
}

/** A part whose outline's arc of the largest radius is as much flatter: its bulge times `by`. */
export function arcFlattened(by: number): (part: Part) => Part {
	return (part) => {
		const outline = part.marks.find((m) => m.feature === "outline")!;
		const { points } = outline.path;
		const at = points.findIndex((p) => p.bulge !== 0 && Math.abs(p.bulge) < 0.3);
		const path = {
			...outline.path,
			points: points.map((p, i) => (i === at ? { ...p, bulge: p.bulge * by } : p)),
		};
		return { ...part, marks: part.marks.map((m): Mark => (m === outline ? { ...m, path } : m)) };
	};
}

/** A part whose outline's points in a region are moved. */
export function pointsMoved(
	within: (p: { readonly x: number; readonly y: number }) => boolean,
	x: number,
	y: number,
): (part: Part) => Part {
	return (part) => ({
		...part,
		marks: part.marks.map((m): Mark => {
			if (m.feature !== "outline") return m;
			const points = m.path.points.map((p) => (within(p) ? { ...p, x: p.x + x, y: p.y + y } : p));
			return { ...m, path: { ...m.path, points } };
		}),
	});
}
