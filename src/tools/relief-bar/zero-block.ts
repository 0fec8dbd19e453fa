import type { Part } from "../../drawing/index.js";
import { line } from "../../geometry/index.js";
import { heightToFit, label } from "../label.js";
import { outlineOf } from "../outline.js";
import { cutSize } from "../size.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { Laid } from "./lay.js";

/** Block beyond the feet on either side, mm. */
const BEYOND = 10;
const HEIGHT = 25;
const TEXT = 2.5;
/** A bar glued up of several sheets stands and reads on a block at least so thick, mm. */
const STOUT = 6;

/** Sheets in a block: under a bar of several its edge must carry the plunger beside its middle. */
function sheetsOf({ stock }: Bench, { stem }: Laid): number {
	if (!stem) return 1;
	return Math.min(stem.layers + 2, Math.ceil(STOUT / stock.thickness - 1e-9));
}

/** A bar with a straight edge as long as the relief bar and more. */
export function zeroBlock(bench: Bench, laid: Laid, name: string): Part {
	const { span, first, last } = laid;
	const layers = sheetsOf(bench, laid);
	const { letters, job } = bench;
	const [left, right] = [-BEYOND, span + BEYOND];
	const round = CORNER_RADIUS;
	const outline = outlineOf([
		{ x: left, y: -HEIGHT, round },
		{ x: right, y: -HEIGHT, round },
		{ x: right, y: 0, round },
		{ x: left, y: 0, round },
	]);
	const ends = [
		{ x: left + round, y: 0 },
		{ x: right - round, y: 0 },
	] as const;
	const texts = [`ZERO BLOCK for frets ${first} and ${last}`, "ZERO BLOCK"];
	const [title] = texts.flatMap((text) => {
		const height = heightToFit(letters, text, span, TEXT);
		return height === null ? [] : [{ text, height }];
	});
	const jobHeight = heightToFit(letters, job, span, TEXT);
	const at = (y: number) => ({ x: span / 2, y });
	const labels = [
		...(title
			? [
					label(letters, "title", title.text, {
						at: at(-HEIGHT / 2 + 1),
						height: title.height,
						align: "centre",
					}),
				]
			: []),
		...(jobHeight
			? [
					label(letters, "job", job, {
						at: at(-HEIGHT / 2 - 4),
						height: jobHeight,
						align: "centre",
					}),
				]
			: []),
	];
	const size = (
		id: string,
		axis: "x" | "y",
		from: { x: number; y: number },
		to: { x: number; y: number },
	) =>
		cutSize(bench, {
			id,
			kind: "length",
			feature: "block",
			datum: "outline",
			axis,
			at: [from, to],
			nominal: axis === "x" ? to.x - from.x : to.y - from.y,
		});
	return {
		name: `${name}-zero-block`,
		tool: "relief-bar",
		title: "Zero block of the relief bar",
		stock: bench.stock,
		...(layers > 1 && { layers }),
		marks: [
			...labels.flatMap((l) => l.marks),
			{ operation: "cut", path: outline, feature: "outline" },
		],
		workingEdge: "the upper edge",
		working: [line(...ends)],
		claims: [
			cutSize(bench, {
				id: "working-edge",
				kind: "straightness",
				feature: "working edge",
				datum: "working edge",
				axis: "line",
				at: [...ends],
				nominal: 0,
			}),
			size("length", "x", { x: left, y: -HEIGHT / 2 }, { x: right, y: -HEIGHT / 2 }),
			size("height", "y", { x: span / 2, y: -HEIGHT }, { x: span / 2, y: 0 }),
			...labels.map((l) => l.claim),
		],
		notes: [
			...(layers > 1
				? [
						`Glue ${layers} of it face on face, upper edges flush: the bar's feet are wider, and stand on it with their middle.`,
					]
				: []),
			"Stand the block on its lower edge on a flat bench, the relief bar on its upper edge: there a dial is set to zero, and a pad must touch with no light under it.",
			"The edge is only as straight as the machine cut it: lap it on glass or a surface plate before you trust it.",
		],
	};
}
