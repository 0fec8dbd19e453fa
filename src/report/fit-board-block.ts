import { isUneven, type Job } from "../job/index.js";
import type { BoardWidth, Estimate, Relief } from "../readings/index.js";
import { fixed, MM_PER_INCH, trimmed } from "../units/index.js";
import { type BlockPart, chanceText, estimateText, signed, texts } from "./fit-block.js";

const UNEVEN =
	"uneven: no form fits the stations; the board is taken as it was read there, straight between them";

/** Notes on an uneven board: those on the form that it does not have say nothing of it. */
const UNEVEN_NOTES = new Set(["stations-scatter", "form-undecided"]);

export function radiusBlock(fit: NonNullable<NonNullable<Job["fit"]>["radius"]>): BlockPart {
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

export function widthBlock({ places, atNut, slope, notes }: BoardWidth): BlockPart {
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

export function reliefBlock({ points, largest, fret, contacts, on, notes }: Relief): BlockPart {
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
