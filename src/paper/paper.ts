import type { Point } from "../geometry/index.js";

/** The paper in the printer, and what the printer makes of a millimetre; all mm. */
export interface Paper {
	/** As people call it: "A4", "Letter", "210 x 330 mm", "roll 610 mm". */
	readonly name: string;
	/** Across the feed. */
	readonly width: number;
	/** Along the feed; null for a roll, which is cut off where the drawing ends. */
	readonly height: number | null;
	/** Strip along every edge that the printer does not reach. */
	readonly margin: number;
	/** How much of the drawing two neighbouring pages both show. */
	readonly overlap: number;
	/** What the printer makes of a millimetre: measured / nominal, x across and y along the feed. */
	readonly made: Point;
}
