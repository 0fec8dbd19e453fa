import { kerfIn, type Machine } from "./cutting/index.js";
import { type Claim, OPERATIONS, type OutFile, type Part, partExtents } from "./drawing/index.js";
import type { Path, Point } from "./geometry/index.js";
import type { Job } from "./job/index.js";
import type { Paper, PrintedPage, Tile } from "./paper/index.js";
import { problemText } from "./problem/index.js";
import type { MadeTool, SkippedTool } from "./stages/build.js";
import type { Drawing } from "./stages/draw.js";
import type { WrittenPrint } from "./stages/print.js";
import { stable } from "./units/index.js";

/** Form of the manifest; raised when a reader would misread it. */
const MANIFEST_FORMAT = 1;

/** What a manifest is made of. */
export interface ManifestFacts {
	readonly job: Job;
	/** Parts at nominal size. */
	readonly tools: readonly MadeTool[];
	/** Tools of kits that were not made, each with its reasons. */
	readonly skipped: readonly SkippedTool[];
	readonly drawings: readonly Drawing[];
	readonly prints: readonly WrittenPrint[];
	readonly files: readonly OutFile[];
	readonly cautions: readonly string[];
	/** Whether the reference layer is drawn. */
	readonly dimensions: boolean;
}

/**
 * `manifest.json`: every file with its SHA-256 and where its parts lie, every tool with the
 * settings used, what of kits was not made and why, every part with its claims and how far its paths were moved for the kerf, the
 * laid-out sheets with their work, and the cautions. Numbers pass the one formatter, so that
 * engines agree.
 */
export async function manifestOf(facts: ManifestFacts): Promise<OutFile> {
	const { job, tools, skipped, drawings, prints, files, cautions, dimensions } = facts;
	const { bench } = job;
	const content = {
		writer: "camber",
		format: MANIFEST_FORMAT,
		job: bench.job,
		...(bench.date === null ? {} : { date: bench.date }),
		units: "mm, rad",
		machine: machineEntry(bench.machine),
		dimensions,
		...(prints.length === 0 ? {} : { paper: paperEntry(bench.paper) }),
		files: await Promise.all(files.map((file) => fileEntry(file, drawings, prints))),
		tools: tools.map((tool) => toolEntry(tool, bench.machine, drawings)),
		...(skipped.length === 0 ? {} : { notMade: skipped.map(skippedEntry) }),
		sheets: drawings.flatMap(sheetEntry),
		cautions,
	};
	const text = `${JSON.stringify(content, numbersStable, "\t")}\n`;
	const bytes = new TextEncoder().encode(text);
	return { name: "manifest.json", format: "json", bytes, sheet: "", parts: [] };
}

function skippedEntry({ wanted, reasons }: SkippedTool) {
	return { tool: wanted.tool.id, reasons: reasons.map(problemText) };
}

function machineEntry({ kind, tolerance, kerf, cutter, tabs, bed, speeds, stretch }: Machine) {
	return {
		kind,
		tolerance,
		kerf,
		...(cutter === null ? {} : { cutter }),
		...(tabs === null ? {} : { tabs }),
		...(bed === null ? {} : { bed }),
		...(speeds === null ? {} : { speeds }),
		...(stretch.x === 1 && stretch.y === 1 ? {} : { stretch }),
	};
}

/** `placed` says where each part's own frame lies in the file, before the machine's stretch. */
async function fileEntry(
	{ name, format, bytes, parts, sheet }: OutFile,
	drawings: readonly Drawing[],
	prints: readonly WrittenPrint[],
) {
	const drawing = drawings.find((d) => d.sheet.name === sheet);
	const placed = (drawing?.placed ?? []).map(({ part, move: { x, y, turn } }) => ({
		part: part.name,
		x,
		y,
		turn,
	}));
	const printed = printedEntry(name, prints);
	return {
		name,
		format,
		bytes: bytes.length,
		sha256: await sha256(bytes),
		parts,
		placed,
		...printed,
	};
}

