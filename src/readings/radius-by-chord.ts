import { type Problem, problem } from "../problem/index.js";
import { beyondBoard, needsAboveZero } from "./radius-checks.js";
import { type ReadingPath, type SectionCurvature, stepSd } from "./radius-estimate.js";
import type { BarReading, ChordReading } from "./radius-reading.js";
import { estimate } from "./statistics.js";

/** Curvature of the circle over a chord, with what it gains by a mm of either reading. */
export interface ChordCurvature {
	readonly value: number;
	readonly bySagitta: number;
	readonly byChord: number;
}

/**
 * Curvature 8h/(c² + 4h²) of the circle through a chord's ends and h over its middle: 1/R of
 * R = c²/8h + h/2 (Machinery's Handbook, circular segments), and regular at h = 0.
 *
 * Its derivatives are those of R over −R²: dR/dh = −(R − h)/h, dR/dc = c/4h.
 *
 * @param sagitta - either sign, mm
 */
export function chordCurvature(chord: number, sagitta: number): ChordCurvature {
	const [cc, hh] = [chord * chord, 4 * sagitta * sagitta];
	const sum = cc + hh;
	return {
		value: (8 * sagitta) / sum,
		bySagitta: (8 * (cc - hh)) / sum ** 2,
		byChord: (-16 * chord * sagitta) / sum ** 2,
	};
}

/**
 * Curvature of what a chord's ends and middle touch.
 *
 * For ball feet of radius b the chord joins their centres, which lie on R + b: the dial, 0 on a
 * flat, reads R + b − √((R + b)² − c²/4), the sagitta of that circle. A ball tip midway touches
 * the crown of the section from above, so its own radius drops out.
 */
export function sectionByChord(
	reading: ChordReading | BarReading,
	key: "sagitta" | "dial",
	height: number,
	path: ReadingPath,
): SectionCurvature | Problem[] {
	const { chord, board, resolution, chordResolution } = reading;
	const faults = [
		...needsAboveZero({ chord }, path),
		...beyondBoard("chord", chord, board, path),
		...(reading.kind === "bar" ? ballFaults(reading, path) : []),
		...(Number.isFinite(height)
			? []
			: [problem("reading-not-a-length", [...path, key], { key, given: String(height) })]),
	];
	if (faults.length > 0) return faults;
	if (Math.abs(height) > chord / 2) {
		return [problem("sagitta-beyond-half-chord", [...path, key], { key, height, chord })];
	}
	const { value, bySagitta, byChord } = chordCurvature(chord, height);
	const sd = Math.hypot(bySagitta * stepSd(resolution), byChord * stepSd(chordResolution));
	return { curvature: estimate(value, sd, Number.POSITIVE_INFINITY), chord, notes: [] };
}

function ballFaults({ ball, tip, chord }: BarReading, path: ReadingPath): Problem[] {
	const faults = needsAboveZero({ ball, tip }, path);
	if (faults.length > 0 || ball === undefined || 2 * ball < chord) return faults;
	return [problem("balls-overlap", [...path, "ball"], { ball, chord })];
}
