import { radiusFromSagitta } from "../../geometry/index.js";

/** A flank shorter than this is none, mm: the arc takes it. */
const LEAST_FLANK = 0.001;

/** The section of a crown, mm. */
export interface Section {
	/** At its foot. */
	readonly width: number;
	/** Over the board. */
	readonly height: number;
	/** Of its arc. */
	readonly radius: number;
	/** Of the arc over its own chord. */
	readonly rise: number;
	/** Straight flanks under the arc; 0 where the arc goes down to the board. */
	readonly flank: number;
}

/**
 * The section of a crown of this width at this height: the arc of a circle, w²/8h + h/2
 * (Machinery's Handbook, circular segments); above half its width a half circle on straight
 * flanks. That a crown is such an arc, and keeps its width when it is dressed, is common practice,
 * no source.
 *
 * @param width - greater than 0
 * @param height - greater than 0
 * @example sectionOf(2.7, 1.3).radius // 1.35096…
 */
export function sectionOf(width: number, height: number): Section {
	const over = height - width / 2;
	const flank = over < LEAST_FLANK ? 0 : over;
	const rise = height - flank;
	return { width, height, radius: radiusFromSagitta(width, rise), rise, flank };
}
