import type { Part, Sheet, SizeClaim } from "../../src/drawing/index.js";
import { distanceTo, segments } from "../../src/geometry/index.js";
import { type Made, type MakeOptions, make } from "../../src/make.js";
import { Prover, promisedOf } from "../../src/proof/index.js";
import { writeSvg } from "../../src/writers/index.js";
import { LETTERS } from "./made-parts.js";
import { measured, outlineOf } from "./measure-part.js";
import { contourFaults, crossed, labelFaults, labelRectangles } from "./part-faults.js";

/** Everything that any part must keep: contours, letters, claims, and the air of its working edge. */
export function faultsOfPart(part: Part): string[] {
	const scores = part.marks.filter((m) => m.operation === "score");
	return [
		...contourFaults(part),
		...labelFaults(part),
		...crossed(labelRectangles(part), scores),
		...claimFaults(part),
		...nearWorkingEdge(part),
	].map((fault) => `${part.name}: ${fault}`);
}

/** Claims that the part does not keep, or makes twice. */
export function claimFaults(part: Part): string[] {
	const ids = part.claims.map((c) => c.id);
	const twice = ids.filter((id, i) => ids.indexOf(id) < i).map((id) => `${id} is claimed twice`);
	const sizes = part.claims.filter((c): c is SizeClaim => c.kind !== "label");
	const off = sizes.flatMap((claim) => {
		const found = measured(part, claim);
		const isKept = Math.abs(Math.abs(found) - Math.abs(claim.nominal)) < 1e-9;
		return isKept ? [] : [`${claim.id} is ${found}, not ${claim.nominal}`];
	});
	return [...twice, ...off];
}

/** Letters and holes within 3 mm of a working edge. */
function nearWorkingEdge(part: Part): string[] {
	const outline = outlineOf(part);
	const edges = part.working.flatMap(segments);
	const others = part.marks.filter((m) => m.path !== outline && m.operation !== "score");
	const reach = ({ points, closed }: Part["marks"][number]["path"]) =>
		closed && points.length === 2 ? Math.abs(points[0]!.x - points[1]!.x) / 2 : 0;
	return others
		.filter(({ path }) => {
			const round = reach(path);
			const [a, b] = path.points;
			const places = round > 0 ? [{ x: (a!.x + b!.x) / 2, y: a!.y }] : path.points;
			return places.some((p) => edges.some((s) => distanceTo(s, p) - round < 3 - 1e-9));
		})
		.map(({ feature }) => `${feature} is too near to the working edge`);
}

type MadeJob = Extract<Made, { ok: true }>;

/** A job made and measured again. @throws Error with its problems if it is refused */
export async function fullyMade(text: string, options: MakeOptions = {}): Promise<MadeJob> {
	const made = await make(text, options);
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	return made;
}

/** What was found in the files of a job that was made. */
export function findingsOf({ proven }: MadeJob): string[] {
	return proven.flatMap(({ findings }) => findings.map(({ code }) => code));
}

/** What is found in the SVG of a part after its drawing was changed. */
export async function foundInDamaged(
	made: MadeJob,
	name: string,
	change: (part: Part) => Part,
): Promise<string[]> {
	const { sheet } = made.drawings.find((d) => d.sheet.name.endsWith(name))!;
	const promised = promisedOf(new TextDecoder().decode(made.files.at(-1)!.bytes), "manifest.json");
	if ("code" in promised) throw new Error(JSON.stringify(promised));
	const changed: Sheet = {
		...sheet,
		placed: sheet.placed.map((p) => ({ ...p, part: change(p.part) })),
	};
	const file = promised.files.find((f) => f.name === `${sheet.name}.svg`)!;
	const bytes = new TextEncoder().encode(writeSvg(changed, made.job.bench.machine.pens));
	return (await new Prover(LETTERS).prove(bytes, file)).findings.map(({ code }) => code);
}
