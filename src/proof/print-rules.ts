import { distance, type Point } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { PrintPage } from "./print-page.js";

/** How far the ends of a rule and the middle of a cross may lie beside their places, mm. */
const BESIDE = 0.001;
/** A rule is looked for among lines so much longer or shorter, and so far from its place, mm. */
const SHARE = 0.03;
const REACH = 10;
/** How far from its place a single rule that is too long or a cross is still known, mm. */
const KNOWN = 2;
/** A page is off in size from this share on: a micrometre on 100 mm. */
const OFF = 1e-5;
/** Sine of the angle from which two lines are not parallel. */
const PARALLEL = 0.01;

/** A straight line of a page. */
interface Line {
	readonly from: Point;
	readonly to: Point;
}

/** Where a page draws what should be at p: scale · p + shift. */
interface Fit {
	readonly scale: Point;
	readonly shift: Point;
}

const ASIS: Fit = { scale: { x: 1, y: 1 }, shift: { x: 0, y: 0 } };

/** Findings that hold for all of a page: nothing on it needs to be measured then. */
export const OF_WHOLE_PAGE: ReadonlySet<string> = new Set(["page-scale", "page-moved"]);

/**
 * Whether a page's rules are as long as they say and its crosses where they belong. A page that is
 * off as a whole is told so once.
 */
export function ruleFaults(page: PrintPage): Problem[] {
	const { promised, nth } = page;
	const lines = linesOf(page);
	if (fits(ASIS, page, lines)) return [];
	const fit = fitOf(page, lines);
	if (fit) return wholeFaults(fit, nth);
	return [
		...promised.rules.flatMap((rule) => ruleFault(rule, page, lines) ?? []),
		...promised.crosses.flatMap((at) => crossFault(at, nth, lines) ?? []),
	];
}

function linesOf({ strokes }: PrintPage): Line[] {
	return strokes.flatMap(({ operation, path: { points, closed } }) => {
		const isLine = operation === "reference" && !closed && points.length === 2;
		return isLine && points[0]!.bulge === 0 ? [{ from: points[0]!, to: points[1]! }] : [];
	});
}

function fits(fit: Fit, { promised }: PrintPage, lines: readonly Line[]): boolean {
	return (
		promised.rules.every((r) =>
			isDrawn({ from: fitted(fit, r.from), to: fitted(fit, r.to) }, lines),
		) && promised.crosses.every((p) => isCross(fitted(fit, p), lines))
	);
}

function fitted({ scale, shift }: Fit, { x, y }: Point): Point {
	return { x: scale.x * x + shift.x, y: scale.y * y + shift.y };
}

function isDrawn({ from, to }: Line, lines: readonly Line[]): boolean {
	const near = (a: Point, b: Point) => distance(a, b) <= BESIDE;
	return lines.some(
		(l) => (near(l.from, from) && near(l.to, to)) || (near(l.from, to) && near(l.to, from)),
	);
}

function isCross(at: Point, lines: readonly Line[]): boolean {
	const own = lines.filter((l) => distance(middleOf(l), at) <= BESIDE);
	return own.some((a) => own.some((b) => !areParallel(a, b)));
}

function middleOf({ from, to }: Line): Point {
	return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

function areParallel(a: Line, b: Line): boolean {
	const [ax, ay, bx, by] = [
		a.to.x - a.from.x,
		a.to.y - a.from.y,
		b.to.x - b.from.x,
		b.to.y - b.from.y,
	];
	return Math.abs(ax * by - ay * bx) <= PARALLEL * Math.hypot(ax, ay) * Math.hypot(bx, by);
}

/** The scale and the shift that bring all rules and crosses onto the page's lines; null of none. */
function fitOf(page: PrintPage, lines: readonly Line[]): Fit | null {
	const isAcross = ({ from, to }: Line) => Math.abs(to.x - from.x) > Math.abs(to.y - from.y);
	const [across] = page.promised.rules.filter(isAcross);
	const [up] = page.promised.rules.filter((r) => !isAcross(r));
	for (const a of across ? candidates(across, lines) : [null]) {
		for (const b of up ? candidates(up, lines) : [null]) {
			const x = a && across ? axisFit("x", across, a) : null;
			const y = b && up ? axisFit("y", up, b) : null;
			const besideX = b && up ? b.from.x - up.from.x : 0;
			const besideY = a && across ? a.from.y - across.from.y : 0;
			const fit = {
				scale: { x: x?.scale ?? 1, y: y?.scale ?? 1 },
				shift: { x: x?.shift ?? besideX, y: y?.shift ?? besideY },
			};
			if ((a || b) && fits(fit, page, lines)) return fit;
		}
	}
	return null;
}

function axisFit(axis: "x" | "y", rule: Line, drawn: Line) {
	const scale = (drawn.to[axis] - drawn.from[axis]) / (rule.to[axis] - rule.from[axis]);
	return { scale, shift: drawn.from[axis] - scale * rule.from[axis] };
}

/** Lines that a rule may be, run its way, the nearest first. */
function candidates(rule: Line, lines: readonly Line[], reach = REACH): Line[] {
	const off = (l: Line) => distance(l.from, rule.from) + distance(l.to, rule.to);
	const size = lengthOf(rule);
	return lines
		.filter((l) => Math.abs(lengthOf(l) / size - 1) <= SHARE && areParallel(l, rule))
		.map((l) => {
			const back = { from: l.to, to: l.from };
			return off(back) < off(l) ? back : l;
		})
		.filter((l) => off(l) <= reach)
		.sort((a, b) => off(a) - off(b));
}

function lengthOf({ from, to }: Line): number {
	return distance(from, to);
}

function wholeFaults({ scale, shift }: Fit, page: number): Problem[] {
	const scales = (["x", "y"] as const).flatMap((axis) => {
		const factor = scale[axis];
		if (Math.abs(factor - 1) <= OFF) return [];
		return [problem("page-scale", [], { page, axis: axis === "x" ? "across" : "along", factor })];
	});
	return scales.length > 0 ? scales : [problem("page-moved", [], { page, ...shift })];
}

function ruleFault(
	rule: Line,
	{ nth, promised }: PrintPage,
	lines: readonly Line[],
): Problem | null {
	if (isDrawn(rule, lines)) return null;
	const others = promised.rules.filter((r) => r !== rule);
	const [near] = candidates(rule, lines, KNOWN).filter((l) => !others.some((r) => isDrawn(r, [l])));
	const { x, y } = rule.from;
	const facts = { page: nth, length: lengthOf(rule), x, y };
	if (!near) return problem("rule-missing", [], facts);
	const by = Math.max(distance(near.from, rule.from), distance(near.to, rule.to));
	return problem("rule-wrong", [], { ...facts, measured: lengthOf(near), by });
}

function crossFault(at: Point, page: number, lines: readonly Line[]): Problem | null {
	if (isCross(at, lines)) return null;
	const near = lines
		.filter((l) => distance(middleOf(l), at) <= KNOWN)
		.map(middleOf)
		.sort((a, b) => distance(a, at) - distance(b, at));
	const found = near.find((p) => isCross(p, lines));
	const facts = { page, x: at.x, y: at.y };
	if (!found) return problem("cross-missing", [], facts);
	return problem("cross-moved", [], { ...facts, by: distance(found, at) });
}
