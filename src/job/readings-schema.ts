import * as z from "zod";
import {
	choiceField,
	describe,
	fault,
	lengthField,
	readingsField,
	slotsField,
	stationField,
	stationReadingsField,
} from "../fields/index.js";
import { MATERIAL_NAMES } from "../shop/index.js";
import type { Unit } from "../units/index.js";

/** The `readings` block of a neck: what was read on the bench, instead of numbers. */
export function readingsSchema(unit: Unit) {
	const step = (text: string) => lengthField(unit, { above: 0, to: 5 }, { text });
	return z.strictObject({
		use: choiceField(["law", "readings"], {
			text: "What the frets are taken from: the law fitted to the slots, or every slot as it was read",
		}).default("law"),
		resolution: step("Smallest step of the rule that the slots were read with").prefault("0.5 mm"),
		"nut-end": choiceField(["unknown", "intact", "filed"], {
			text: "Whether the nut's end is where the scale begins: let the readings tell, yes, or moved by an unknown length",
		}).default("unknown"),
		slots: slotsField(unit, {
			text: "From the nut's end to the middle of each slot, along the centre line; or a CSV file",
		}).optional(),
		"bass-slots": slotsField(unit, {
			text: "On a fanned board: along the outer bass string",
		}).optional(),
		"treble-slots": slotsField(unit, {
			text: "On a fanned board: along the outer treble string",
		}).optional(),
		from: choiceField(["nut", "square-line"], {
			text: "On a fanned board: what both strings were read from, each its own nut end or one line square to the centre line",
		}).default("nut"),
		radius: z
			.array(radiusSchema(unit))
			.min(1)
			.max(40)
			.optional()
			.meta({
				...describe({
					text: "The board's radius, read at one station or more in any of four ways",
				}),
				kind: "list",
				range:
					"[{at: nut, chord: 50 mm, sagitta: 1.24 mm}, {at: 12, feet: 40 mm, dial: 0.66 mm}, {at: 7, heights: {-20 mm: 0, 0 mm: 0.7 mm, 20 mm: 0}}, {at: 15, gauge: 12 in, gauge-width: 50 mm, gap: 0.1 mm, light: middle}]",
			}),
		width: stationReadingsField(
			unit,
			{ from: 10, to: 200 },
			{ text: "Board width read at two places or more" },
		).optional(),
		straightness: straightnessSchema(unit).optional(),
		"fret-heights": fretHeightsSchema(unit).optional(),
	});
}

/** One reading of the radius; which way it was read shows by its keys. */
function radiusSchema(unit: Unit) {
	const length = (text: string, to = 500) =>
		lengthField(unit, { above: 0, to }, { text }).optional();
	return z
		.strictObject({
			at: stationField(unit, { text: "Where along the neck" }),
			on: choiceField(["wood", "crowns"], { text: "What it was read on" }).default("wood"),
			resolution: lengthField(
				unit,
				{ above: 0, to: 2 },
				{ text: "Smallest step of sagitta, dial, heights or gap" },
			).prefault("0.02 mm"),
			"chord-resolution": lengthField(
				unit,
				{ above: 0, to: 5 },
				{ text: "Smallest step of chord or feet" },
			).prefault("0.1 mm"),
			chord: length("Length of a straight chord across the board"),
			sagitta: lengthField(
				unit,
				{ from: 0, to: 100 },
				{ text: "Height of the board over it; 0 where it is flat" },
			).optional(),
			feet: length("Distance of a bar gauge's outer feet"),
			dial: lengthField(unit, { from: -100, to: 100 }, { text: "What its dial reads" }).optional(),
			ball: lengthField(
				unit,
				{ from: 0, to: 50 },
				{ text: "Radius of its feet's balls" },
			).optional(),
			heights: heightsField(unit).optional(),
			gauge: length("Radius of a gauge laid on the board", 10_000),
			"gauge-width": length("Width of that gauge"),
			gap: lengthField(unit, { from: 0, to: 20 }, { text: "Light under it" }).optional(),
			light: choiceField(["middle", "edges", "none"], { text: "Where the light shows" }).optional(),
			rolled: lengthField(
				unit,
				{ from: 0, to: 20 },
				{ text: "Width of the board's rolled edge" },
			).optional(),
		})
		.superRefine((reading, ctx) => {
			const ways = Object.entries(WAYS).filter(([, keys]) =>
				keys.some((k) => reading[k] !== undefined),
			);
			if (ways.length !== 1)
				return fault(ctx, "radius-way", { given: ways.map(([w]) => w).join(", ") });
			const [, keys] = ways[0]!;
			const isDark = reading.light === "none";
			const missing = keys.filter((k) => reading[k] === undefined && !(k === "gap" && isDark));
			if (missing.length > 0)
				fault(ctx, "radius-keys", { keys: keys.join(", "), missing: missing.join(", ") });
		});
}

