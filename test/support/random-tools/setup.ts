import fc from "fast-check";
import { reading } from "../random-neck.js";
import { entry, entryFor, hole, maybe, mm, share } from "./values.js";

/** A nut layout strip with any settings; gauges for as many strings as there are. */
export const anyLayout = entryFor(
	"nut-layout-strip",
	{
		ends: maybe(fc.constantFrom(["nut"], ["saddle"], ["nut", "saddle"])),
		spacing: maybe(fc.constantFrom("centres", "gaps")),
		gauges: maybe(fc.array(reading(0.2, 1.4), { minLength: 18, maxLength: 18 })),
		"bass-margin": maybe(mm(2.2, 5)),
		"treble-margin": maybe(mm(2.2, 5)),
	},
	({ stringCount }, { spacing, gauges, ...rest }) => ({
		...rest,
		"string-spacing": gauges || spacing === "centres" ? spacing : undefined,
		"string-gauges": gauges?.slice(0, stringCount).map((d) => `${d} mm`),
	}),
);

/** A height gauge with any settings. */
export const anyHeights = entry("height-gauge", {
	heights: maybe(fc.uniqueArray(reading(0.6, 12, 1), { minLength: 2, maxLength: 20 })).map((list) =>
		list?.map((h) => `${h} mm`),
	),
	"step-width": maybe(mm(2.5, 12)),
	throat: maybe(mm(3, 30)),
	"gauge-hole": maybe(hole(15)),
});

/** A relief bar of any kind over any two frets. */
export const anyBar = entryFor(
	"relief-bar",
	{
		near: fc.oneof(share, reading(0, 0.2)),
		far: share,
		joint: fc.boolean(),
		"reads-with": maybe(fc.constantFrom("feeler", "dial")),
		"foot-width": maybe(mm(1.5, 3.9)),
		"bar-height": maybe(mm(20, 120)),
		"dial-held-by": maybe(fc.constantFrom("lug", "stem")),
		"dial-reach": mm(20, 80),
		"dial-hole": maybe(mm(2, 15)),
		"dial-stem": maybe(mm(4, 12, 2)),
		"stem-length": maybe(mm(8, 18)),
		"stem-play": maybe(mm(0, 0.5, 2)),
		"clamp-screw": maybe(mm(2, 6)),
		dowel: maybe(fc.oneof(fc.constant("none"), mm(2, 6))),
		"zero-block": maybe(fc.boolean()),
		"hanging-hole": maybe(hole(10)),
	},
	({ frets }, { near, far, joint, ...rest }) => {
		const last = Math.min(frets, 3 + Math.round(far * (frets - 3)));
		const first = Math.max(1, last - 2 - Math.round(near * (last - 3)));
		const { "dial-held-by": held, "dial-reach": reach, ...others } = rest;
		const dial = rest["reads-with"] === "dial" ? { "dial-held-by": held, "dial-reach": reach } : {};
		const stands = joint ? { "body-joint": last } : { "stand-on": [first, last] };
		return { ...others, ...dial, ...stands };
	},
);

/** A kerf coupon with any settings. */
export const anyCoupon = entry("kerf-coupon", {
	blocks: maybe(fc.integer({ min: 5, max: 20 })),
	pitch: maybe(mm(5, 20)),
	fits: maybe(fc.integer({ min: 0, max: 15 })),
	step: maybe(mm(0.005, 0.05, 3)),
	"fit-middle": maybe(mm(-0.4, 0.4, 2)),
});

/** A marker drill guide with any settings. */
export const anyMarkerGuide = entry("marker-guide", {
	drill: maybe(mm(1, 8)),
	"drill-play": maybe(mm(0, 0.5)),
	"double-marker-spread": maybe(mm(6, 30)),
	"slot-lines": maybe(fc.boolean()),
	"end-margin": maybe(mm(3, 20)),
	"hanging-hole": maybe(hole(6)),
});
