import type { LabelClaim, Part } from "../../src/drawing/index.js";
import { jobWith, madeParts } from "./made-parts.js";

function madeStrip(neck: object, settings: object) {
	return madeParts(jobWith(neck, [{ "slot-strip": settings }]));
}

/** A slot strip. @throws Error if it is refused */
export function strip(neck: object, settings: object = {}): Part {
	const { parts, problems } = madeStrip(neck, settings);
	if (!parts[0]) throw new Error(JSON.stringify(problems));
	return parts[0];
}

/** Why a slot strip is refused. */
export function stripCodes(neck: object, settings: object = {}): string[] {
	return madeStrip(neck, settings).problems.map((p) => p.code);
}

/** A strip's labels by what they are: "nut", "number-7", "distance-7". */
export function stripLabels(part: Part): Map<string, LabelClaim> {
	const labels = part.claims.filter((c): c is LabelClaim => c.kind === "label");
	return new Map(labels.map((l) => [l.id.replace("label-", ""), l]));
}
