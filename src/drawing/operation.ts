/**
 * What the machine does along a path. `reference` is never cut: dimensions and notes. `tab` is
 * where a mill's program leaves the outline held in its sheet.
 * The order is the order of work: reference first is nothing at all, tabs are known before
 * anything is cut, cutting comes last.
 */
export type Operation = "cut" | "score" | "engrave" | "tab" | "reference";

export const OPERATIONS: readonly Operation[] = ["reference", "score", "engrave", "cut", "tab"];

/** How an operation is drawn: colour as #rrggbb, line width in mm. */
export interface Pen {
	readonly colour: string;
	readonly width: number;
}

export type Pens = Readonly<Record<Operation, Pen>>;
