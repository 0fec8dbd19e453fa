import { type Problem, problem } from "../../problem/index.js";
import { trimmed } from "../../units/index.js";
import { heightToFit, type Label, label } from "../label.js";
import type { Bench } from "../tool.js";
import type { Rail } from "./rails.js";
import type { RailSettings } from "./settings.js";
import { MARK_ROOM } from "./shape.js";

/** Between lines, hole and marks, and from letters to the sides, mm. */
const LEADING = 2;
const TITLE = 3.5;
const TEXT = 2.5;

interface Line {
	readonly id: string;
	readonly text: string;
	readonly most: number;
}

/** Ways to name a rail, the fullest first; the last has what it cannot do without. */
function layouts(bench: Bench, s: RailSettings, { tag, radius, x }: Rail): Line[][] {
	const edge = radius === null ? "level" : `R ${trimmed(radius, 2)} mm`;
	const name = { id: "radius", text: `${tag} rail  ${edge}`, most: TITLE };
	const heights = `foot ${trimmed(s["foot-height"], 2)}, rail ${trimmed(s["rail-height"], 2)} mm`;
	const rest = [
		{ id: "station", text: `at ${trimmed(x, 2)} mm from the nut`, most: TEXT },
		{ id: "heights", text: heights, most: TEXT },
		{ id: "job", text: bench.job, most: TEXT },
	];
	return [[name, ...rest], [name, rest[0]!], [name]];
}

/** What stands on a rail's face between the centre line's marks. */
export interface Face {
	readonly labels: readonly Label[];
	/** Height of the hole's middle. */
	readonly hole: number;
}

/** Letters and hole one under the other, or what they have no room for. */
export function railFace(
	bench: Bench,
	s: RailSettings,
	rail: Rail,
	diameter: number,
): Face | Problem {
	const room = 2 * (rail.half - LEADING);
	const free = rail.side - 2 * MARK_ROOM - LEADING - (diameter > 0 ? diameter + LEADING : 0);
	let least = Number.POSITIVE_INFINITY;
	for (const lines of layouts(bench, s, rail)) {
		const set = lines.map((l) => ({
			...l,
			height: heightToFit(bench.letters, l.text, room, l.most),
		}));
		const long = set.find(({ height }) => height === null);
		if (long) {
			if (lines.length > 1) continue;
			return problem("label-too-long", [], { text: long.text, room });
		}
		const needed = set.reduce((sum, { height }) => sum + height! + LEADING, 0);
		least = Math.min(least, needed);
		if (needed <= free + 1e-9)
			return stacked(bench, rail, set as Sized[], (free - needed) / 2, diameter);
	}
	const height = rail.crown;
	return problem("rail-too-low", ["foot-height"], {
		height,
		least: Math.ceil(height + least - free - 1e-9),
	});
}

interface Sized extends Line {
	readonly height: number;
}

function stacked(
	bench: Bench,
	rail: Rail,
	lines: readonly Sized[],
	spare: number,
	diameter: number,
): Face {
	let y = rail.side - MARK_ROOM - spare;
	const labels = lines.map(({ id, text, height }) => {
		y -= height + LEADING;
		return label(bench.letters, id, text, { at: { x: 0, y }, height, align: "centre" });
	});
	return { labels, hole: y - LEADING - diameter / 2 };
}
