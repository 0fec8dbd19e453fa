import type { Bed, Machine } from "../cutting/index.js";
import { OPERATIONS, type Pens } from "../drawing/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { MachineKind } from "../shop/index.js";
import { trimmed } from "../units/index.js";
import type { MachineValues } from "./machine-schema.js";

/** What a machine has that neither its file nor the job gives, mm. */
const USUAL = { tolerance: 0.05, margin: 5 } as const;

/** How far off an edge may be that is cut by hand along a printed line, mm (common practice, no source). */
export const BY_HAND = 0.3;

/** Least distance between parts on a bed, mm: with less, thin waste burns or breaks (common practice, no source). */
const LEAST_SPACING = 2;

/** Own colours, told apart by hue and by lightness; widths of ISO 128's 2 : 1 (wide : narrow). */
const USUAL_PENS: Pens = {
	reference: { colour: "#5f6673", width: 0.13 },
	tab: { colour: "#b02a6f", width: 0.35 },
	score: { colour: "#b5530d", width: 0.18 },
	engrave: { colour: "#5b3fa0", width: 0.25 },
	cut: { colour: "#0b7a75", width: 0.25 },
};

/**
 * A job's machine over that of a machine's own file: the job's keys win, in maps each by itself;
 * of two lists of kerfs the job's entries stand before the file's.
 */
export function mergedMachine(file: MachineValues, job: MachineValues): MachineValues {
	const { kerf } = job;
	const lists = Array.isArray(kerf) && Array.isArray(file.kerf) ? [...kerf, ...file.kerf] : null;
	const kerfs = lists ?? kerf ?? file.kerf;
	return {
		...file,
		...job,
		...(kerfs === undefined ? {} : { kerf: kerfs }),
		...both("tabs", file, job),
		...both("speeds", file, job),
		...both("stretch", file, job),
		...pensOfBoth(file.pens, job.pens),
	};
}

type GivenPens = Record<string, { colour?: string; width?: number } | undefined>;

/** Every pen's colour and width, the job's before the file's. */
function pensOfBoth(file: MachineValues["pens"] = {}, job: MachineValues["pens"] = {}) {
	const [under, over] = [file as GivenPens, job as GivenPens];
	const pens = OPERATIONS.map((o) => [o, { ...under[o], ...over[o] }] as const);
	return { pens: Object.fromEntries(pens) as MachineValues["pens"] };
}

function both<K extends "tabs" | "speeds" | "stretch">(
	key: K,
	file: MachineValues,
	job: MachineValues,
) {
	return file[key] === undefined && job[key] === undefined
		? {}
		: { [key]: { ...file[key], ...job[key] } };
}

/** The machine that values describe, or what does not go together, its path from `machine` on. */
export function machineOf(values: MachineValues): Machine | Problem[] {
	const { kind = "laser", kerf = 0, cutter = null, relief = "none" } = values;
	const { speeds, stretch } = values;
	const bed = bedOf(values, kind);
	const problems = [...misfits(values, kind), ...(Array.isArray(bed) ? bed : [])];
	if (problems.length > 0 || Array.isArray(bed)) return problems;
	return {
		kind,
		tolerance: values.tolerance ?? (kind === "printer" ? BY_HAND : USUAL.tolerance),
		kerf,
		cutter,
		relief,
		tabs: values.tabs ?? null,
		bed,
		speeds: speeds ? { ...speeds, engrave: speeds.engrave ?? speeds.score } : null,
		stretch: { x: stretch?.x ?? 1, y: stretch?.y ?? 1 },
		pens: pensOf(values.pens),
	};
}

function widestOf(kerf: Machine["kerf"]): number {
	return typeof kerf === "number" ? kerf : Math.max(...kerf.map((entry) => entry.kerf));
}

/** Keys that do not go with the kind of machine. */
function misfits({ kerf = 0, cutter, relief, tabs }: MachineValues, kind: MachineKind): Problem[] {
	const found: Problem[] = [];
	const widest = widestOf(kerf);
	if (kind !== "laser" && widest !== 0) {
		found.push(problem("kerf", ["machine", "kerf"], { kerf: widest, kind }));
	}
	if (kind !== "mill" && cutter !== undefined) {
		found.push(problem("cutter-without-mill", ["machine", "cutter"], { cutter, kind }));
	}
	if (relief === "floor" && (kind !== "mill" || cutter === undefined)) {
		found.push(problem("relief-without-cutter", ["machine", "relief"], { kind }));
	}
	if (kind === "printer" && tabs) found.push(problem("tabs-on-paper", ["machine", "tabs"]));
	return found;
}

function bedOf(values: MachineValues, kind: MachineKind): Bed | null | Problem[] {
	const { bed: size, margin = USUAL.margin, kerf = 0, cutter = 0, spacing } = values;
	if (!size) return null;
	const widest = widestOf(kerf);
	const least = Math.max(LEAST_SPACING, 2 * (kind === "mill" ? cutter : widest));
	const found: Problem[] = [];
	if (2 * margin >= Math.min(size.x, size.y)) {
		const facts = { margin, width: size.x, height: size.y };
		found.push(problem("margin-leaves-nothing", ["machine", "margin"], facts));
	}
	if (spacing !== undefined && spacing < least) {
		const allowed = `${trimmed(least, 3)} mm or more: two ${kind === "mill" ? "cutters" : "kerfs"}, and never under ${LEAST_SPACING} mm`;
		const facts = { given: `${trimmed(spacing, 3)} mm`, mm: spacing, allowed, slip: "" };
		found.push(problem("length-range", ["machine", "spacing"], facts));
	}
	return found.length > 0 ? found : { size, margin, spacing: spacing ?? least };
}

function pensOf(given: MachineValues["pens"]): Pens {
	const own = (given ?? {}) as GivenPens;
	const pens = OPERATIONS.map((o) => {
		const { colour = USUAL_PENS[o].colour, width = USUAL_PENS[o].width } = own[o] ?? {};
		return [o, { colour: colour.toLowerCase(), width }] as const;
	});
	return Object.fromEntries(pens) as Pens;
}
