import {
	inOrder,
	kerfIn,
	type Layout,
	stretchedSheet,
	type Work,
	workOf,
} from "../cutting/index.js";
import {
	type Part,
	type Placed,
	type Sheet,
	type Stock,
	sheetOfMany,
	sheetOfOne,
	type TitleFacts,
} from "../drawing/index.js";
import type { Job } from "../job/index.js";
import type { Lettering } from "../lettering/index.js";
import { cautionsFor, type MaterialName } from "../shop/index.js";
import { fixed, trimmed } from "../units/index.js";
import type { MadeTool } from "./build.js";

/** How drawings are made. */
export interface DrawOptions {
	/** Whether the reference layer is drawn: yes. */
	readonly dimensions?: boolean;
}

/** A drawing in the order of work, as the machine must be told it. */
export interface Drawing {
	readonly sheet: Sheet;
	/** Where the parts lie on it, before it is drawn for the machine's own stretch. */
	readonly placed: readonly Placed[];
	readonly work: Work;
	/** Of a laid-out bed: what it is cut from and how much of it is used. */
	readonly laid: { readonly stock: Stock; readonly used: number } | null;
}

/** Every part's own drawing, then every laid-out sheet. */
export function drawAll(
	job: Job,
	tools: readonly MadeTool[],
	layouts: readonly Layout[],
	letters: Lettering,
	{ dimensions = true }: DrawOptions,
): Drawing[] {
	const parts = tools.flatMap((tool) => tool.parts);
	const single = parts.map((part) => {
		const name = `${job.fileName}-${part.name}`;
		const sheet = sheetOfOne(part, factsOf(job, part.stock), letters, name, dimensions);
		return drawn(job, sheet, null);
	});
	const beds = layouts.map((layout, i) => bedOf(job, layouts, i, letters, dimensions, layout));
	return [...single, ...beds];
}

function factsOf({ bench }: Job, stock: Part["stock"]): TitleFacts {
	return {
		job: bench.job,
		date: bench.date,
		kerf: kerfIn(bench.machine, stock) ?? 0,
		cautions: cautionsFor(bench.machine.kind, stock.material as MaterialName),
	};
}

function drawn(job: Job, given: Sheet, laid: Drawing["laid"]): Drawing {
	const { machine } = job.bench;
	const sheet = inOrder(given);
	const work = workOf(sheet, machine.speeds);
	return { sheet: stretchedSheet(sheet, machine.stretch), placed: sheet.placed, work, laid };
}

/** The drawing of one bed; the work is told in its block, so it is put in order first. */
function bedOf(
	job: Job,
	layouts: readonly Layout[],
	i: number,
	letters: Lettering,
	dimensions: boolean,
	{ stock, placed, used }: Layout,
): Drawing {
	const { machine } = job.bench;
	const bed = machine.bed!.size;
	const bare = { name: "", title: "", size: boxOf(bed), placed, marks: [], notes: [] };
	const ordered = inOrder(bare);
	const work = workOf(ordered, machine.speeds);
	const facts = {
		...factsOf(job, stock),
		sheet: i + 1,
		of: layouts.length,
		lines: [`Work: ${workText(work)}`, ...stretchText(machine.stretch)],
	};
	const name = `${job.fileName}-sheet-${i + 1}`;
	const laid = { bed, stock, placed: ordered.placed, used };
	const sheet = sheetOfMany(laid, facts, letters, name, dimensions);
	return {
		sheet: stretchedSheet(sheet, machine.stretch),
		placed: ordered.placed,
		work,
		laid: { stock, used },
	};
}

function boxOf({ x, y }: { readonly x: number; readonly y: number }) {
	return { minX: 0, minY: 0, maxX: x, maxY: y };
}

/** Lengths and, where the speeds are known, the time: "cut 3.21 m, score 0.80 m, travel 1.10 m, about 5 min 10 s". */
export function workText({ cut, score, engrave, travel, seconds }: Work): string {
	const metres = (name: string, mm: number) => (mm > 0 ? [`${name} ${fixed(mm / 1000, 2)} m`] : []);
	const lengths = [
		...metres("cut", cut),
		...metres("score", score),
		...metres("engrave", engrave),
		...metres("travel", travel),
	].join(", ");
	if (seconds === null) return lengths;
	const whole = Math.max(1, Math.round(seconds));
	const minutes = Math.floor(whole / 60);
	return `${lengths}; about ${minutes > 0 ? `${minutes} min ` : ""}${whole % 60} s`;
}

function stretchText({ x, y }: { readonly x: number; readonly y: number }): string[] {
	if (x === 1 && y === 1) return [];
	const [along, across] = [trimmed(x, 6), trimmed(y, 6)];
	return [`Drawn for a machine that makes ${along} of 1 along x and ${across} along y.`];
}
