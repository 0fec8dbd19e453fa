import * as z from "zod";
import { countField, describe, divisionField, lawOf, lengthField } from "../fields/index.js";
import { highestFret, type Neck } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { Unit } from "../units/index.js";

/** The other edge of a strip or bar: plain, or notched for a second scale from the other end. */
export function secondEdgeField(unit: Unit) {
	return z
		.union([
			z.literal("plain"),
			z.strictObject({
				scale: lengthField(unit, { from: 150, to: 2000 }, { text: "Scale length" }),
				frets: countField({ from: 1, to: 150 }, { text: "Frets" }),
				division: divisionField(unit).optional(),
			}),
		])
		.default("plain")
		.meta({
			...describe({
				text: "plain, or notches for a second scale from the other end: {scale: 25.5 in, frets: 21}",
			}),
			kind: "edge",
			range: "plain, or a map of scale, frets and division",
		});
}

export type SecondEdge = z.output<ReturnType<typeof secondEdgeField>>;

/** Why the second edge's division does not reach its last fret, or its positions do not fit. */
export function secondProblems(neck: Neck, second: SecondEdge): Problem[] {
	if (second === "plain") return [];
	const { scale, frets, division } = second;
	const path = ["second-edge", "division"];
	if (division?.kind === "positions") {
		const beyond = division.positions.findIndex((x) => x >= scale);
		if (beyond >= 0) {
			const facts = { fret: beyond + 1, position: division.positions[beyond]!, scale };
			return [problem("position-beyond-saddle", [...path, "positions", beyond], facts)];
		}
	}
	const highest = highestFret(division ? lawOf(division, scale) : neck.law);
	if (frets <= highest) return [];
	return [problem("division-too-short", division ? path : ["second-edge"], { highest, frets })];
}
