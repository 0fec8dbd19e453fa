import type * as z from "zod";
import type { Machine } from "../cutting/index.js";
import type { Part, Stock } from "../drawing/index.js";
import type { Lettering } from "../lettering/lettering.js";
import type { Neck } from "../neck/index.js";
import type { Paper, PaperDocument } from "../paper/index.js";
import type { Problem } from "../problem/index.js";
import type { MaterialName } from "../shop/index.js";
import type { Unit } from "../units/index.js";

/** Fret wire, mm. */
export interface Wire {
	readonly crownWidth: number;
	readonly crownHeight: number;
	readonly tangWidth: number;
	readonly tangDepth: number;
}

/** The sheet or board a part is cut from. */
export interface ShopStock extends Stock {
	readonly material: MaterialName;
}

/** All that a tool may know: the neck on the bench, its wire, and the shop. */
export interface Bench {
	readonly job: string;
	/** As the job gives it; nothing here reads a clock. */
	readonly date: string | null;
	readonly neck: Neck;
	readonly wire: Wire;
	readonly stock: ShopStock;
	/** Pieces of each part that are glued up to one. */
	readonly layers: number;
	readonly machine: Machine;
	readonly paper: Paper;
	/** Swing of the shop's temperature, K. */
	readonly temperatureSwing: number;
	readonly letters: Lettering;
}

/** What a tool makes of a bench: parts, or the reasons why not. */
export interface Built {
	readonly parts: readonly Part[];
	/** Pages that show no part: always on paper, whatever else is written. */
	readonly documents?: readonly PaperDocument[];
	readonly problems: readonly Problem[];
}

/** What came of parts each of which could be built or refused. */
export function builtOf(made: readonly (Part | Problem)[]): Built {
	return {
		parts: made.filter((m): m is Part => "marks" in m),
		problems: made.filter((m): m is Problem => "code" in m),
	};
}

/**
 * One tool of the kit: one file, one object.
 *
 * `settings` is its only parameter definition: job file, flags, help, listing and JSON Schema
 * are read from it. `defaults` gives what follows from the neck; a fixed default stands in
 * the schema.
 */
export interface Tool<S extends z.ZodObject = z.ZodObject> {
	readonly id: string;
	readonly title: string;
	/** What it is for and how it is used, two sentences as a repairer would say them. */
	readonly purpose: string;
	/** Whether it is made from the sheet and the machine alone. */
	readonly neckless?: true;
	/** Whether it makes pages for people and no part. */
	readonly onPaper?: true;
	settings(unit: Unit): S;
	defaults(bench: Bench, given: z.output<S>): Partial<z.output<S>>;
	/**
	 * @param name - of the part or, for several parts, the start of their names
	 * @param settings - complete: given ones over the defaults
	 */
	build(bench: Bench, settings: z.output<S>, name: string): Built;
}

/** Types a tool and hands it on in the form that the index holds. */
export function tool<S extends z.ZodObject>(definition: Tool<S>): Tool {
	return definition as unknown as Tool;
}

/** Settings in which the named ones are no longer open. */
export type Settled<S, K extends keyof S> = S & { readonly [P in K]-?: Exclude<S[P], undefined> };

/** Radius of corners that do no work, mm. */
export const CORNER_RADIUS = 1.5;
