import type { LabelClaim, Part, SizeClaim } from "../../src/drawing/index.js";
import { jobWith, type MadeParts, madeParts } from "./made-parts.js";
import { outlineOf } from "./measure-part.js";
import { type MeasuredNotch, notchesOf } from "./measure-path.js";

/** The strings of an ordinary neck. */
export const SIX_STRINGS = { count: 6, "at-nut": 35.5, "at-saddle": 52 };

/** Fret n of an ordinary neck or another scale, from the nut. */
export function fretAt(n: number, scale = 647.7, steps = 12): number {
	return scale * (1 - 2 ** (-n / steps));
}

/** What a notched straightedge for a neck comes to. */
export function madeBar(neck: object, settings: object = {}, other: object = {}): MadeParts {
	return madeParts(jobWith(neck, [{ "notched-straightedge": settings }], other));
}

/** A straightedge. @throws Error if it is refused */
export function bar(neck: object, settings: object = {}, other: object = {}): Part {
	const { parts, problems } = madeBar(neck, settings, other);
	if (!parts[0]) throw new Error(JSON.stringify(problems));
	return parts[0];
}

/** Why a straightedge is refused. */
export function barCodes(neck: object, settings: object, other: object = {}): string[] {
	return madeBar(neck, settings, other).problems.map((p) => p.code);
}

/** The notches of the lower edge, or of the upper one, each from its own nut on. */
export function notchesFrom(part: Part, edge: "lower" | "upper" = "lower"): MeasuredNotch[] {
	const lower = edge === "lower";
	const all = notchesOf(outlineOf(part)).filter((n) => (lower ? n.edge === 0 : n.edge > 0));
	return all.sort((a, b) => (lower ? a.centre - b.centre : b.centre - a.centre));
}

export function sizeClaim(part: Part, id: string): SizeClaim | undefined {
	return part.claims.find((c): c is SizeClaim => c.id === id && c.kind !== "label");
}

export function labelClaims(part: Part): LabelClaim[] {
	return part.claims.filter((c): c is LabelClaim => c.kind === "label");
}
