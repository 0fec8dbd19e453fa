import { open, type Path, type Point, vertex } from "../../geometry/index.js";
import { onPlate, type PlacedEdge, type Plate, type WorkingEdge } from "../edged-plate/plate.js";
import type { Corner } from "../outline.js";
import { type Section, sectionOf } from "./section.js";

/** A tongue that stands on the wood on both sides of a fret, its notch over the crown. */
export interface Notch extends WorkingEdge {
	readonly section: Section;
	/** Width of either foot, mm. */
	readonly foot: number;
}

/** The notches for crowns of these heights, the highest first. */
export function notchesOf(width: number, heights: readonly number[], foot: number): Notch[] {
	return heights
		.toSorted((a, b) => b - a)
		.map((height, i) => ({
			number: i + 1,
			length: width + 2 * foot,
			section: sectionOf(width, height),
			foot,
		}));
}

/** A tongue's end from one foot over its notch to the other, in its own frame. */
export function profileOf({ length, section }: Notch): Corner[] {
	const { width, rise, flank } = section;
	const [end, half] = [length / 2, width / 2];
	const mouth = flank > 0 ? [-half, half].map((x) => ({ x, y: 0 })) : [];
	return [
		{ x: -end, y: 0 },
		...mouth.slice(0, 1),
		{ x: -half, y: flank, bulge: (-2 * rise) / width },
		{ x: half, y: flank },
		...mouth.slice(1),
		{ x: end, y: 0 },
	];
}

/** The start, middle and end of a notch's arc on the plate, in the contour's order. */
export function arcOf(plate: Plate, notch: PlacedEdge<Notch>): [Point, Point, Point] {
	const { width, height, flank } = notch.section;
	return [
		onPlate(plate, notch, { x: -width / 2, y: flank }),
		onPlate(plate, notch, { x: 0, y: height }),
		onPlate(plate, notch, { x: width / 2, y: flank }),
	];
}

/** What does the work: feet and notches. */
export function workingPaths(plate: Plate<Notch>): Path[] {
	return plate.edges.map((notch) =>
		open(
			...profileOf(notch).map((corner) => {
				const { x, y, bulge } = onPlate(plate, notch, corner);
				return vertex(x, y, bulge ?? 0);
			}),
		),
	);
}
