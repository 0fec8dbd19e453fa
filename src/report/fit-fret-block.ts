import type { DressPlan, FretHeights, WireFit } from "../readings/index.js";
import { fixed, trimmed } from "../units/index.js";
import { type BlockPart, signed, texts } from "./fit-block.js";

const WIRE_NAMES = {
	crownWidth: "crown width",
	crownHeight: "crown height",
	tangWidth: "tang width",
	tangDepth: "tang depth",
} as const;

export function wireBlock({ sizes, notes }: WireFit): BlockPart {
	const read = Object.entries(WIRE_NAMES).flatMap(([key, name]) => {
		const size = sizes[key as keyof typeof WIRE_NAMES];
		return size ? [{ name, size }] : [];
	});
	return {
		title: "Wire",
		rows: [
			["", "mean", "95 % from", "to", "spread", "readings"],
			...read.map(({ name, size }) => [
				name,
				...[size.mean, size.low, size.high, size.spread].map((mm) => fixed(mm, 3)),
				String(size.count),
			]),
		],
		notes: texts(notes),
	};
}

const ADVICE = {
	leave: "leave them as they are",
	dress: "dress the frets",
	"re-fret": "re-fret: dressing would leave too little crown",
} as const;

export function heightsBlock(heights: FretHeights, plan: DressPlan, frets: number): BlockPart {
	const { most, total, under, leastCrown, suggestion } = plan;
	const dressed = new Map(plan.frets.map((fret) => [fret.fret, fret]));
	return {
		title: "Fret tops",
		facts: [
			[
				"read",
				heights.tops.length >= frets
					? "every fret"
					: `${heights.tops.length} of ${frets} frets: a lower top among the others would lower the line`,
			],
			["scatter about their line", `${fixed(heights.scatter, 3)} mm`],
			[
				"most to take off",
				`${fixed(most.off, 3)} mm at fret ${most.fret}; ${fixed(total, 3)} mm over the frets read`,
			],
			[
				`under ${trimmed(leastCrown, 2)} mm afterwards`,
				under.length === 0 ? "no fret" : `${under.length}: fret ${under.join(", ")}`,
			],
			["suggestion", `${ADVICE[suggestion]} (a suggestion from these figures, no order)`],
		],
		rows: [
			["fret", "wood", "mean crown", "top", "off line", "", "off its highest", "crown left"],
			...heights.tops.map((top) => [
				String(top.fret),
				fixed(top.wood, 3),
				fixed(top.crown, 3),
				fixed(top.elevation, 3),
				signed(top.residual),
				top.call === "level" ? "" : top.call,
				fixed(dressed.get(top.fret)?.off ?? 0, 3),
				fixed(dressed.get(top.fret)?.left ?? top.crown, 3),
			]),
		],
		notes: texts([...heights.notes, ...plan.notes]),
	};
}
