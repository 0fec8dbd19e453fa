import {
	circle,
	line,
	open,
	type Path,
	type Point,
	reversed,
	SAME_POINT,
	vertex,
} from "../../geometry/index.js";
import { type FretLine, fretLine, type Neck, widthAt } from "../../neck/index.js";
import { aroundSides, boardSides, nutLine, pastBends, squareEnd } from "../board-outline.js";
import { type MarkerCentre, markerCentres } from "../marker-centres.js";
import { type Slot, slotsOf } from "../slot-strip/lay.js";
import { CORNER_RADIUS } from "../tool.js";
import type { GuideSettings } from "./settings.js";

/** A hole of the guide. */
export interface Hole extends MarkerCentre {
	readonly path: Path;
}

/** The guide as it lies on the board. */
export interface Guide {
	readonly neck: Neck;
	/** The line of its nut end: the nut's actual face or, on a neck with one, the zero fret. */
	readonly face: FretLine;
	/** Ends of that line on the board's edges, the lower one first. */
	readonly nutEnd: readonly [Point, Point];
	/** Its far end, square to the centre line. */
	readonly to: number;
	/** Every slot between its ends. */
	readonly slots: readonly Slot[];
	readonly holes: readonly Hole[];
	readonly diameter: number;
	readonly outline: Path;
	/** Nut end and long sides, as far as they are straight. */
	readonly edges: readonly Path[];
}

/**
 * How far the plate's nut end lies from the theoretical nut, mm. Where a zero fret stands the nut
 * behind it is no datum: the plate begins on the zero fret's own line.
 */
export function nutEndShift({ zeroFret, nutShift }: Neck): number {
	return zeroFret ? 0 : nutShift;
}

/** The guide of a neck that has a marker at one fret at least of those asked for. */
export function guideOf(neck: Neck, s: GuideSettings): Guide {
	const diameter = s.drill + s["drill-play"];
	const centres = markerCentres(neck, s["double-marker-spread"]);
	const holes = centres
		.filter(({ fret }) => s["markers-at"]?.includes(fret) ?? true)
		.map((centre) => ({ ...centre, path: reversed(circle(centre.at, diameter / 2)) }));
	const last = Math.max(...holes.map(({ fret }) => fret));
	const slots = slotsOf(neck).filter(({ fret }) => fret.n > 0 && fret.n <= last);
	const far = Math.max(...slots.flatMap(({ bass, treble }) => [bass.x, treble.x]));
	const to = pastBends(neck, far + s["end-margin"]);
	const shift = nutEndShift(neck);
	const nut = fretLine(neck, 0);
	const ends = nutLine(neck, shift);
	const nutEnd = ends[0].y < ends[1].y ? ends : ([ends[1], ends[0]] as const);
	const sides = boardSides(neck, nutEnd, squareEnd(neck, to, 0), 0);
	return {
		neck,
		face: { ...nut, x: nut.x + shift },
		nutEnd,
		to,
		slots,
		holes,
		diameter,
		outline: aroundSides(sides),
		edges: [line(nutEnd[1], nutEnd[0]), ...sides.map((side) => straightPart(neck, side))],
	};
}

/** A long side up to where its far corner is rounded; the board bends nowhere beyond. */
function straightPart(neck: Neck, side: readonly Point[]): Path {
	const corner = side.at(-1)!;
	const x = corner.x - 2 * CORNER_RADIUS;
	const end = { x, y: (Math.sign(corner.y) * widthAt(neck, x)) / 2 };
	const before = side.slice(0, -1).filter((p) => p.x < x - SAME_POINT);
	return open(...[...before, end].map((p) => vertex(p.x, p.y)));
}

/** The line that lies before a fret's marker: the fret before, or the plate's nut end. */
export function lineBefore({ face, slots }: Guide, fret: number): FretLine {
	return fret === 1 ? face : slots[fret - 2]!.fret;
}
