import * as z from "zod";
import { type Claim, OPERATIONS, type Operation } from "../drawing/index.js";
import type { Path } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { PromisedFile, PromisedPage, PromisedPart, PromisedPrint } from "./types.js";

/** What a manifest promises. */
export interface Promised {
	readonly job: string;
	readonly files: readonly PromisedFile[];
	/** What goes on paper. */
	readonly prints: readonly PromisedPrint[];
	readonly parts: readonly PromisedPart[];
	/** SHA-256 of each file by its name, as it was written. */
	readonly digests: ReadonlyMap<string, string>;
}

/** Form of the manifest that is read here. */
const FORM = 1;
/** Longest manifest, characters: a hundred times that of a large job. */
const MOST_TEXT = 50_000_000;

const number = z.number();
const operation = z.enum(OPERATIONS as readonly [Operation, ...Operation[]]);
const point = z.strictObject({ x: number, y: number });
const pair = z.tuple([number, number]).transform(([x, y]) => ({ x, y }));
const path = z
	.object({
		closed: z.boolean(),
		points: z.array(z.union([z.tuple([number, number]), z.tuple([number, number, number])])).min(2),
	})
	.transform(
		({ closed, points }): Path => ({
			closed,
			points: points.map(([x, y, bulge = 0]) => ({ x, y, bulge })),
		}),
	);
const stock = z.object({
	material: z.string(),
	thickness: number,
	grain: z.literal("x").optional(),
});

const common = {
	id: z.string(),
	feature: z.string(),
	datum: z.string(),
	operation,
	nominal: number,
	bench: number.nonnegative(),
	file: number.positive(),
};
const sizeClaim = z.object({
	...common,
	kind: z.enum([
		"position",
		"width",
		"length",
		"depth",
		"radius",
		"sagitta",
		"diameter",
		"angle",
		"straightness",
	]),
	axis: z.enum(["x", "y", "line"]),
	at: z.array(pair).min(1),
	series: z.string().optional(),
});
const labelClaim = z.object({
	...common,
	kind: z.literal("label"),
	text: z.string().min(1),
	at: z.tuple([pair]),
	height: number.positive(),
	turn: number,
	font: z.string(),
});

const box = z.strictObject({ minX: number, minY: number, maxX: number, maxY: number });
const part = z.object({
	name: z.string(),
	stock,
	working: z.array(path),
	outline: z.array(path),
	scores: z.array(path),
	box,
	marks: z.partialRecord(operation, number),
	open: number,
	kerf: number.nonnegative(),
	nominal: z.boolean(),
	claims: z.array(z.union([sizeClaim, labelClaim])),
});

const manifestPage = z.object({
	width: number.positive(),
	height: number.positive(),
	rules: z.array(z.tuple([pair, pair]).transform(([from, to]) => ({ from, to }))),
	crosses: z.array(pair),
	tile: z
		.object({ part: z.string(), x: number, y: number, turn: number, window: box, own: box })
		.optional(),
});

const manifest = z.object({
	writer: z.literal("camber"),
	format: z.literal(FORM),
	job: z.string(),
	dimensions: z.boolean(),
	machine: z.object({
		stretch: point.optional(),
		bed: z.object({ size: point, margin: number, spacing: number }).optional(),
	}),
	files: z.array(
		z.object({
			name: z.string(),
			format: z.enum(["svg", "dxf", "pdf", "html"]),
			sha256: z.string(),
			print: z.string().optional(),
			made: z.object({ across: number.positive(), along: number.positive() }).optional(),
			pages: z.array(manifestPage).min(1).optional(),
			placed: z.array(z.object({ part: z.string(), x: number, y: number, turn: number })),
		}),
	),
	tools: z.array(z.object({ tool: z.string(), parts: z.array(part) })),
	sheets: z.array(z.object({ name: z.string() })),
});

/**
 * What a manifest's text promises of each of its files, or why it is no manifest of camber's.
 *
 * Nothing is taken on trust but the promises themselves: their form is checked, and every file's
 * parts must be among those that are described.
 */
export function promisedOf(text: string, name: string): Promised | Problem {
	const refuse = (reason: string) => problem("manifest-unreadable", [], { file: name, reason });
	if (text.length > MOST_TEXT) return refuse(`it is longer than ${MOST_TEXT} characters`);
	let value: unknown;
	try {
		value = JSON.parse(text);
	} catch {
		return refuse("it is no JSON");
	}
	const read = manifest.safeParse(value);
	if (!read.success) {
		const { path: at, message } = read.error.issues[0]!;
		return refuse(at.length > 0 ? `at ${at.join(".")}: ${message}` : message);
	}
	const { job, dimensions, machine, tools, sheets } = read.data;
	const listed = read.data.files;
	const onPaper = listed.filter(({ pages }) => pages);
	const files = listed.flatMap(({ format, pages, ...file }) =>
		format === "html" || format === "pdf" || pages ? [] : [{ ...file, format }],
	);
	const empty = files.find(({ placed }) => placed.length === 0);
	if (empty) return refuse(`it says of no part where it lies in ${empty.name}`);
	const parts = tools.flatMap(({ tool, parts: list }) =>
		list.map((p): PromisedPart => ({ ...p, tool, claims: p.claims as readonly Claim[] })),
	);
	const beds = new Set(sheets.map((sheet) => sheet.name));
	const tiles = onPaper.flatMap((f) => f.pages!.flatMap((p) => p.tile ?? []));
	const shown = [...files.flatMap((f) => f.placed), ...tiles];
	const lost = shown.find((p) => !parts.some((q) => q.name === p.part));
	if (lost) return refuse(`it does not describe the part "${lost.part}"`);
	return {
		job,
		parts,
		digests: new Map(listed.map((f) => [f.name, f.sha256])),
		prints: printsOf(onPaper, parts),
		files: files.map((f): PromisedFile => {
			const onBed = beds.has(f.name.replace(/\.[a-z]+$/u, ""));
			return {
				name: f.name,
				format: f.format,
				placed: f.placed.map(({ part: of, x, y, turn }) => ({
					part: parts.find((p) => p.name === of)!,
					move: { x, y, turn, mirror: false },
				})),
				stretch: machine.stretch ?? { x: 1, y: 1 },
				bed: onBed ? (machine.bed ?? null) : null,
				dimensions,
			};
		}),
	};
}

type ListedFile = z.output<typeof manifest>["files"][number];

/** Files on paper, those of one print and format together. */
function printsOf(listed: readonly ListedFile[], parts: readonly PromisedPart[]): PromisedPrint[] {
	const groups = new Map<string, ListedFile[]>();
	for (const file of listed) {
		const key = JSON.stringify([file.print, file.format]);
		groups.set(key, [...(groups.get(key) ?? []), file]);
	}
	return [...groups.values()].map((files): PromisedPrint => {
		const { across = 1, along = 1 } = files[0]!.made ?? {};
		return {
			made: { x: across, y: along },
			files: files.map(({ name, format, pages }) => ({
				name,
				format: format === "svg" ? "svg" : "pdf",
				pages: pages!.map((p) => pageOf(p, parts)),
			})),
		};
	});
}

function pageOf(
	{ tile, ...page }: z.output<typeof manifestPage>,
	parts: readonly PromisedPart[],
): PromisedPage {
	if (!tile) return { ...page, tile: null };
	const { part: name, x, y, turn, window, own } = tile;
	const move = { x, y, turn, mirror: false };
	return { ...page, tile: { part: parts.find((p) => p.name === name)!, move, window, own } };
}
