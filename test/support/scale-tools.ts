import fc from "fast-check";
import { expect } from "vitest";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import { distanceTo, type Path, segments } from "../../src/geometry/index.js";
import { make } from "../../src/make.js";
import { madeParts } from "./made-parts.js";
import { measured, outlineOf } from "./measure-part.js";
import { foundInDamaged, fullyMade } from "./part-checks.js";
import { contourFaults, crossed, labelFaults, labelRectangles } from "./part-faults.js";
import { type NeckOptions, RUNS, randomJob } from "./random-neck.js";

/** The sizes that a part promises. */
export function sizesOf(part: Part): SizeClaim[] {
	return part.claims.filter((c): c is SizeClaim => c.kind !== "label");
}

/** Faults of a part whatever it is: contours, labels, claims that are not what is cut. */
export function faultsOf(part: Part): string[] {
	const scores = part.marks.filter((m) => m.operation === "score");
	const ids = part.claims.map((c) => c.id);
	return [
		...contourFaults(part),
		...labelFaults(part),
		...crossed(labelRectangles(part), scores),
		...sizesOf(part).flatMap((claim) => {
			const found = claim.kind === "straightness" ? unevenness(part, claim) : measured(part, claim);
			const off = Math.abs(Math.abs(found) - Math.abs(claim.nominal));
			return off < 1e-9 ? [] : [`${claim.id} is ${found}, not ${claim.nominal}`];
		}),
		...ids.filter((id, i) => ids.indexOf(id) < i).map((id) => `${id} is claimed twice`),
		...nearWork(part),
	];
}

/** How far the pieces of the outline along a claimed edge leave the line through its ends, mm. */
function unevenness(part: Part, { at: [a, b] }: SizeClaim): number {
	const size = Math.hypot(b!.x - a!.x, b!.y - a!.y);
	const along = (p: { x: number; y: number }) =>
		((p.x - a!.x) * (b!.x - a!.x) + (p.y - a!.y) * (b!.y - a!.y)) / size;
	const beside = (p: { x: number; y: number }) =>
		((p.y - a!.y) * (b!.x - a!.x) - (p.x - a!.x) * (b!.y - a!.y)) / size;
	const pieces = segments(outlineOf(part)).filter(
		(s) =>
			Math.min(along(s.start), along(s.end)) > -1e-9 &&
			Math.max(along(s.start), along(s.end)) < size + 1e-9 &&
			Math.abs(along(s.end) - along(s.start)) > 1e-9 &&
			Math.max(Math.abs(beside(s.start)), Math.abs(beside(s.end))) < 0.1,
	);
	const reach = pieces.flatMap((s) => [along(s.start), along(s.end)]);
	if (!(Math.min(...reach) < 1e-9 && Math.max(...reach) > size - 1e-9)) return Number.NaN;
	return Math.max(...pieces.flatMap((s) => [beside(s.start), beside(s.end)].map(Math.abs)));
}

/** Labels and holes to hang it by that come within 3 mm of a working edge. */
function nearWork(part: Part): string[] {
	const edges = part.working.flatMap(segments);
	const near = (path: Path) =>
		segments(path).some((s) =>
			edges.some((e) =>
				s.kind === "line"
					? Math.min(distanceTo(e, s.start), distanceTo(e, s.end)) < 3 - 1e-9
					: distanceTo(e, s.centre) - s.radius < 3 - 1e-9,
			),
		);
	return part.marks
		.filter((m) => m.operation === "engrave" || m.feature === "hanging hole")
		.filter((m) => near(m.path))
		.map((m) => `${m.feature} is too near to a working edge`);
}

/** Every part of a tool over random necks and settings is without fault. */
export function expectSound(
	tool: string,
	settings: fc.Arbitrary<object>,
	neck: NeckOptions,
	adapt: (job: object) => object = (job) => job,
) {
	let seen = 0;
	fc.assert(
		fc.property(randomJob(neck), settings, ({ job }, given) => {
			const { parts } = madeParts({ ...adapt(job), make: [{ [tool]: given }] });
			seen += parts.length;
			expect(parts.flatMap(faultsOf)).toEqual([]);
		}),
		RUNS,
	);
	expect(seen).toBeGreaterThan(RUNS.numRuns / 2);
}

/** What a whole run finds wrong in its own files; its problems if it is refused. */
export async function runFindings(text: string): Promise<string[]> {
	const formats = ["svg", "dxf"] as const;
	const runs = [
		await make(text, { formats: [...formats] }),
		await make(text, { formats: ["svg"], paper: "A4" }),
	];
	return runs.flatMap((made) =>
		made.ok
			? made.proven.length === 0
				? ["not proven"]
				: made.proven.flatMap((p) => p.findings.map((f) => f.code))
			: made.problems.map((p) => p.code),
	);
}

/** What is found in the SVG of a job's first part after a change of its sheet. */
export async function foundAfter(text: string, change: (part: Part) => Part): Promise<string[]> {
	const made = await fullyMade(text, { dimensions: false });
	return foundInDamaged(made, made.drawings[0]!.sheet.name, change);
}

/** A part with every point of some features' paths changed. */
export function withPoints(
	part: Part,
	isMeant: (feature: string) => boolean,
	change: (p: { x: number; y: number }) => { x: number; y: number },
): Part {
	const marks = part.marks.map((m) =>
		isMeant(m.feature)
			? { ...m, path: { ...m.path, points: m.path.points.map((p) => ({ ...p, ...change(p) })) } }
			: m,
	);
	return { ...part, marks };
}

/** A part without a feature. */
export function lacking(part: Part, feature: string): Part {
	return { ...part, marks: part.marks.filter((m) => m.feature !== feature) };
}
