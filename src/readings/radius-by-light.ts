import { arcSagitta } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import { chordCurvature } from "./radius-by-chord.js";
import { needsAboveZero } from "./radius-checks.js";
import { type ReadingPath, type SectionCurvature, stepSd } from "./radius-estimate.js";
import type { LightReading } from "./radius-reading.js";
import { estimate } from "./statistics.js";

/** What edges are rolled by unless told, mm (common practice, no source). */
const USUAL_ROLLED = 1;

/** Smallest gap that shows light, mm (common practice, no source). */
export const SMALLEST_LIGHT = 0.02;

/**
 * Where gauge and board meet: the gauge's width, or what the board's rolled edges leave of it.
 *
 * @example contactChord(60, 50, 1) // 48
 */
export function contactChord(width: number, board: number, rolled: number): number {
	return Math.min(width, board - 2 * rolled);
}

/**
 * Curvature of the board under a gauge that lets light through.
 *
 * Both arcs stand on the contact chord a or touch in its middle, so their sagittas over it differ
 * by the gap: s = s(gauge) − gap with light in the middle (the gauge rides on its ends), s(gauge) +
 * gap with light at the ends. The curvature over a and s is exact. Without light the gap lies
 * anywhere within the smallest one that shows, to either side.
 */
export function sectionByLight(
	reading: LightReading,
	path: ReadingPath,
): SectionCurvature | Problem[] {
	const faults = lightFaults(reading, path);
	if (faults.length > 0) return faults;
	const { gauge, where, gap } = reading;
	const chord = contactChord(reading.width, reading.board, reading.rolled ?? USUAL_ROLLED);
	const own = arcSagitta(gauge, chord);
	const sagitta = where === "middle" ? own - gap : own + gap;
	if (Math.abs(sagitta) > chord / 2) {
		return [problem("gap-too-wide", [...path, "gap"], { gap, chord, gauge })];
	}
	const { value, bySagitta, byChord } = chordCurvature(chord, sagitta);
	// A longer chord lifts the gauge's own sagitta too, which nearly evens out.
	const widens = byChord + (bySagitta * chord) / 4 / (gauge - own);
	const step = where === "none" ? 2 * SMALLEST_LIGHT : reading.resolution;
	const sd = Math.hypot(bySagitta * stepSd(step), widens * stepSd(reading.chordResolution));
	const notes =
		where === "none" ? [note("no-light", path, { smallest: SMALLEST_LIGHT, chord })] : [];
	return { curvature: estimate(value, sd, Number.POSITIVE_INFINITY), chord, notes };
}

function lightFaults(reading: LightReading, path: ReadingPath): Problem[] {
	const { gauge, width, where, gap, board } = reading;
	const rolled = reading.rolled ?? USUAL_ROLLED;
	const sizes = needsAboveZero({ gauge, width }, path);
	if (!Number.isFinite(rolled) || rolled < 0 || 2 * rolled >= board) {
		sizes.push(problem("no-contact", [...path, "rolled"], { rolled: String(rolled), board }));
	}
	if (sizes.length > 0) return sizes;
	const chord = contactChord(width, board, rolled);
	if (chord >= 2 * gauge) {
		return [problem("gauge-too-round", [...path, "gauge"], { gauge, chord })];
	}
	if (where === "none") {
		return gap === 0 ? [] : [problem("gap-without-light", [...path, "gap"], { gap: String(gap) })];
	}
	if (Number.isFinite(gap) && gap > 0) return [];
	return [problem("light-without-gap", [...path, "gap"], { gap: String(gap), where })];
}
