import type { Path, Point, Vertex } from "../geometry/index.js";
import { cleanedPath, isSame } from "./cleaned-path.js";
import { bezierPoints, ellipseArc, ellipsePoints } from "./curves.js";
import type { Findings } from "./findings.js";
import { isMirrored, keepsCircles, type Matrix, mappedPoint, mostOf } from "./matrix.js";

/** Radii that differ by less than this share are one. */
const ROUND = 1e-9;

/**
 * Draws in the coordinates of an SVG element and keeps millimetres, y up. Arcs of circles stay
 * arcs where the matrix lets them; other curves become lines, with a finding.
 */
export class Pen {
	readonly paths: Path[] = [];
	private points: Vertex[] = [];
	private at: Point = { x: 0, y: 0 };
	private readonly round: boolean;
	private readonly side: 1 | -1;

	constructor(
		private readonly matrix: Matrix,
		private readonly place: string,
		private readonly findings: Findings,
	) {
		this.round = keepsCircles(matrix);
		this.side = isMirrored(matrix) ? -1 : 1;
	}

	moveTo(x: number, y: number): void {
		this.lift();
		this.points = [];
		this.to(x, y);
	}

	lineTo(x: number, y: number): void {
		this.to(x, y);
	}

	/** An arc as SVG gives it: radii, turn of the ellipse in degrees, flags and end. */
	arcTo(radii: Point, degrees: number, large: boolean, sweep: boolean, end: Point): void {
		const arc = ellipseArc(this.at, radii, degrees, large, sweep, end);
		if (!arc) {
			this.to(end.x, end.y);
			return;
		}
		if (this.round && Math.abs(arc.rx - arc.ry) <= ROUND * arc.rx) {
			const half = Math.hypot(end.x - this.at.x, end.y - this.at.y) / 2;
			const minor = 2 * Math.asin(Math.min(1, half / arc.rx));
			const turn = large ? 2 * Math.PI - minor : minor;
			this.bend(Math.tan(turn / 4) * (sweep ? 1 : -1) * this.side);
			this.to(end.x, end.y);
		} else this.sampled(ellipsePoints(arc, mostOf(this.matrix), this.findings), end);
	}

	/** A Bézier curve from here over its control points to its end. */
	curveTo(...controls: readonly Point[]): void {
		const all = [this.at, ...controls];
		this.sampled(bezierPoints(all, mostOf(this.matrix), this.findings), controls.at(-1)!);
	}

	/** Joins the last point to the first; a last point that repeats the first is left out. */
	close(): void {
		if (this.points.length > 2 && isSame(this.points.at(-1)!, this.points[0]!)) this.points.pop();
		this.keep(true);
	}

	/** Ends an open path. A single point draws nothing. */
	lift(): void {
		if (this.points.length > 1) this.keep(false);
		this.points = [];
	}

	/** Forgets the path that is being drawn. */
	drop(): void {
		this.points = [];
	}

	private keep(closed: boolean): void {
		const path = cleanedPath(this.points, closed, this.place, this.findings);
		if (path) this.paths.push(path);
		this.points = [];
	}

	private to(x: number, y: number): void {
		this.at = { x, y };
		const p = mappedPoint(this.matrix, x, y);
		this.points.push({ x: p.x, y: p.y, bulge: 0 });
	}

	private bend(bulge: number): void {
		const last = this.points.at(-1);
		if (last) this.points[this.points.length - 1] = { ...last, bulge };
	}

	private sampled(points: readonly Point[], end: Point): void {
		this.findings.add("curve", "warning", { place: this.place });
		for (const { x, y } of points) this.to(x, y);
		this.to(end.x, end.y);
	}
}
