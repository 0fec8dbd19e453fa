import fc from "fast-check";
import { type NeckOptions, type RandomJob, randomJob } from "./random-neck.js";
import { anyArch, anyBend, anyBlock, anyCaul, anyGauge, anyRails } from "./random-tools/camber.js";
import {
	anyCrown,
	anyIndexing,
	anyMask,
	anyRocker,
	anyStrip,
	anySuitedStraightedge,
} from "./random-tools/scale.js";
import { anyBar, anyCoupon, anyHeights, anyLayout, anyMarkerGuide } from "./random-tools/setup.js";
import type { Entry, EntryFor } from "./random-tools/values.js";

export { anyGauge } from "./random-tools/camber.js";
export { anyStraightedge, anyStrip } from "./random-tools/scale.js";
export { anyMarkerGuide } from "./random-tools/setup.js";

/** What is drawn for a tool: its settings, and what it asks of the neck. */
interface Draw {
	readonly entry: fc.Arbitrary<Entry | EntryFor>;
	readonly neck?: Partial<NeckOptions>;
	/** How often it is drawn beside the others. */
	readonly weight: number;
}

/** Every tool that makes parts, by its name. */
const DRAWS: Readonly<Record<string, Draw>> = {
	"notched-straightedge": { entry: anySuitedStraightedge, weight: 5, neck: { leastGap: 5 } },
	"radius-gauge": { entry: anyGauge, weight: 5 },
	"slot-strip": { entry: anyStrip, weight: 3 },
	"kerf-coupon": { entry: anyCoupon, weight: 2 },
	"fret-rocker": { entry: anyRocker, weight: 2 },
	"indexing-strip": { entry: anyIndexing, weight: 2, neck: { fanned: false, leastGap: 5 } },
	"board-mask": { entry: anyMask, weight: 2, neck: { leastGap: 5 } },
	"sanding-block": { entry: anyBlock, weight: 2 },
	"sled-rails": { entry: anyRails, weight: 2 },
	"pressing-caul": { entry: anyCaul, weight: 2, neck: { arched: true } },
	"wire-bend-gauge": { entry: anyBend, weight: 2 },
	"string-arch-gauge": { entry: anyArch, weight: 2, neck: { strings: true, arched: true } },
	"nut-layout-strip": { entry: anyLayout, weight: 2, neck: { strings: true } },
	"height-gauge": { entry: anyHeights, weight: 2 },
	"relief-bar": { entry: anyBar, weight: 2 },
	"crown-gauge": { entry: anyCrown, weight: 2 },
	"marker-guide": { entry: anyMarkerGuide, weight: 2 },
};

/** The names of the tools that are drawn. */
export const DRAWN_TOOLS = Object.keys(DRAWS);

/** A neck, and one tool for it with any settings. */
export interface ToolJob extends RandomJob {
	readonly tool: string;
	readonly entry: Entry;
}

/** Any tool on any neck; most of them suit each other. */
export function anyToolJob(options: NeckOptions): fc.Arbitrary<ToolJob> {
	const all = Object.entries(DRAWS).map(([tool, { entry, neck, weight }]) => ({
		weight,
		arbitrary: fc
			.record({ drawn: randomJob({ ...options, ...neck }), entry })
			.map(({ drawn, entry }) => ({
				...drawn,
				tool,
				entry: typeof entry === "function" ? entry(drawn.drawn) : entry,
			})),
	}));
	return fc.oneof(...all);
}
