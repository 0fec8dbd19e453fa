import type { Point } from "../geometry/index.js";
import { fretFraction, type Law } from "./law.js";
import { type Profile, stretches, valueAt } from "./profile.js";

/** A straight string line from the theoretical nut to the saddle. */
export interface StringLine {
	readonly nut: Point;
	readonly saddle: Point;
}

/** The spread of the strings, outer string centre to outer string centre, square to the centre line. */
export interface Strings {
	/** Strings, or courses where they are doubled. */
	readonly count: number;
	/** Between the two strings of a course; 0 for single strings. */
	readonly pairGap: number;
	readonly atNut: number;
	readonly atSaddle: number;
}

/** A position marker at a fret. */
export interface Marker {
	readonly fret: number;
	readonly double: boolean;
}

/**
 * One neck, seen from the front. x = 0 is the theoretical nut on the centre line, +x leads to
 * the saddle, +y to the treble side (to the bass side on a left-handed neck).
 *
 * Fret n joins the points at the law's fraction of n on the bass and the treble guide. With
 * one scale length the guides end square to the centre line; with two they are the outer strings.
 */
export interface Neck {
	readonly frets: number;
	readonly law: Law;
	readonly guides: { readonly bass: StringLine; readonly treble: StringLine };
	/** Nominal scale lengths; equal unless the frets are fanned. */
	readonly scale: { readonly bass: number; readonly treble: number; readonly squareFret: number };
	/** +1 if the treble side is +y, −1 on a left-handed neck. */
	readonly trebleSide: 1 | -1;
	readonly zeroFret: boolean;
	/** Actual nut face from the theoretical nut along each string, positive toward the saddle. */
	readonly nutShift: number;
	/** Half the 95 % interval of the scale length. */
	readonly scaleUncertainty: number;
	/** Radius of the section square to the centre line. */
	readonly radius: Profile | "flat";
	readonly width: Profile;
	/** Thickness of the edge binding, 0 without. */
	readonly binding: number;
	readonly strings: Strings | null;
	readonly markers: readonly Marker[];
}

/** Whether the two outer strings differ in length. */
export function isFanned(neck: Neck): boolean {
	return neck.scale.bass !== neck.scale.treble;
}

/** The guides of a neck with one scale length, with or without known strings. */
export function singleScaleGuides(scale: number, strings: Strings | null, trebleSide: 1 | -1) {
	const atNut = (strings?.atNut ?? 2) / 2;
	const atSaddle = (strings?.atSaddle ?? 2) / 2;
	const guide = (side: number): StringLine => ({
		nut: { x: 0, y: side * atNut },
		saddle: { x: scale, y: side * atSaddle },
	});
	return { bass: guide(-trebleSide), treble: guide(trebleSide) };
}

/**
 * The outer strings of a fanned neck. Each is straight and as long as its scale, with the
 * given spread at its ends; they are slid along x until the square fret has both its points
 * at one x, and the nut's middle is at x = 0.
 *
 * @param squareFret - 0 or more, fractions allowed
 * @throws RangeError if a string is shorter than its own taper
 */
export function fannedGuides(
	scale: { readonly bass: number; readonly treble: number; readonly squareFret: number },
	law: Law,
	strings: Strings,
	trebleSide: 1 | -1,
) {
	const taper = (strings.atSaddle - strings.atNut) / 2;
	const run = (length: number) => Math.sqrt((length - taper) * (length + taper));
	const u = fretFraction(law, scale.squareFret);
	const bassRun = run(scale.bass);
	const trebleRun = run(scale.treble);
	if (!(bassRun > 0 && trebleRun > 0)) throw new RangeError("a string is shorter than its taper");
	const lead = ((trebleRun - bassRun) * u) / 2;
	const guide = (side: number, start: number, length: number): StringLine => ({
		nut: { x: start, y: (side * strings.atNut) / 2 },
		saddle: { x: start + length, y: (side * strings.atSaddle) / 2 },
	});
	return {
		bass: guide(-trebleSide, lead, bassRun),
		treble: guide(trebleSide, -lead, trebleRun),
	};
}

function between(line: StringLine, u: number): Point {
	return {
		x: line.nut.x + (line.saddle.x - line.nut.x) * u,
		y: line.nut.y + (line.saddle.y - line.nut.y) * u,
	};
}

/** A fret as a straight line across the board. */
export interface FretLine {
	readonly n: number;
	/** Where it crosses the centre line. */
	readonly x: number;
	/** dx/dy: 0 for a fret square to the centre line. */
	readonly lean: number;
}

/** The line of fret n: fractions allowed, 0 is the theoretical nut. */
export function fretLine(neck: Neck, n: number): FretLine {
	return lineAcross(neck, fretFraction(neck.law, n), n);
}

/** The line of the saddle, `n` infinite. */
export function saddleLine(neck: Neck): FretLine {
	return lineAcross(neck, 1, Number.POSITIVE_INFINITY);
}

function lineAcross(neck: Neck, u: number, n: number): FretLine {
	const bass = between(neck.guides.bass, u);
	const treble = between(neck.guides.treble, u);
	const lean = (treble.x - bass.x) / (treble.y - bass.y);
	return { n, x: bass.x - bass.y * lean, lean };
}

/** The point of a fret line at height y. */
export function pointOnFret(fret: FretLine, y: number): Point {
	return { x: fret.x + y * fret.lean, y };
}

/** Angle of a fret to the square of the centre line, radians, unsigned. */
export function slantOf(fret: FretLine): number {
	return Math.atan(Math.abs(fret.lean));
}

/**
 * Where a fret line meets the board's edge, moved in by `inset` square to the centre line.
 *
 * @param side - −1 bass, +1 treble
 * @throws RangeError if the edge and the fret never meet
 */
export function edgePoint(neck: Neck, fret: FretLine, side: 1 | -1, inset = 0): Point {
	const sign = side * neck.trebleSide;
	for (const s of stretches(neck.width)) {
		const half = s.slope / 2;
		const y =
			(sign * (s.value / 2 - inset + half * (fret.x - s.x))) / (1 - sign * half * fret.lean);
		const point = pointOnFret(fret, y);
		if (point.x >= s.from - 1e-9 && point.x <= s.to + 1e-9) return point;
	}
	throw new RangeError(`fret ${fret.n} does not meet the board's edge`);
}

/** Length of a fret between the board's edges, `inset` in from each, along the fret, mm. */
export function fretLength(neck: Neck, fret: FretLine, inset = 0): number {
	const bass = edgePoint(neck, fret, -1, inset);
	const treble = edgePoint(neck, fret, 1, inset);
	return Math.hypot(treble.x - bass.x, treble.y - bass.y);
}

/** Board width square to the centre line. */
export function widthAt(neck: Neck, x: number): number {
	return valueAt(neck.width, x);
}

/** Radius of the board's section square to the centre line; null on a flat board. */
export function radiusAt(neck: Neck, x: number): number | null {
	return neck.radius === "flat" ? null : valueAt(neck.radius, x);
}

/** Fret numbers that carry wire: from 0 on a neck with a zero fret, else from 1. */
export function fretNumbers(neck: Neck): number[] {
	const first = neck.zeroFret ? 0 : 1;
	return Array.from({ length: neck.frets - first + 1 }, (_, i) => first + i);
}
