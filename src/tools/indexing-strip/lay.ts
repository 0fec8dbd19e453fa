import { lawOf } from "../../fields/index.js";
import { type Move, STAY } from "../../geometry/index.js";
import { fretFraction, fretLine, type Neck } from "../../neck/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { lengthName, scaleText } from "../scale-text.js";
import type { Given, IndexingSettings } from "./settings.js";

/** A notch in the frame of its edge: x from the theoretical nut, the edge on y = 0. */
export interface IndexNotch {
	/** 0 is the nut's cut, or the zero fret's. */
	readonly fret: number;
	/** Its flank on the nut's side: the pin lies against it. */
	readonly flank: number;
	/** Its other flank. */
	readonly to: number;
}

/** One edge of the strip, and the move that carries it onto the strip. */
export interface IndexEdge {
	readonly notches: readonly IndexNotch[];
	readonly left: number;
	readonly right: number;
	readonly move: Move;
	/** As people call the scale: "25 1/2 in". */
	readonly scale: string;
	readonly frets: number;
}

/** Cuts of a scale: where the blade's middle goes, mm from the theoretical nut, the nut first. */
interface Cuts {
	readonly places: readonly number[];
	readonly scale: string;
}

/** A neck's cuts; the nut's where its face is, the zero fret's where there is one. */
function cutsOf(neck: Neck): Cuts {
	const frets = Array.from({ length: neck.frets }, (_, i) => fretLine(neck, i + 1).x);
	return { places: [neck.zeroFret ? 0 : neck.nutShift, ...frets], scale: scaleText(neck) };
}

/** Cuts of the second scale: nothing of it is moved. */
function secondCuts(neck: Neck, given: Pick<Given, "second-edge">): Cuts | null {
	const second = given["second-edge"];
	if (second === "plain") return null;
	const { scale, frets, division } = second;
	const law = division ? lawOf(division, scale) : neck.law;
	const places = Array.from({ length: frets + 1 }, (_, n) => scale * fretFraction(law, n));
	return { places, scale: lengthName(scale) };
}

/**
 * The notches of some cuts: with the pin against its flank, notch n has the pin's middle at
 * d(n) + c, and the blade's on d(n). What a notch is wider than the pin lies on the other side.
 */
function edgeOf({ places, scale }: Cuts, s: IndexingSettings): IndexEdge {
	const { pin } = s;
	const notches = places.map((d, fret): IndexNotch => {
		const flank = d + s["pin-to-blade"] - pin / 2;
		return { fret, flank, to: flank + pin + s["pin-play"] };
	});
	const margin = s["end-margin"];
	return {
		notches,
		left: Math.min(0, notches[0]!.flank) - margin,
		right: Math.max(0, notches.at(-1)!.to) + margin,
		move: STAY,
		scale,
		frets: places.length - 1,
	};
}

/** One edge or two, equally long; the second one runs from the strip's other end. */
export function edgesOf(neck: Neck, s: IndexingSettings): IndexEdge[] {
	const first = edgeOf(cutsOf(neck), s);
	const cuts = secondCuts(neck, s);
	if (!cuts) return [first];
	const second = edgeOf(cuts, s);
	const size = Math.max(first.right - first.left, second.right - second.left);
	const move = {
		x: first.left + size + second.left,
		y: s["strip-height"],
		turn: Math.PI,
		mirror: false,
	};
	return [
		{ ...first, right: first.left + size },
		{ ...second, right: second.left + size, move },
	];
}

/** Wood or plastic between two notches, at least, mm: less would break off. */
export const LEAST_LAND = 1.5;

/** The narrowest land that is too narrow, with its fret; none if all hold. */
export function landProblems({ notches }: IndexEdge, path: string[]): Problem[] {
	const lands = notches
		.slice(1)
		.map(({ fret, flank }, i) => ({ fret, land: flank - notches[i]!.to }));
	const tight = lands.filter(({ land }) => land < LEAST_LAND - 1e-9);
	const [first] = tight;
	if (!first) return [];
	const { fret, land } = tight.reduce((a, b) => (b.land < a.land ? b : a), first);
	const facts = { fret, before: fret - 1, land, least: LEAST_LAND, more: tight.length - 1 };
	return [problem("index-land-too-narrow", path, facts)];
}
