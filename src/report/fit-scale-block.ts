import {
	type Estimate,
	type FannedFit,
	type FittedSlot,
	lawName,
	type ScaleFit,
} from "../readings/index.js";
import { fixed, inches, trimmed } from "../units/index.js";
import { type BlockPart, chanceText, estimateText, signed, texts } from "./fit-block.js";

export function scaleBlock(fit: ScaleFit): BlockPart {
	const { scale, offset, alternatives, s, df, isResolutionBound, usual } = fit;
	const { through, free } = alternatives;
	return {
		title: "Scale",
		facts: [
			["law", lawText(fit)],
			["scale", `${estimateText(scale)}, ${inches(scale.value)} in`],
			["nut", offset ? nutText(offset) : "the nut's end is where the scale begins"],
			...(through
				? [
						[
							"through the nut's end",
							`${estimateText(through.scale)}, s ${fixed(through.s, 3)} mm`,
						] as const,
					]
				: []),
			...(free
				? [
						[
							"with a free nut",
							`${estimateText(free.scale)}, nut at ${fixed(free.offset.value, 3)} mm, s ${fixed(free.s, 3)} mm`,
						] as const,
					]
				: []),
			[
				"scatter",
				`${fixed(s, 3)} mm on ${df} degrees of freedom${isResolutionBound ? ", by the rule's step" : ""}`,
			],
			["tests", fit.comparisons.map(comparisonText).join("; ") || "none: too few readings"],
			[
				"usual scales near by",
				usual
					.map(({ name, length, off }) => `${name} ${fixed(length, 2)} (${signed(off)})`)
					.join("; ") || "none",
			],
		],
		rows: [SLOT_HEADS, ...fit.rows.map(slotRow)],
		notes: texts(fit.notes),
		residuals: [{ line: "", slots: fit.rows }],
	};
}

function lawText({ kind, law, join, ratios }: ScaleFit | FannedFit): string {
	const ratio = ratios.map((q) => trimmed(q, 6)).join(" and ");
	const where = join === null ? "" : `, up to fret ${join} and beyond it`;
	return `${lawName(kind, law)}${ratio === "" ? "" : ` (each string length ${ratio} of the one before${where})`}`;
}

function nutText(offset: Estimate): string {
	const isBehind = offset.value > 0;
	const side = isBehind
		? "behind where the scale begins, away from the saddle"
		: "ahead of where the scale begins, toward the saddle";
	const [low, high] = isBehind ? [offset.low, offset.high] : [-offset.high, -offset.low];
	return `the nut's end lies ${fixed(Math.abs(offset.value), 3)} mm ${side} (95 %: ${fixed(low, 3)} to ${fixed(high, 3)})`;
}

function comparisonText({
	simpler,
	richer,
	f,
	df1,
	df2,
	p,
	wins,
}: ScaleFit["comparisons"][number]): string {
	return `${richer} against ${simpler}: F(${df1}, ${df2}) ${trimmed(f, 2)}, p ${chanceText(p)}, ${wins ? "taken" : "not needed"}`;
}

const SLOT_HEADS = ["fret", "read", "law", "off mm", "off cents", ""];

function slotRow({ fret, at, fitted, residual, cents, isOdd }: FittedSlot): string[] {
	return [
		String(fret),
		fixed(at, 3),
		fixed(fitted, 3),
		signed(residual),
		signed(cents, 2),
		isOdd ? "out" : "",
	];
}

export function fannedBlock(fit: FannedFit): BlockPart {
	const { scale, squareFret, offset, s, df } = fit;
	return {
		title: "Scales",
		facts: [
			["law", lawText(fit)],
			["bass", `${estimateText(scale.bass)}, ${inches(scale.bass.value)} in`],
			["treble", `${estimateText(scale.treble)}, ${inches(scale.treble.value)} in`],
			[
				"square fret",
				squareFret
					? `${trimmed(squareFret.value, 2)} (95 %: ${trimmed(squareFret.low, 2)} to ${trimmed(squareFret.high, 2)})`
					: "not told by these readings",
			],
			...(offset
				? [
						[
							"nuts from the line read from",
							`bass ${fixed(offset.bass.value, 3)} mm, treble ${fixed(offset.treble.value, 3)} mm`,
						] as const,
					]
				: []),
			["scatter", `${fixed(s, 3)} mm on ${df} degrees of freedom`],
		],
		rows: [
			["string", ...SLOT_HEADS],
			...fit.rows.bass.map((row) => ["bass", ...slotRow(row)]),
			...fit.rows.treble.map((row) => ["treble", ...slotRow(row)]),
		],
		notes: texts(fit.notes),
		residuals: [
			{ line: "bass", slots: fit.rows.bass },
			{ line: "treble", slots: fit.rows.treble },
		],
	};
}
