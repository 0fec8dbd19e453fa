import type { Point } from "../../geometry/index.js";
import { crossingOf, isFanned, stringLines } from "../../neck/index.js";
import { MATERIALS, sagOnEdge } from "../../shop/index.js";
import { trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import { hasPad, type Laid } from "./lay.js";
import { RELIEF } from "./measures.js";
import type { Stem } from "./stem.js";

/** What the person at the bench must know of the bar, or of its cheeks. */
export function barNotes(bench: Bench, laid: Laid): string[] {
	const { neck } = bench;
	const { first, last, read, stem } = laid;
	const fan = isFanned(neck)
		? ["The frets are fanned: the bar fits along the centre line only."]
		: [];
	return [
		...(stem ? [...glueNotes(laid, stem), ...clampNotes(bench, stem)] : []),
		`Stand the feet on the crowns of frets ${first} and ${last}, the strings tuned, and read at fret ${read}.`,
		...stringNotes(bench, laid),
		...readNotes(bench, laid),
		...fan,
	];
}

/** What stands between two strings must be so much narrower than from middle to middle of them, mm. */
const STRING = 1.5;

/** A bar too thick to stand between the strings, whose tension the reading needs. */
function stringNotes({ neck, stock, layers }: Bench, { first, last, stem }: Laid): string[] {
	const thickness = stock.thickness * (stem ? stem.layers + 2 : layers);
	const lines = neck.strings ? stringLines(neck) : [];
	const gaps = lines.slice(1).map((line, i) => {
		const apart = (n: number) => {
			const [a, b] = [lines[i]!, line].map((l) => crossingOf(neck, l, n).at) as [Point, Point];
			return Math.hypot(b.x - a.x, b.y - a.y);
		};
		return Math.min(apart(first), apart(last));
	});
	const widest = Math.max(0, ...gaps);
	if (gaps.length === 0 || thickness <= widest - STRING) return [];
	const size = `${trimmed(thickness, 3)} mm`;
	return [
		`It is ${size} thick, and the strings are ${trimmed(widest, 1)} mm apart at most: it does not stand between them. Lift the strings beside it out of their slots to the sides while the others keep their tension, or take a thinner bar${stem ? " with the dial held by its lug" : ""}.`,
	];
}

function readNotes({ stock }: Bench, laid: Laid): string[] {
	const { span, height, dial } = laid;
	const sag = trimmed(sagOnEdge(MATERIALS[stock.material], span, height - RELIEF), 4);
	if (hasPad(laid)) {
		return [
			"Push feeler leaves under the pad: the thickest that passes without lifting the bar is the relief. A back-bow it cannot read: the bar then rocks on the pad.",
			`The bar sags by ${sag} mm between its feet: by so much the gap reads too small.`,
		];
	}
	const zero = dial
		? "Bolt the dial to the face by its lug, the plunger square to the edge; set it to zero on the zero block."
		: "Stand the bar on the zero block, push the stem down until the plunger is about half way in, clamp it, and turn the dial to zero.";
	return [
		`${zero} How much farther out the plunger stands over the fret is the relief, how much farther in a back-bow.`,
		`The bar sags by ${sag} mm between its feet; set to zero on the block it does so there too, and the reading needs no correction.`,
	];
}

function glueNotes({ dowels }: Laid, { layers, diameter, from, to }: Stem): string[] {
	const sheets = layers === 1 ? "one sheet" : `${layers} sheets`;
	const held = dowels
		? `dowels of ${trimmed(dowels[0][0].diameter, 3)} mm through all of them hold them in their places`
		: `a rod ${trimmed(to - from, 3)} mm thick, waxed, holds the channel open while you glue`;
	return [
		`Glue up: one cheek, ${sheets} of middle pieces left and right of the channel, the other cheek; ${held}.`,
		`Try it dry first, feet down on a flat plate: all feet must touch it, and the stem must slide in the channel, ${trimmed(to - from, 3)} mm wide for ${trimmed(diameter, 3)} mm. Then glue and clamp it on that plate, under it what glue does not stick to; keep the channel free of glue.`,
		"Once the glue is hard, lap the feet on abrasive on the plate until all sheets bear.",
	];
}

function clampNotes({ stock }: Bench, { layers, play, screw, diameter }: Stem): string[] {
	const room = `The ${layers === 1 ? "sheet is" : "sheets are"} ${trimmed(layers * stock.thickness, 3)} mm thick together, the stem ${trimmed(diameter, 3)} mm: ${trimmed(play, 3)} mm of play across the bar.`;
	if (!screw) {
		return [`${room} A turn of thin tape around the stem holds it in the channel.`];
	}
	return [
		`${room} Glue a nut over one cheek's hole of ${trimmed(screw.diameter, 3)} mm, or cut a thread in it, and press the stem against the other cheek by a screw with a soft tip: gently, for a pinched stem binds the plunger.`,
	];
}

/** What must be known of a middle piece. */
export function pieceNotes({ dowels }: Laid, { layers }: Stem): string[] {
	const count = layers === 1 ? "One of it goes" : `${layers} of it, face on face, go`;
	const straight = dowels
		? ["Its straight side is a side of the stem's channel: the dowels place it."]
		: ["Its straight side is a side of the stem's channel: glue it up against a rod."];
	return [`${count} between the two cheeks, the foot flush with theirs.`, ...straight];
}
