import * as z from "zod";
import { choiceField, describe, flagField, lengthField, lengthOrWord } from "../../fields/index.js";
import type { Unit } from "../../units/index.js";
import { secondEdgeField } from "../second-edge.js";
import type { Settled } from "../tool.js";
import { USUAL_CLEARANCE } from "./edge.js";

/** The straightedge's settings as a job gives them. */
export function settings(unit: Unit) {
	return z.strictObject({
		along: z
			.union([z.enum(["centre", "bass", "treble"]), z.number()])
			.default("centre")
			.meta({
				...describe({
					text: "Line it is laid along: the centre line, an outer string, or a string by its number (1 is the outer treble string)",
				}),
				kind: "line",
				range: "centre, bass, treble, or a string number",
			}),
		"nut-end": choiceField(["butting", "cleared"], {
			text: "butting: its end stands against the nut's face; cleared: it arches over nut or zero fret",
			derived: "butting; cleared on a neck with a zero fret or a slanted nut",
		}).optional(),
		"side-clearance": lengthField(
			unit,
			{ from: 0, to: 5 },
			{
				text: "Room on either side of a fret",
				derived: `${USUAL_CLEARANCE} mm or the clearance budget, whichever is more`,
			},
		).optional(),
		"depth-clearance": lengthField(
			unit,
			{ above: 0, to: 5 },
			{ text: "Room over a crown" },
		).prefault("0.4 mm"),
		"lapping-allowance": lengthField(
			unit,
			{ from: 0, to: 2 },
			{ text: "Added to the notches' depth, to be lapped off the working edge" },
		).prefault("0.2 mm"),
		"least-land": lengthField(
			unit,
			{ above: 0, to: 20 },
			{
				text: "Least wood to stand on between two notches",
				derived: "2.5 mm; 1.5 mm on scales under 400 mm",
			},
		).optional(),
		height: lengthField(
			unit,
			{ from: 15, to: 200 },
			{
				text: "Height of the bar",
				derived:
					"25 mm, or what keeps its own sag on edge to 0.02 mm or what its edges and letters need, in whole mm",
			},
		).optional(),
		"beyond-last-fret": lengthField(
			unit,
			{ from: 3, to: 200 },
			{ text: "Bar beyond the last notch" },
		).prefault("12 mm"),
		"arch-reach": lengthField(
			unit,
			{ from: 3, to: 60 },
			{ text: "How far a cleared nut end reaches behind the nut's face" },
		).prefault("12 mm"),
		"arch-depth": lengthField(
			unit,
			{ from: 2, to: 60 },
			{ text: "Height of a cleared nut end's arch" },
		).prefault("8 mm"),
		"second-edge": secondEdgeField(unit),
		"hanging-hole": lengthOrWord(
			unit,
			["none"],
			{ from: 1, to: 15 },
			{
				text: "Diameter of the hole to hang it by",
			},
		).prefault("5 mm"),
		"finger-relief": flagField({
			text: "A scoop in the plain upper edge to lift it by",
		}).default(true),
	});
}

/** Settings as given, fixed defaults in place. */
export type Given = z.output<ReturnType<typeof settings>>;
/** Settings with every default in place. */
export type StraightedgeSettings = Settled<Given, "nut-end" | "height" | "least-land">;
