import fc from "fast-check";
import { reading } from "../random-neck.js";
import { between, entry, entryFor, fretAt, hole, maybe, mm, share } from "./values.js";

/** A radius gauge with any settings; on a flat board only its own radii give one. */
export const anyGauge = entry("radius-gauge", {
	radii: maybe(fc.uniqueArray(reading(120, 600, 0), { minLength: 1, maxLength: 3 })).map((list) =>
		list?.map((r) => `${r} mm`),
	),
	faces: fc.constantFrom(["concave"], ["convex"], ["concave", "convex"]),
	"gauge-width": maybe(mm(10, 120)),
	"gauge-height": maybe(mm(12, 60)),
	"gauge-hole": maybe(hole(15)),
});

/** A sanding block with any settings; solid ones are stacked at the sheet's thickness. */
export const anyBlock = entryFor(
	"sanding-block",
	{
		for: maybe(fc.constantFrom("wood", "crowns")),
		skin: fc.oneof(fc.constant("0 mm"), fc.constant(undefined), mm(0.1, 3)),
		abrasive: maybe(mm(0, 3, 2)),
		ribs: maybe(fc.integer({ min: 2, max: 14 })),
		"rib-pitch": maybe(mm(10, 60)),
		"block-width": maybe(mm(34, 140)),
		"block-height": maybe(mm(34, 90)),
		"joint-fit": maybe(mm(-0.3, 0.5, 2)),
		dowel: maybe(
			hole(6).map((d) => (d === "none" ? d : `${Math.max(2, Number.parseFloat(d))} mm`)),
		),
	},
	(_, { "rib-pitch": pitch, ...rest }) => ({
		...rest,
		"rib-pitch": rest.skin === "0 mm" ? undefined : pitch,
	}),
);

/** Sled rails with any settings. */
export const anyRails = entryFor(
	"sled-rails",
	{
		"rail-height": maybe(mm(2, 80)),
		"foot-height": maybe(mm(12, 150)),
		"before-nut": maybe(mm(4, 120)),
		beyond: maybe(share),
		"past-end": maybe(mm(4, 120)),
		"rail-hole": maybe(hole(12)),
	},
	({ scale, share: at, frets }, { beyond, ...rest }) => ({
		...rest,
		"board-end":
			beyond === undefined
				? undefined
				: between(scale.bass * at(frets) + 5, scale.bass + 40, beyond),
	}),
);

/** Pressing cauls with any settings. */
export const anyCaul = entry("pressing-caul", {
	"most-gap": maybe(mm(0.05, 0.5, 3)),
	"side-margin": maybe(mm(0, 30)),
	"caul-height": maybe(mm(34, 90)),
	mount: maybe(fc.constantFrom("slot", "holes", "none")),
	"mount-size": maybe(mm(1.5, 9)),
	"slot-depth": maybe(mm(4, 20)),
	"hole-spacing": maybe(mm(12, 22)),
});

/** A wire-bend gauge with any settings of the board that was drawn. */
export const anyBend = entryFor(
	"wire-bend-gauge",
	{
		"over-bend": maybe(reading(1, 40, 1)),
		rise: maybe(mm(0.05, 1.5, 2)),
		"bend-for": maybe(fc.array(share, { minLength: 1, maxLength: 4 })),
		"gauge-width": maybe(mm(20, 120)),
		"gauge-height": maybe(mm(34, 120)),
		"gauge-hole": maybe(hole(14)),
	},
	(drawn, { "over-bend": bend, rise, "bend-for": frets, ...rest }) =>
		drawn.radius === "flat"
			? { ...rest, rise }
			: {
					...rest,
					"over-bend": bend,
					"bend-for": frets && [...new Set(frets.map((part) => fretAt(drawn, part)))],
				},
);

/** A string-arch gauge with any settings, at any station. */
export const anyArch = entryFor(
	"string-arch-gauge",
	{
		at: maybe(fc.oneof(fc.constantFrom("nut", "saddle", "last-fret"), share)),
		"action-bass": maybe(mm(1, 4)),
		"action-treble": maybe(mm(1, 4)),
		"action-fret": maybe(share),
		"nut-clearance": maybe(mm(0, 1, 2)),
		"head-margin": maybe(mm(1, 20)),
		"head-height": maybe(mm(6, 40)),
		"handle-length": maybe(mm(70, 250)),
		"gauge-hole": maybe(hole(8)),
	},
	(drawn, { at, "action-fret": fret, ...rest }) => ({
		...rest,
		"arch-at": typeof at === "number" ? fretAt(drawn, at) : at,
		"action-fret": fret === undefined ? undefined : fretAt(drawn, fret),
	}),
);
