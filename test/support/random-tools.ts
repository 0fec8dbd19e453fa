import fc from "fast-check";
import { reading } from "./random-neck.js";

/** Leaves a setting out as often as it gives it. */
function maybe<T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
	return fc.option(value, { nil: undefined });
}

/** A length as a job gives it, with its unit. */
const mm = (min: number, max: number) => reading(min, max, 1).map((x) => `${x} mm`);

function entry(tool: string, settings: Record<string, fc.Arbitrary<unknown>>) {
	return fc.record(settings).map((all) => {
		const given = Object.entries(all).filter(([, value]) => value !== undefined);
		return { [tool]: Object.fromEntries(given) };
	});
}

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
	"second-edge": maybe(
		fc.record({
			scale: mm(330, 800),
			frets: fc.integer({ min: 1, max: 20 }),
			division: fc.constantFrom(12, 19, "rule-of-18"),
		}),
	),
	"hanging-hole": maybe(fc.oneof(fc.constant("none"), mm(1, 15))),
	"finger-relief": maybe(fc.boolean()),
});

/** A radius gauge with any settings; on a flat board only its own radii give one. */
export const anyGauge = entry("radius-gauge", {
	radii: maybe(fc.uniqueArray(reading(120, 600, 0), { minLength: 1, maxLength: 3 })).map((list) =>
		list?.map((r) => `${r} mm`),
	),
	faces: fc.constantFrom(["concave"], ["convex"], ["concave", "convex"]),
	"gauge-width": maybe(mm(10, 120)),
	"gauge-height": maybe(mm(12, 60)),
	"gauge-hole": maybe(fc.oneof(fc.constant("none"), mm(1, 15))),
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

/** A marker guide with any settings; a neck without markers gives none. */
export const anyMarkerGuide = entry("marker-guide", {
	drill: maybe(mm(1, 8)),
	"drill-play": maybe(mm(0, 0.5)),
	"double-marker-spread": maybe(mm(6, 30)),
	"slot-lines": maybe(fc.boolean()),
	"end-margin": maybe(mm(3, 20)),
	"hanging-hole": maybe(fc.oneof(fc.constant("none"), mm(1, 6))),
});
