import { isUneven, type Job } from "../job/index.js";
import { type Problem, problemText } from "../problem/index.js";
import {
	type BoardWidth,
	type DressPlan,
	type Estimate,
	type FannedFit,
	type FittedSlot,
	type FretHeights,
	lawName,
	type Relief,
	type ScaleFit,
	type WireFit,
} from "../readings/index.js";
import { fixed, inches, MM_PER_INCH, trimmed } from "../units/index.js";

/** Slots against the law, along one line. */
export interface ReadLineSlots {
	readonly line: string;
	readonly slots: readonly FittedSlot[];
}

/** What was made of one kind of reading, for a page or a console. */
export interface FitBlock {
	readonly title: string;
	readonly facts: readonly (readonly [name: string, value: string])[];
	/** The first row holds the heads. */
	readonly rows: readonly (readonly string[])[];
	readonly notes: readonly string[];
	readonly residuals: readonly ReadLineSlots[];
}

/** What a job's readings came to, block by block; none for a job of numbers alone. */
export function fitBlocks({
	fit,
	wireFit,
	bench,
}: Pick<Job, "fit" | "wireFit" | "bench">): FitBlock[] {
	const blocks = [
		...(fit ? neckBlocks(fit, bench.neck.frets) : []),
		...(wireFit ? [wireBlock(wireFit)] : []),
	];
	return blocks.map((block) => ({ ...NOTHING, ...block }));
}

function neckBlocks(fit: NonNullable<Job["fit"]>, frets: number): Part[] {
	const { scale, radius, width, relief, heights, plan } = fit;
	return [
		...(scale ? ["squareFret" in scale ? fannedBlock(scale) : scaleBlock(scale)] : []),
		...(radius ? [radiusBlock(radius)] : []),
		...(width ? [widthBlock(width)] : []),
		...(relief ? [reliefBlock(relief)] : []),
		...(heights && plan ? [heightsBlock(heights, plan, frets)] : []),
	];
}

const NOTHING = { facts: [], rows: [], notes: [], residuals: [] };
type Part = Partial<FitBlock> & { readonly title: string };

const UNEVEN =
	"uneven: no form fits the stations; the board is taken as it was read there, straight between them";

/** "647.700 ± 0.120 mm (95 % 647.580 to 647.820)". */
function estimateText({ value, low, high }: Estimate, digits = 3): string {
	const half = Math.max(high - value, value - low);
	if (!Number.isFinite(half)) return `${fixed(value, digits)} mm, at least ${fixed(low, digits)}`;
	return `${fixed(value, digits)} ± ${fixed(half, digits)} mm (95 %: ${fixed(low, digits)} to ${fixed(high, digits)})`;
}

function texts(notes: readonly Problem[]): string[] {
	return notes.map(problemText);
}

function scaleBlock(fit: ScaleFit): Part {
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

function signed(value: number, digits = 3): string {
	const text = fixed(value, digits);
	return value > 0 ? `+${text}` : text;
}

function fannedBlock(fit: FannedFit): Part {
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

const WIRE_NAMES = {
	crownWidth: "crown width",
	crownHeight: "crown height",
	tangWidth: "tang width",
	tangDepth: "tang depth",
} as const;

function wireBlock({ sizes, notes }: WireFit): Part {
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

/** Notes on an uneven board: those on the form that it does not have say nothing of it. */
const UNEVEN_NOTES = new Set(["stations-scatter", "form-undecided"]);

function radiusBlock(fit: NonNullable<NonNullable<Job["fit"]>["radius"]>): Part {
	const { form, at, comparisons, notes, stations } = fit;
	const uneven = isUneven(fit);
	const compound = form === "cone" ? "compound: it grows straight along the board" : form;
	const tests = comparisons.map(
		({ from, to, test, statistic, chance, wins }) =>
			`${to} against ${from}: ${test} ${trimmed(statistic, 2)}, p ${chanceText(chance)}, ${wins ? "taken" : "not needed"}`,
	);
	return {
		title: "Radius",
		facts: [
			["form", uneven ? UNEVEN : compound],
			["tests", tests.join("; ") || "none: one station"],
		],
		rows: [
			["at", "from nut", "radius mm", "95 % from", "to", "inch", "off by sd"],
			...at.map(({ name, x, radius, residual }, i) => [
				name,
				fixed(x, 2),
				...radiusCells(uneven ? stations[i]!.estimate.radius : radius),
				signed(residual, 1),
			]),
		],
		notes: texts(uneven ? notes.filter(({ code }) => UNEVEN_NOTES.has(code)) : notes),
	};
}

function radiusCells(radius: Estimate | null): string[] {
	if (!radius) return ["flat", "", "", "flat"];
	const high = Number.isFinite(radius.high) ? fixed(radius.high, 1) : "flat";
	const inch = trimmed(radius.value / MM_PER_INCH, 2);
	return [fixed(radius.value, 1), fixed(radius.low, 1), high, inch];
}

function chanceText(chance: number): string {
	return chance < 1e-4 ? "under 0.0001" : trimmed(chance, 4);
}

function widthBlock({ places, atNut, slope, notes }: BoardWidth): Part {
	return {
		title: "Board width",
		facts: [
			["at the nut", estimateText(atNut)],
			["growth", slope ? `${fixed(slope.value * 100, 3)} mm in 100 mm` : "not told by one place"],
		],
		rows: [
			["from nut", "read", "edges", "off", ""],
			...places.map(({ x, mean, fitted, residual, out }) => [
				fixed(x, 2),
				fixed(mean, 3),
				fixed(fitted, 3),
				signed(residual),
				out ? "out" : "",
			]),
		],
		notes: texts(notes),
	};
}

function reliefBlock({ points, largest, fret, contacts, on, notes }: Relief): Part {
	const place = fret === null ? "" : `, near fret ${fret}`;
	return {
		title: "Straightness",
		facts: [
			["largest relief", `${estimateText(largest)}${place}`],
			["between", `${fixed(contacts.from, 1)} and ${fixed(contacts.to, 1)} mm, on the ${on}`],
		],
		rows: [
			["fret", "from nut", "read", "+ bar's sag", "+ board's hump", "= relief"],
			...points.map((p) => [
				p.fret === null ? "" : String(p.fret),
				fixed(p.x, 1),
				fixed(p.reading, 3),
				fixed(p.sag, 3),
				fixed(p.hump, 3),
				fixed(p.relief, 3),
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

function heightsBlock(heights: FretHeights, plan: DressPlan, frets: number): Part {
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
