/**
 * What the machine does along a path. `reference` is never cut: dimensions and notes.
 * The order is the order of work: reference first is nothing at all, cutting comes last.
 */
export type Operation = "cut" | "score" | "engrave" | "reference";

export const OPERATIONS: readonly Operation[] = ["reference", "score", "engrave", "cut"];

/** How an operation is drawn: colour as #rrggbb, line width in mm. */
export interface Pen {
	readonly colour: string;
	readonly width: number;
}

export type Pens = Readonly<Record<Operation, Pen>>;
