import type { Path, Point } from "../geometry/index.js";
import type { Claim } from "./claim.js";
import type { Operation } from "./operation.js";

/** Nearest that a label, hole, tab or start of cut may come to a working edge, mm. */
export const OFF_WORKING_EDGE = 3;

/** One path with what is done along it. */
export interface Mark {
	readonly operation: Operation;
	readonly path: Path;
	/** What it is on the part: "outline", "slot 7", "label scale". */
	readonly feature: string;
}

/** Text that stays text: only ever on the reference layer, for people to read. */
export interface Note {
	readonly text: string;
	/** Left end of the baseline. */
	readonly at: Point;
	/** Height of capitals, mm. */
	readonly height: number;
	/** Radians, counter-clockwise. */
	readonly turn: number;
	/** Width that the text is drawn to take, mm. */
	readonly width: number;
}

/** What a part is cut from. */
export interface Stock {
	readonly material: string;
	readonly thickness: number;
	/** Along which axis of the part the grain runs; parts of such a sheet are not turned. */
	readonly grain?: "x" | undefined;
}

/**
 * One piece as it leaves the machine, in its own frame: millimetres, y up, the datum at the
 * origin where it has one.
 */
export interface Part {
	/** File-name-safe and unique in the job: "notched-straightedge", "radius-gauge-nut-concave". */
	readonly name: string;
	readonly tool: string;
	readonly title: string;
	/** What it is for and how it is used. */
	readonly purpose?: string;
	readonly stock: Stock;
	readonly marks: readonly Mark[];
	/** The edge that does the work, in words: "lower edge, between the notches". */
	readonly workingEdge: string;
	/** The same as paths, on the nominal contours: no cut starts and no tab sits near them. */
	readonly working: readonly Path[];
	readonly claims: readonly Claim[];
	/** Sentences for the person at the bench. */
	readonly notes: readonly string[];
	/** Pieces to cut and glue up to one; 1 where it is not given. */
	readonly layers?: number;
	/** Never compensated: its open lines and shared edges are meant. */
	readonly nominal?: true;
}
