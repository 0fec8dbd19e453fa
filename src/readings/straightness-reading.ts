import type { Station } from "../neck/index.js";
import type { Straightedge } from "./straightness-bar.js";
import type { ReadLine } from "./straightness-line.js";

/** One gap under the straightedge, 0 or more. */
export interface GapReading {
	readonly at: Station;
	readonly gap: number;
}

/** Gaps under a straightedge on the face of the board, which lies face up. */
export interface StraightnessReading {
	readonly along: ReadLine;
	/** What it touches: the wood, or the crowns. */
	readonly on: "wood" | "crowns";
	/**
	 * Where it touches; from the nut (on crowns: the first fret) to the last fret if not told.
	 * A distance is taken along the line from the theoretical nut.
	 */
	readonly contacts?: readonly [Station, Station];
	readonly gaps: readonly GapReading[];
	/** Step of the dial or of the leaves. */
	readonly resolution: number;
	/** Null for one so stiff that it does not sag. */
	readonly bar: Straightedge | null;
}