/** The keys that belong to each way of reading a radius. */
const WAYS = {
	chord: ["chord", "sagitta"],
	bar: ["feet", "dial"],
	heights: ["heights"],
	gauge: ["gauge", "gauge-width", "gap", "light"],
} as const;

/** `{-20 mm: 0.41 mm, 0 mm: 1.2 mm, 20 mm: 0.4 mm}`: heights across the board. */
function heightsField(unit: Unit) {
	const across = lengthField(unit, { from: -200, to: 200 }, { text: "across" });
	return z
		.record(z.string(), lengthField(unit, { from: -100, to: 100 }, { text: "height there" }))
		.transform((map, ctx) =>
			Object.entries(map).flatMap(([key, height]) => {
				const y = across.safeParse(key);
				if (y.success) return [{ y: y.data, height }];
				fault(ctx, "height-place", { given: key });
				return [];
			}),
		)
		.meta({
			...describe({
				text: "Heights across the board from any straight line, by their distance from its middle",
			}),
			kind: "map",
			range: "{-20 mm: 0.41 mm, 0 mm: 1.2 mm, 20 mm: 0.4 mm}",
		});
}

function straightnessSchema(unit: Unit) {
	const size = (text: string, to: number) => lengthField(unit, { above: 0, to }, { text });
	return z
		.strictObject({
			along: choiceField(["centre", "bass", "treble"], {
				text: "The line that the straightedge lay along",
			}).default("centre"),
			on: choiceField(["wood", "crowns"], { text: "What it lay on" }).default("wood"),
			from: stationField(unit, { text: "First place where it touches" }).optional(),
			to: stationField(unit, { text: "Last place where it touches" }).optional(),
			gaps: stationReadingsField(
				unit,
				{ from: 0, to: 20 },
				{ text: "Feeler or dial gaps under it" },
			),
			resolution: lengthField(
				unit,
				{ above: 0, to: 1 },
				{ text: "Smallest step of the gaps" },
			).prefault("0.05 mm"),
			straightedge: z
				.strictObject({
					material: choiceField(MATERIAL_NAMES as [string, ...string[]], {
						text: "What it is made of",
					}),
					height: size("Its height", 200),
					length: size("Its length", 3000),
				})
				.optional()
				.meta(
					describe({
						text: "The bar that was used, for its own sag; left out for one that does not sag",
					}),
				),
		})
		.meta(describe({ text: "Gaps under a straightedge: the relief" }));
}

function fretHeightsSchema(unit: Unit) {
	const height = { above: 0, to: 5 };
	return z
		.strictObject({
			heights: slotsLike(unit),
			resolution: lengthField(
				unit,
				{ above: 0, to: 1 },
				{ text: "Smallest step of the heights" },
			).prefault("0.02 mm"),
			least: lengthField(unit, height, {
				text: "Least crown height that is worth keeping",
			}).prefault("0.8 mm"),
			relief: lengthField(
				unit,
				{ from: 0, to: 2 },
				{ text: "Relief that the tops are to keep" },
			).prefault(0),
		})
		.meta(describe({ text: "Crown heights over the board, two or three across each fret" }));
}

/** `{1: [1.10 mm, 1.05 mm, 1.10 mm], 2: 1.1 mm}`: crown heights by fret. */
function slotsLike(unit: Unit) {
	return z
		.record(z.string(), readingsField(unit, { from: 0, to: 5 }, { text: "crown heights" }))
		.transform((map, ctx) => {
			const wrong = Object.keys(map).find((key) => !/^\d+$/u.test(key));
			if (wrong !== undefined) fault(ctx, "reading-fret", { given: wrong });
			return Object.entries(map).map(([key, heights]) => ({ fret: Number(key), heights }));
		})
		.meta({
			...describe({ text: "Crown heights by fret" }),
			kind: "map",
			range: "{1: [1.10 mm, 1.05 mm, 1.10 mm], 2: 1.1 mm}",
		});
}

/** What a neck's readings are, lengths in mm. */
export type ReadingsValues = z.output<ReturnType<typeof readingsSchema>>;
