import type { Mark, Part, SizeClaim } from "../drawing/index.js";
import { FILE_TOLERANCE, OFF_WORKING_EDGE, outlineOf } from "../drawing/index.js";
import { type Path, type Point, pathBetween, pathLength, segments } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { trimmed } from "../units/index.js";
import type { Machine, Tabs } from "./machine.js";
import { spreadPlaces } from "./spread-places.js";
import { gapAlong, type TabPlace, tabPlaces } from "./tab-places.js";

/** Least cut between two tabs, mm. */
const LEAST_CUT = 2;

/** What tabs need to know of the cut. */
export interface TabCut extends Pick<Machine, "kind" | "tolerance"> {
	/** Full width of the cut that the part was compensated for, mm. */
	readonly kerf: number;
}

/**
 * A compensated part held in its sheet by tabs on its outline, spread as far from each other as
 * the working edges and corners leave room, to half a millimetre.
 *
 * A laser's outline falls into open paths, one from each tab to the next. The gaps are longer
 * than the tabs by the width of the cut: the round end of a cut reaches half of it further. A
 * mill's outline stays whole, and each tab is an open mark along it, of an operation of its own.
 *
 * A part that is meant to be nominal is returned as it is.
 *
 * @returns a problem if fewer tabs fit, with their number
 * @example a disc of 20 mm in radius with 2 tabs of 1.5 mm, cut 0.2 mm wide: two arcs that end
 *   1.7 mm apart
 */
export function withTabs(part: Part, { count, width }: Tabs, cut: TabCut): Part | Problem {
	const outline = outlineMark(part);
	if (part.nominal || !outline) return part;
	const gap = width + cut.kerf;
	const off = OFF_WORKING_EDGE + cut.kerf / 2;
	const places = tabPlaces(outline.path, { gap, off, working: part.working });
	const around = pathLength(outline.path);
	const chosen = spreadPlaces(places, around, gap + LEAST_CUT, count);
	if (chosen.length < count) {
		const facts = { part: part.name, count, width, fits: chosen.length };
		return problem("no-room-for-tabs", [], facts);
	}
	const gaps = chosen.map((place) => gapAt(outline.path, place, gap));
	const isOpen = cut.kind === "laser";
	const cuts = isOpen ? cutBetween(outline, gaps) : [outline];
	const tabs = isOpen ? [] : tabMarks(outline, gaps);
	return {
		...part,
		marks: [...part.marks.flatMap((mark) => (mark === outline ? cuts : [mark])), ...tabs],
		claims: [...part.claims, ...gaps.map((g, i) => tabClaim(g, i, width, cut))],
		notes: [...part.notes, tabNote(count, width)],
	};
}

function tabNote(count: number, width: number): string {
	const one = count === 1;
	const held = `Held by ${count} tab${one ? "" : "s"} ${trimmed(width, 3)} mm wide on the outline`;
	return `${held}; cut ${one ? "it" : "them"} through and dress the stub${one ? "" : "s"}.`;
}

/** The mark whose closed cut path lies around all others. */
function outlineMark(part: Part): Mark | undefined {
	const marks = part.marks.filter(({ operation, path }) => operation === "cut" && path.closed);
	if (marks.length === 0) return undefined;
	const outline = outlineOf({ ...part, marks });
	return marks.find(({ path }) => path === outline);
}

/** Where a tab begins and ends on a contour, mm along it, on one of its segments. */
interface Gap {
	readonly from: number;
	readonly to: number;
	readonly ends: readonly [Point, Point];
}

function gapAt(contour: Path, { segment, along }: TabPlace, gap: number): Gap {
	const half = gapAlong(segments(contour)[segment]!, gap) / 2;
	const [from, to] = [along - half, along + half];
	const { points } = pathBetween(contour, from, to);
	return { from, to, ends: [points[0]!, points.at(-1)!] };
}

/** The outline as open paths, each from the end of a tab to the beginning of the next. */
function cutBetween(outline: Mark, gaps: readonly Gap[]): Mark[] {
	const around = pathLength(outline.path);
	return gaps.map(({ to }, i) => {
		const next = gaps[i + 1]?.from ?? gaps[0]!.from + around;
		return { ...outline, path: pathBetween(outline.path, to, next) };
	});
}

function tabMarks({ path }: Mark, gaps: readonly Gap[]): Mark[] {
	return gaps.map(({ from, to }, i) => ({
		operation: "tab",
		path: pathBetween(path, from, to),
		feature: `tab ${i + 1}`,
	}));
}

/** What is promised of a tab: how wide it stands on the finished part's contour. */
function tabClaim({ ends }: Gap, i: number, width: number, cut: TabCut) {
	const feature = `tab ${i + 1}`;
	return {
		id: `tab-${i + 1}`,
		kind: "width",
		feature,
		datum: feature,
		operation: cut.kind === "laser" ? "cut" : "tab",
		axis: "line",
		at: bridgeEnds(ends, cut.kerf),
		nominal: width,
		bench: cut.tolerance,
		file: FILE_TOLERANCE,
		series: "tab width",
	} satisfies SizeClaim;
}

/** The ends of a gap drawn in by half the cut along it, and as much to the left, onto the part. */
function bridgeEnds([a, b]: readonly [Point, Point], kerf: number): Point[] {
	const size = Math.hypot(b.x - a.x, b.y - a.y);
	const x = ((b.x - a.x) / size) * (kerf / 2);
	const y = ((b.y - a.y) / size) * (kerf / 2);
	return [
		{ x: a.x + x - y, y: a.y + y + x },
		{ x: b.x - x - y, y: b.y - y + x },
	];
}
