import { readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Part } from "../../src/drawing/index.js";
import { closed, rectangle, STAY, segments, shift, vertex } from "../../src/geometry/index.js";
import type { Problem } from "../../src/problem/index.js";
import { finishedPart } from "../../src/proof/finished.js";
import { type PromisedFile, Prover, promisedOf } from "../../src/proof/index.js";
import { lineFaults } from "../../src/proof/lines.js";
import { outlineFaults } from "../../src/proof/outline.js";
import { rejoined } from "../../src/proof/rejoined.js";
import { writeSvg } from "../../src/writers/index.js";
import { PENS, sheetOf } from "./drawings.js";
import { JOB } from "./job-text.js";
import { jobWith, LETTERS, madeParts } from "./made-parts.js";
import { shifted, withPaths } from "./proof-measure-faults.js";
import { drawingOf, promisedPart, strokesOf } from "./read-drawings.js";
import { camber } from "./run-camber.js";

/**
 * Problems of whole files: without a drawing, a manifest, or a part that could be found.
 *
 * @param folder - empty, to write into
 */
export async function problemsOfFiles(folder: string): Promise<Problem[]> {
	const prover = new Prover(LETTERS);
	const [part] = madeParts(jobWith({}, ["radius-gauge"])).parts;
	const file: PromisedFile = {
		name: "a.svg",
		format: "svg",
		placed: [{ part: promisedPart(part!), move: STAY }],
		stretch: { x: 1, y: 1 },
		bed: null,
		dimensions: true,
	};
	const svg = (inner: string) =>
		new TextEncoder().encode(
			`<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm" viewBox="0 0 9 9">${inner}</svg>`,
		);
	const bare = await prover.prove(svg(""), file);
	const square = svg('<g id="cut"><path d="M 1 1 L 5 1 L 5 5 L 1 5 Z"/></g>');
	const lost = await prover.proveSought(square, file);
	const unreadable = promisedOf("{", "manifest.json");
	const flipped = withPaths(part!, "outline", ({ points, closed }) => {
		const at = points.findIndex((p) => p.bulge > 0.4);
		return [{ closed, points: points.map((p, i) => (i === at ? { ...p, bulge: -p.bulge } : p)) }];
	});
	const finished = finishedPart(promisedPart(part!), strokesOf(flipped), null);
	const plate: Part = {
		...part!,
		claims: [],
		marks: [{ operation: "cut", path: rectangle(0, 0, 10, 6), feature: "outline" }],
	};
	const notched = [
		[0, 0],
		[7, 0],
		[7, 2],
		[8, 2],
		[8, 0],
		[10, 0],
		[10, 6],
		[0, 6],
	] as const;
	const outline = [closed(...notched.map(([x, y]) => vertex(x, y)))];
	const filled = finishedPart(promisedPart(plate), strokesOf(plate), null);
	const [strip] = madeParts(jobWith({}, ["slot-strip"])).parts;
	const shift1 = shifted(strip!, "theoretical nut", 1, 0);
	const elsewhere = sheetOf("a", { placed: [{ part: part!, move: shift(30, 20) }] });
	const away = await prover.prove(new TextEncoder().encode(writeSvg(elsewhere, PENS)), file);
	const pieces = withPaths(part!, "outline", (path) =>
		segments(path).map((s) => ({
			closed: false,
			points: [vertex(s.start.x, s.start.y), vertex(s.end.x, s.end.y)],
		})),
	);
	return [
		...lineFaults(
			promisedPart(strip!),
			finishedPart(promisedPart(strip!), strokesOf(shift1), null),
		),
		...away.findings,
		...rejoined(drawingOf(strokesOf(pieces)), file).findings,
		...bare.findings,
		...lost.findings,
		...outlineFaults(promisedPart(part!), finished),
		...outlineFaults({ ...promisedPart(plate), outline }, filled),
		...("code" in unreadable ? [unreadable] : []),
		...(await problemsOfCommand(folder)),
	];
}

/** What `camber proof --json` says of files that were changed, removed, renamed, of no job at all. */
async function problemsOfCommand(folder: string): Promise<Problem[]> {
	const at = (...names: string[]) => join(folder, ...names);
	writeFileSync(at("neck.yaml"), JOB);
	const made = ["--out", at("out"), "--only", "radius-gauge"];
	await camber(["make", at("neck.yaml"), ...made]);
	const drawing = at("out", "test-neck-radius-gauge-concave");
	writeFileSync(`${drawing}.svg`, `${readFileSync(`${drawing}.svg`, "utf8")}\n`);
	rmSync(`${drawing}.dxf`);
	writeFileSync(at("out", "stranger.svg"), "");
	writeFileSync(at("alone.svg"), "");
	const said = await Promise.all([
		saidBy("proof", at("out")),
		saidBy("proof", at("out", "stranger.svg")),
		saidBy("proof", at("alone.svg")),
		saidBy("proof", at("alone.svg"), "--job", at("neck.yaml")),
		saidBy("proof", at("out"), "--tool", "slot-strip"),
		saidBy("make", at("neck.yaml"), "--machine", at("none.yaml")),
	]);
	return said.flat();
}

/** The problems and findings that a command tells machines. */
async function saidBy(command: string, ...args: string[]): Promise<Problem[]> {
	const { out } = await camber([command, ...args, "--json"]);
	const { problems = [], proven = [] } = JSON.parse(out);
	return [...problems, ...proven.flatMap((p: { findings: Problem[] }) => p.findings)];
}