function paperEntry({ name, width, height, margin, overlap, made }: Paper) {
	return { name, width, height, margin, overlap, across: made.x, along: made.y };
}

/** What a file on paper shows on its pages, in true millimetres of each, and what they are divided by. */
function printedEntry(name: string, prints: readonly WrittenPrint[]) {
	const written = prints.find(({ files }) => files.some((file) => file.name === name));
	if (!written) return {};
	const { print, files } = written;
	const { made, pages } = print;
	const own = files.length === 1 ? pages : [pages[files.findIndex((f) => f.name === name)]!];
	return { print: print.name, made: { across: made.x, along: made.y }, pages: own.map(pageEntry) };
}

function pageEntry({ sheet, rules, crosses, tile }: PrintedPage) {
	const { maxX, maxY } = sheet.size;
	const pair = ({ x, y }: Point) => [x, y];
	return {
		width: maxX,
		height: maxY,
		rules: rules.map(({ from, to }) => [pair(from), pair(to)]),
		crosses: crosses.map(pair),
		...(tile ? { tile: tileEntry(tile) } : {}),
	};
}

function tileEntry({ part, move: { x, y, turn }, window, own }: Tile) {
	return { part: part.name, x, y, turn, window, own };
}

function toolEntry(
	{ wanted, settings, parts }: MadeTool,
	machine: Machine,
	drawings: readonly Drawing[],
) {
	return {
		tool: wanted.tool.id,
		name: wanted.name,
		stock: wanted.stock,
		layers: wanted.layers,
		settings,
		parts: parts.map((part) => partEntry(part, machine, drawings)),
	};
}

/** A part at nominal size, with how it is cut: what a file that shows it is measured against. */
function partEntry(part: Part, machine: Machine, drawings: readonly Drawing[]) {
	const { name, title, workingEdge, stock, notes, claims, nominal } = part;
	const kerf = nominal ? 0 : (kerfIn(machine, stock) ?? 0);
	const asCut = drawings.flatMap((d) => d.placed).find((p) => p.part.name === name)!.part;
	const cuts = asCut.marks.filter((m) => m.operation === "cut");
	const contours = part.marks.filter((m) => m.operation === "cut");
	return {
		name,
		title,
		stock,
		workingEdge,
		working: part.working.map(pathEntry),
		outline: contours.map((m) => pathEntry(m.path)),
		scores: part.marks.filter((m) => m.operation === "score").map((m) => pathEntry(m.path)),
		box: partExtents(part),
		marks: Object.fromEntries(
			OPERATIONS.map(
				(o) => [o, asCut.marks.filter((m) => m.operation === o).length] as const,
			).filter(([, count]) => count > 0),
		),
		open: cuts.filter((m) => !m.path.closed).length,
		kerf,
		pathMoved: kerf / 2,
		nominal: nominal ?? false,
		notes,
		claims: claims.map(claimEntry),
	};
}

/** A path as [x, y] or [x, y, bulge] for each of its points. */
function pathEntry({ closed, points }: Path) {
	return {
		closed,
		points: points.map(({ x, y, bulge }) => (bulge === 0 ? [x, y] : [x, y, bulge])),
	};
}

function sheetEntry({ sheet, work, laid, placed }: Drawing) {
	if (!laid) return [];
	const { name } = sheet;
	return [{ name, ...laid, work, parts: placed.map(({ part }) => part.name) }];
}

function claimEntry(claim: Claim) {
	return { ...claim, at: claim.at.map(({ x, y }) => [x, y]) };
}

function numbersStable(_key: string, value: unknown): unknown {
	return typeof value === "number" ? stable(value) : value;
}

/** SHA-256 as hex digits, by the platform's own Web Cryptography. */
export async function sha256(bytes: Uint8Array): Promise<string> {
	const digest = await crypto.subtle.digest("SHA-256", bytes as Uint8Array<ArrayBuffer>);
	return [...new Uint8Array(digest)].map((b) => b.toString(16).padStart(2, "0")).join("");
}
