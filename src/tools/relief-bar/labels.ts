import { heightToFit, type Label, label } from "../label.js";
import { scaleText } from "../scale-text.js";
import type { Bench } from "../tool.js";
import { type Laid, lettersEnd } from "./lay.js";
import { AROUND_HOLE, LEADING, NUMBER_TOP, NUMBERS, TEXT } from "./measures.js";

/** Letters to the sides of a sheet, mm. */
const SIDE = 2;

interface Number {
	readonly n: number;
	readonly x: number;
	readonly align: "left" | "centre" | "right";
}

function numbers({ letters }: Bench, all: readonly Number[]): Label[] {
	return all.map(({ n, x, align }) =>
		label(letters, `fret-${n}`, String(n), { at: { x, y: NUMBERS }, height: TEXT, align }),
	);
}

/** Texts under each other over the numbers; of each the first wording that has room, or none. */
function lines(
	{ letters }: Bench,
	texts: readonly { readonly id: string; readonly wordings: readonly string[] }[],
	[from, to]: readonly [number, number],
): Label[] {
	let y = NUMBER_TOP;
	return texts.flatMap(({ id, wordings }) => {
		const [fits] = wordings.flatMap((text) => {
			const height = heightToFit(letters, text, to - from, TEXT);
			return height === null ? [] : [{ text, height }];
		});
		if (!fits) return [];
		y += LEADING;
		const own = label(letters, id, fits.text, { at: { x: from, y }, height: fits.height });
		y += fits.height;
		return [own];
	});
}

/** Numbers of the frets over feet and pad; what the bar is over them, from the left. */
export function barLabels(bench: Bench, laid: Laid): Label[] {
	const { first, read, last, readAt, span, foot, dial, stem } = laid;
	const hole = dial ?? stem?.screw;
	const end = hole ? hole.x - hole.diameter / 2 - AROUND_HOLE : lettersEnd(laid);
	const texts = [
		{ id: "job", wordings: [`${bench.job}, ${scaleText(bench.neck)}`, bench.job] },
		{
			id: "title",
			wordings: [`RELIEF BAR on frets ${first} and ${last}, reads at ${read}`, "RELIEF BAR"],
		},
	];
	return [
		...numbers(bench, [
			{ n: first, x: 0, align: "left" },
			{ n: read, x: readAt, align: "centre" },
			{ n: last, x: span, align: "right" },
		]),
		...lines(bench, texts, [SIDE - foot / 2, end - SIDE]),
	];
}

/** The number of the fret under a middle piece's foot, and which piece it is. */
export function pieceLabels(bench: Bench, laid: Laid, side: "left" | "right"): Label[] {
	const { first, last, span, foot, stem } = laid;
	if (!stem) return [];
	const title = { id: "title", wordings: [`RELIEF BAR, ${side} of the stem`, side.toUpperCase()] };
	const texts = [{ id: "job", wordings: [bench.job] }, title];
	if (side === "left") {
		return [
			...numbers(bench, [{ n: first, x: 0, align: "left" }]),
			...lines(bench, texts, [SIDE - foot / 2, stem.from - SIDE]),
		];
	}
	return [
		...numbers(bench, [{ n: last, x: span, align: "right" }]),
		...lines(bench, texts, [stem.to + SIDE, lettersEnd(laid)]),
	];
}
