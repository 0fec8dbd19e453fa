import { crossingOf, type Neck, type StringLine } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { note } from "./board-note.js";
import type { Estimate } from "./estimate.js";
import { estimate } from "./statistics.js";
import { sagAt } from "./straightness-bar.js";
import {
	contactProblems,
	gapProblems,
	isAtContact,
	MOST_RESOLUTION,
	type Placed,
	path,
	placed,
} from "./straightness-checks.js";
import { heightOn, type ReliefCurve, reliefCurve, topOf } from "./straightness-curve.js";
import { camberOver } from "./straightness-line.js";
import type { GapReading, StraightnessReading } from "./straightness-reading.js";

/** One reading and what makes it too small. */
export interface ReliefPoint {
	/** Along the line from the theoretical nut. */
	readonly x: number;
	/** Null for a place given as a distance. */
	readonly fret: number | null;
	readonly reading: number;
	/** The straightedge's own sag below its contacts; negative where its overhangs lift it. */
	readonly sag: number;
	/** The board's shape over the contacts' chord; negative in a hollow. */
	readonly hump: number;
	/** reading + sag + hump. */
	readonly relief: number;
	readonly standard: number;
}

/** How far the board bends down between two contacts. */
export interface Relief {
	readonly line: StringLine;
	readonly on: "wood" | "crowns";
	readonly contacts: { readonly from: number; readonly to: number };
	readonly points: readonly ReliefPoint[];
	/** `arch`: one smooth arch fits every reading to the resolution; `points`: a spline through all. */
	readonly curve: "arch" | "points";
	/** @throws RangeError beyond the contacts */
	readonly at: (x: number) => Estimate;
	readonly largest: Estimate;
	/** Where it is largest, along the line; null where the relief is nowhere above 0. */
	readonly place: Estimate | null;
	/** The fret nearest to it. */
	readonly fret: number | null;
	/** Whether the step of the readings, not their scatter, decides the standard errors. */
	readonly resolutionDecides: boolean;
	readonly notes: readonly Problem[];
}

/** Usual modulus and density leave this much of a sag open, as a standard error (common practice, no source). */
const SAG_SHARE = 0.1 / Math.sqrt(3);
/**
 * Relief of the board from gaps under a straightedge: reading + the straightedge's sag between its
 * contacts + the hump of the board's shape under that line, both of which make a gap read too small.
 *
 * The curve between the readings is one arch with a lean where every reading lies on it to the
 * resolution, else a natural cubic spline through them (see `reliefCurve`). Standard errors: step of
 * the readings r/√12 or their scatter about the arch, whichever is more; with them a tenth of the
 * sag, for moduli and densities are usual trade values. A reading by leaves is the mean of the
 * thickest that passes and the next.
 *
 * Between the same contacts only: where the neck bends backwards, the edge rocks on the board and
 * touches elsewhere, and no gap under its middle can be read.
 *
 * @returns the relief, or what is wrong with the readings, paths from `straightness`
 */
export function fitRelief(reading: StraightnessReading, neck: Neck): Relief | Problem[] {
	if (!(reading.resolution > 0 && reading.resolution <= MOST_RESOLUTION)) {
		const facts = { given: reading.resolution, most: MOST_RESOLUTION };
		return [problem("gap-resolution", path("resolution"), facts)];
	}
	const lies = placed(reading, neck);
	if (Array.isArray(lies)) return lies;
	const contacts = contactProblems(reading, neck, lies);
	if (contacts.length > 0) return contacts;
	const gaps = gapProblems(reading, lies);
	if (gaps.length > 0) return gaps;

	const { line, from, to } = lies;
	const points = reading.gaps
		.map((gap, i) => pointOf(reading, neck, lies, gap, lies.xs[i]!))
		.filter(({ x }) => !isAtContact(x, from, to));
	const curve = reliefCurve(points, from, to, reading.resolution);
	const at = (x: number) => {
		const within = Math.min(Math.max(x, from), to);
		if (Math.abs(within - x) > 1e-6) throw new RangeError(`${x} lies beyond the contacts`);
		const { value, standard } = heightOn(curve, within);
		const sag = reading.bar ? sagAt(reading.bar, to - from, within - from) : 0;
		return estimate(value, Math.hypot(standard, SAG_SHARE * sag), curve.df);
	};
	const top = topOf(curve, from, to);
	return {
		line,
		on: reading.on,
		contacts: { from, to },
		points,
		curve: curve.kind,
		at,
		largest: at(top?.x ?? from),
		place: top && estimate(top.x, top.standard, curve.df),
		fret: top && nearestFret(neck, line, top.x),
		resolutionDecides: curve.df === Number.POSITIVE_INFINITY,
		notes: notesOf(reading, points, curve),
	};
}

function pointOf(
	reading: StraightnessReading,
	neck: Neck,
	{ line, from, to }: Placed,
	{ at, gap }: GapReading,
	x: number,
): ReliefPoint {
	const within = Math.min(Math.max(x, from), to);
	const sag = reading.bar ? sagAt(reading.bar, to - from, within - from) : 0;
	const hump = camberOver(neck, line, from, to, within);
	return {
		x,
		fret: at.kind === "fret" ? at.fret : at.kind === "last-fret" ? neck.frets : null,
		reading: gap,
		sag,
		hump,
		relief: gap + sag + hump,
		standard: Math.hypot(reading.resolution / Math.sqrt(12), SAG_SHARE * sag),
	};
}

function nearestFret(neck: Neck, line: StringLine, x: number): number {
	const off = (n: number) => Math.abs(crossingOf(neck, line, n).along - x);
	const frets = Array.from({ length: neck.frets + 1 }, (_, n) => n);
	return frets.reduce((a, b) => (off(b) < off(a) ? b : a));
}

/** What these gaps leave open. */
function notesOf(
	{ gaps, resolution }: StraightnessReading,
	points: readonly ReliefPoint[],
	curve: ReliefCurve,
): Problem[] {
	const readings = points.map(({ reading }) => reading);
	const [least, most] = [Math.min(...readings), Math.max(...readings)];
	if (most === 0) return [note("gaps-all-zero", path("gaps"), { resolution })];
	const found: Problem[] = [];
	if (least === most && points.length > 2) {
		found.push(note("gaps-all-equal", path("gaps"), { gap: least, count: gaps.length }));
	}
	if (curve.kind === "points") {
		const off = curve.residuals.map(Math.abs);
		const worst = off.indexOf(Math.max(...off));
		const facts = { at: points[worst]!.x, off: curve.residuals[worst]!, resolution };
		found.push(note("relief-not-one-arch", path("gaps"), facts));
	}
	return found;
}
