import fc from "fast-check";
import {
	between,
	type EntryFor,
	entry,
	entryFor,
	hole,
	maybe,
	mm,
	share,
	tightestGap,
} from "./values.js";

const division = fc.constantFrom(12, 19, "rule-of-18");
const secondEdge = maybe(
	fc.record({ scale: mm(330, 800), frets: fc.integer({ min: 1, max: 20 }), division }),
);

/** A notched straightedge with any settings that its schema takes. */
export const anyStraightedge = entry("notched-straightedge", {
	along: fc.constantFrom("centre", "centre", "centre", "bass", "treble", 2),
	"nut-end": maybe(fc.constantFrom("butting", "cleared", "cleared")),
	"side-clearance": maybe(mm(0.1, 0.9)),
	"depth-clearance": maybe(mm(0.1, 3)),
	"lapping-allowance": maybe(mm(0, 1)),
	"least-land": mm(0.3, 1.5),
	height: maybe(mm(18, 60)),
	"beyond-last-fret": maybe(mm(3, 40)),
	"arch-reach": maybe(mm(3, 40)),
	"arch-depth": maybe(mm(2, 12)),
	"second-edge": secondEdge,
	"hanging-hole": maybe(hole(15)),
	"finger-relief": maybe(fc.boolean()),
});

/** The same along strings only where the neck has them, against a nut only where that can be. */
export const anySuitedStraightedge = anyStraightedge.map((given): EntryFor => {
	const settings = given["notched-straightedge"] as { readonly "nut-end"?: string };
	return ({ strings, zeroFret, fanned }) => ({
		"notched-straightedge": {
			...settings,
			...(strings === null && { along: "centre" }),
			...((zeroFret || fanned) && settings["nut-end"] === "butting" && { "nut-end": "cleared" }),
		},
	});
});

/** A slot strip with any settings. */
export const anyStrip = entry("slot-strip", {
	slots: fc.constantFrom("scored", "tang", "line"),
	"edge-margin": maybe(mm(0, 12)),
	"end-margin": maybe(mm(3, 20)),
	"string-lines": maybe(fc.boolean()),
	distances: maybe(fc.boolean()),
	"double-marker-spread": maybe(mm(6, 30)),
});

/** A fret rocker with any settings. */
export const anyRocker = entry("fret-rocker", {
	"end-clearance": maybe(mm(0, 1)),
	"hanging-hole": maybe(hole(15)),
});

/** An indexing strip with any settings; its pin fits between the highest frets. */
export const anyIndexing = entryFor(
	"indexing-strip",
	{
		pin: share,
		play: share,
		"pin-to-blade": maybe(mm(-300, 300)),
		"notch-depth": maybe(mm(1, 20)),
		"strip-height": maybe(mm(30, 80)),
		"end-margin": maybe(mm(14, 60)),
		second: fc.option(
			fc.record({ scale: mm(500, 900), frets: fc.integer({ min: 1, max: 12 }), division }),
			{ nil: undefined },
		),
		"hanging-hole": maybe(hole(10)),
	},
	(drawn, { pin, play, second, ...rest }) => {
		const room = Math.min(13, tightestGap(drawn) - 1.6);
		const most = Math.max(1, Math.min(12, room - play * 0.3));
		return {
			...rest,
			pin: between(1, most, pin),
			"pin-play": between(0, Math.max(0, Math.min(1, room - most)), play),
			"second-edge": second,
		};
	},
);

/** A board mask in a thin sheet, with any settings. */
export const anyMask = entryFor(
	"board-mask",
	{
		clearance: share,
		rail: maybe(mm(8, 40)),
		"end-margin": maybe(mm(3, 60)),
		pieces: fc.integer({ min: 1, max: 5 }),
		stock: fc.constantFrom(
			{ material: "steel", thickness: "0.3 mm" },
			{ material: "card", thickness: "0.4 mm" },
		),
	},
	(drawn, { clearance, pieces, ...rest }) => ({
		...rest,
		"crown-clearance": between(
			0,
			Math.max(0, Math.min(3, tightestGap(drawn) - drawn.crown.width - 1.7)),
			clearance,
		),
		pieces: Math.min(pieces, Math.max(1, Math.floor(drawn.frets / 3))),
	}),
);

/** A crown gauge with any settings. */
export const anyCrown = entry("crown-gauge", {
	"foot-width": maybe(mm(1.5, 3)),
	"hanging-hole": maybe(hole(8)),
});
