import type { Pens, Stock } from "../drawing/index.js";
import type { Point } from "../geometry/index.js";
import type { MachineKind } from "../shop/index.js";

/** The machine that cuts. */
export interface Machine {
	readonly kind: MachineKind;
	/** How far off a cut edge may be, mm. */
	readonly tolerance: number;
	/** Full width of the cut that contours are compensated for, mm: one, or one a sheet. */
	readonly kerf: number | readonly StockKerf[];
	/** Diameter of a mill's cutter, mm; null where it is not known. */
	readonly cutter: number | null;
	/** What is done for the corners that a mill's cutter cannot reach: nothing, or a deeper floor. */
	readonly relief: "none" | "floor";
	/** Bridges that hold an outline in its sheet; null for none. */
	readonly tabs: Tabs | null;
	/** The bed that parts are laid out on; null where it is not known. */
	readonly bed: Bed | null;
	readonly speeds: Speeds | null;
	/** What the machine makes of a millimetre along each axis of its bed: measured / nominal. */
	readonly stretch: Point;
	readonly pens: Pens;
}

/** Width of the cut in one sheet, mm. */
export interface StockKerf extends Stock {
	readonly kerf: number;
}

/** Bridges of an outline: how many, and how long each is on the finished part, mm. */
export interface Tabs {
	readonly count: number;
	readonly width: number;
}

/** A machine's bed, all mm. */
export interface Bed {
	/** Along its axes. */
	readonly size: Point;
	/** Strip along the edges that stays empty. */
	readonly margin: number;
	/** Least distance between the paths of two parts. */
	readonly spacing: number;
}

/** Speeds of the head, mm/s. */
export interface Speeds {
	readonly cut: number;
	readonly score: number;
	readonly engrave: number;
	readonly travel: number;
}

/** Thicknesses nearer than this are one sheet's, mm. */
const SAME_THICKNESS = 1e-6;

/** Whether two sheets are of one material and thickness. */
export function isSameStock(a: Stock, b: Stock): boolean {
	return a.material === b.material && Math.abs(a.thickness - b.thickness) < SAME_THICKNESS;
}

/** The width of the cut in a sheet, mm; null where a machine's list lacks the sheet. */
export function kerfIn({ kerf }: Pick<Machine, "kerf">, stock: Stock): number | null {
	if (typeof kerf === "number") return kerf;
	return kerf.find((entry) => isSameStock(entry, stock))?.kerf ?? null;
}
