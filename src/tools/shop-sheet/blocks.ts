import { isFanned } from "../../neck/index.js";
import { CAUTION_LAST, cautionsFor } from "../../shop/index.js";
import { fixed, MM_PER_INCH, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import { type Block, grid, headingLines, items, pair, paragraph, type Setting } from "./lines.js";
import { notchLines } from "./notches.js";
import type { ShopSheetSettings } from "./settings.js";
import { stationTexts } from "./stations.js";
import { stringTexts } from "./strings.js";
import { mmAndInch, span } from "./texts.js";
import { feetAndInches, type WireList } from "./wire.js";

/** What a slot is deeper than the tang, inch (common practice, no source). */
const DEEPER = { least: 0.01, most: 0.02 } as const;

/** Work with saw and file: common practice, no source. */
const HAND_CAUTIONS = [
	"Wear eye protection: nipped-off wire flies.",
	"Metal dust: mask on; vacuum, never blow.",
	"Fret ends are sharp until they are dressed.",
] as const;

/** All that stands beside picture and table, the cautions last. */
export function blocksOf(
	bench: Bench,
	s: ShopSheetSettings,
	wire: WireList,
	set: Setting,
): Block[] {
	return [
		wireBlock(bench, s, wire, set),
		slotBlock(bench, set),
		stationBlock(bench, set),
		...stringBlock(bench, set),
		cautionBlock(set),
	];
}

function wireBlock(
	{ neck, wire }: Bench,
	s: ShopSheetSettings,
	list: WireList,
	set: Setting,
): Block {
	const { pieces, total, order } = list;
	const arc = isFanned(neck) ? "along the slanted arc" : "along the board's arc";
	const way = neck.radius === "flat" ? "straight across" : arc;
	const size = (a: number, b: number) => `${fixed(a, 3)} x ${fixed(b, 3)}`;
	// Wire is bought by whole millimetres at the finest; rounded down it would not do.
	const whole = Math.ceil(order - 1e-9);
	return [
		...headingLines(set, `Fret wire, ${way}`),
		...pair(set, "crown, width x height", size(wire.crownWidth, wire.crownHeight)),
		...pair(set, "tang, thickness x depth", size(wire.tangWidth, wire.tangDepth)),
		...pair(set, "overhang at each end", mmAndInch(s.overhang)),
		...pair(set, `${pieces.length} pieces`, span(pieces.map(({ length }) => length))),
		...pair(set, "together", mmAndInch(total)),
		...pair(
			set,
			`with ${trimmed(s.waste, 2)} % waste, order`,
			`${fixed(whole / 1000, 3)} m (${feetAndInches(whole)})`,
		),
	];
}

function slotBlock(bench: Bench, set: Setting): Block {
	const { neck, wire } = bench;
	const { least, most } = DEEPER;
	const depths = [least, most].map((more) => wire.tangDepth + more * MM_PER_INCH);
	const usual = `usually tang + ${fixed(least, 2)} to ${fixed(most, 2)} in deep`;
	return [
		...headingLines(set, "Slots, and straightedge notches"),
		...pair(set, "slot width, as the tang", mmAndInch(wire.tangWidth)),
		...pair(set, usual, span(depths)),
		...(neck.binding > 0 ? pair(set, "slot ends inside the edge by", mmAndInch(neck.binding)) : []),
		...notchLines(bench, set),
	];
}

function stationBlock(bench: Bench, set: Setting): Block {
	const { neck } = bench;
	const texts = stationTexts(neck);
	const heading = headingLines(set, "Radii, for gauges");
	if (!texts) {
		return [...heading, ...paragraph(set, "The board is flat: a straightedge is its gauge.")];
	}
	return [
		...heading,
		...grid(set, texts.rows),
		...paragraph(set, "Sagitta over the width, square to the centre line."),
		...texts.notes.flatMap((note) => paragraph(set, note)),
	];
}

function stringBlock({ neck }: Bench, set: Setting): Block[] {
	if (!neck.strings) return [];
	return [[...headingLines(set, "Strings, from the centre line"), ...grid(set, stringTexts(neck))]];
}

function cautionBlock(set: Setting): Block {
	// On paper nothing of a machine or of its sheet applies, only the knife.
	const [knife] = cautionsFor("printer", "card");
	return [
		...headingLines(set, "Cautions"),
		...items(set, [...HAND_CAUTIONS, knife!, CAUTION_LAST]),
	];
}

/** Rows that cannot be broken: they say how narrow a column may be. */
export function gridsOf({ neck }: Bench): (readonly (readonly string[])[])[] {
	return [stationTexts(neck)?.rows ?? [], neck.strings ? stringTexts(neck) : []].filter(
		(rows) => rows.length > 0,
	);
}
