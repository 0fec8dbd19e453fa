import { type Problem, problem } from "../problem/index.js";
import { sectionByChord } from "./radius-by-chord.js";
import { sectionByHeights } from "./radius-by-heights.js";
import { sectionByLight } from "./radius-by-light.js";
import { needsAboveZero } from "./radius-checks.js";
import {
	BEYOND_DOUBT,
	type RadiusEstimate,
	type ReadingPath,
	radiusEstimate,
	type SectionCurvature,
} from "./radius-estimate.js";

/** What every reading of a radius says, mm. */
interface Reading {
	/** Step to which the sagitta, dial, heights or gap are read. */
	readonly resolution: number;
	/** Step to which the chord, the places across or the gauge's width are read. */
	readonly chordResolution: number;
	/** Whether bare wood was touched, or the tops of frets over it. */
	readonly on: "wood" | "crowns";
	/** Needed on crowns: what the tops stand over the wood. */
	readonly crownHeight?: number;
	/** Width of the board at the station; checks the reading where given. */
	readonly board?: number;
}

/** Chord and sagitta of the section. */
export interface ChordReading extends Reading {
	readonly kind: "chord";
	readonly chord: number;
	readonly sagitta: number;
}

/** Two feet and a dial midway between them, zeroed on a flat. */
export interface BarReading extends Reading {
	readonly kind: "bar";
	/** Between the feet: edges of knife feet, centres of balls. */
	readonly chord: number;
	readonly dial: number;
	/** Radius of ball feet; left out for edges. */
	readonly ball?: number;
	/** Radius of the dial's ball tip. Midway between like feet it touches the crown of the board
	 * whatever its size, so it changes nothing; it is checked and no more. */
	readonly tip?: number;
}

/** Heights across the board over any straight line, which may be tilted. */
export interface HeightsReading extends Reading {
	readonly kind: "heights";
	/** `y` from the centre line, treble side above 0; `height` upwards. */
	readonly heights: readonly { readonly y: number; readonly height: number }[];
}

/** Light under a concave gauge of a known radius. */
export interface LightReading extends Reading {
	readonly kind: "light";
	/** The gauge's radius and its width along the chord. */
	readonly gauge: number;
	readonly width: number;
	readonly board: number;
	/** Middle: the gauge is the rounder one, and rides on its ends. Edges: it is the flatter one. */
	readonly where: "middle" | "edges" | "none";
	/** In the middle over the board's crown, or at the contact chord's ends, equal on both sides,
	 * square to the chord; 0 for none. */
	readonly gap: number;
	/** Of the board's edges, where nothing touches; 1 mm (common practice, no source). */
	readonly rolled?: number;
}

export type RadiusReading = ChordReading | BarReading | HeightsReading | LightReading;

/** What is wanted of a reading: a radius, or whatever the board is, flat included. */
export type Wanted = "radius" | "form";

/**
 * The board's radius from one reading at one station, square to the centre line.
 *
 * Standard errors follow from the resolutions, a reading to a step r having sd r/√12:
 * dR² = ((R − h)/h·dh)² + (c/4h·dc)². The interval is the curvature's, inverted.
 *
 * @param path - of the reading, for problems
 * @param wanted - "radius" refuses readings that show no camber at all
 * @returns problems for readings that no board gives
 * @example
 * radiusFrom({kind: "chord", chord: 16, sagitta: 6, resolution: 0.01, chordResolution: 0.1,
 *   on: "wood"}) // radius.value 8.3333…
 */
export function radiusFrom(
	reading: RadiusReading,
	path: ReadingPath = ["radius"],
	wanted: Wanted = "form",
): RadiusEstimate | Problem[] {
	const unfit = [...commonFaults(reading, path)];
	if (unfit.length > 0) return unfit;
	const section = sectionOf(reading, path);
	if (Array.isArray(section)) return section;
	const hollow = hollowFault(reading, section, path, wanted);
	if (hollow) return [hollow];
	const ball = reading.kind === "bar" ? (reading.ball ?? 0) : 0;
	const crown = reading.on === "crowns" ? reading.crownHeight! : 0;
	const found = radiusEstimate(labelOf(reading), section, ball + crown);
	return tooTight(reading, found, path) ?? found;
}

function sectionOf(reading: RadiusReading, path: ReadingPath): SectionCurvature | Problem[] {
	switch (reading.kind) {
		case "chord":
			return sectionByChord(reading, "sagitta", reading.sagitta, path);
		case "bar":
			return sectionByChord(reading, "dial", reading.dial, path);
		case "heights":
			return sectionByHeights(reading, path);
		case "light":
			return sectionByLight(reading, path);
	}
}

function commonFaults(reading: RadiusReading, path: ReadingPath): Problem[] {
	const { resolution, chordResolution, crownHeight, board, on } = reading;
	const missing = on === "crowns" && crownHeight === undefined;
	return [
		...needsAboveZero({ resolution, "chord-resolution": chordResolution, board }, path),
		...needsAboveZero({ "crown-height": crownHeight }, path),
		...(missing ? [problem("crown-height-missing", [...path, "crown-height"])] : []),
	];
}

/** Key under which a reading's height stands. */
const KEY = { chord: "sagitta", bar: "dial", heights: "heights", light: "gap" } as const;

/** A board hollow beyond doubt, or without camber where a radius is wanted. */
function hollowFault(
	{ kind }: RadiusReading,
	{ curvature }: SectionCurvature,
	path: ReadingPath,
	wanted: Wanted,
): Problem | null {
	const at = [...path, KEY[kind]];
	const { value, standard, high } = curvature;
	if (high < 0 && value < -BEYOND_DOUBT * standard)
		return problem("board-hollow", at, { radius: -1 / value, kind });
	if (wanted === "form" || value > 0) return null;
	return problem("no-camber", at, { key: KEY[kind] });
}

/** Refuses a radius below half the board, where its width is given. */
function tooTight(
	{ board }: RadiusReading,
	{ radius }: RadiusEstimate,
	path: ReadingPath,
): Problem[] | null {
	if (radius === null || board === undefined || radius.value >= board / 2) return null;
	return [problem("reading-below-half-board", path, { radius: radius.value, board })];
}

function labelOf(reading: RadiusReading): string {
	switch (reading.kind) {
		case "chord":
			return `chord ${reading.chord} mm`;
		case "bar":
			return `bar ${reading.chord} mm`;
		case "heights":
			return `${reading.heights.length} heights`;
		case "light":
			return `gauge ${reading.gauge} mm`;
	}
}
