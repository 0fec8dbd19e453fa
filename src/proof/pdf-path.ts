import type { Path, Point, Vertex } from "../geometry/index.js";
import { cleanedPath, isSame } from "./cleaned-path.js";
import { bezierPoints } from "./curves.js";
import type { Findings } from "./findings.js";
import { type Matrix, mappedPoint } from "./matrix.js";
import { bulgeOfCubic } from "./pdf-curve.js";

/** How many numbers each step of a path takes, by its code: move, line, cubic, quadratic, close. */
const STEPS = [2, 2, 6, 4, 0] as const;

/**
 * The paths of one painting operator, mm: arcs where its curves are arcs.
 *
 * @param steps - codes, each followed by its coordinates
 * @param place - where it stands in the file, in words
 */
export function pdfPaths(
	steps: ArrayLike<number>,
	matrix: Matrix,
	place: string,
	findings: Findings,
): Path[] {
	const pen = new PdfPen(place, findings);
	for (let i = 0; i < steps.length; ) {
		const code = steps[i]!;
		const count = STEPS[code];
		if (count === undefined || i + count >= steps.length) {
			findings.add("not-read", "error", { kind: `a step of ${place}` });
			return [];
		}
		const points: Point[] = [];
		for (let k = i + 1; k < i + 1 + count; k += 2) {
			points.push(mappedPoint(matrix, steps[k]!, steps[k + 1]!));
		}
		pen.step(code, points);
		i += 1 + count;
	}
	pen.lift();
	return pen.paths;
}

/** Keeps vertices as the steps of a path lead over them. */
class PdfPen {
	readonly paths: Path[] = [];
	#points: Vertex[] = [];

	constructor(
		private readonly place: string,
		private readonly findings: Findings,
	) {}

	step(code: number, points: readonly Point[]): void {
		if (code === 0) {
			this.lift();
			this.#points = [{ ...points[0]!, bulge: 0 }];
		} else if (code === 4) this.#close();
		else if (code === 1) this.#to(points[0]!);
		else this.#curve(points);
	}

	/** Ends an open path; a single point draws nothing. */
	lift(): void {
		if (this.#points.length > 1) this.#keep(this.#points, false);
		this.#points = [];
	}

	/** Joins the end to the start, from which the pen goes on. */
	#close(): void {
		const points = this.#points;
		if (points.length < 2) return;
		const [first, last] = [points[0]!, points.at(-1)!];
		// An arc leads back to the very start: its end is left out, so that no line of no length stays.
		const isBack = points.length > 2 && isSame(first, last);
		this.#keep(isBack ? points.slice(0, -1) : points, true);
		this.#points = [{ ...first, bulge: 0 }];
	}

	#keep(points: readonly Vertex[], closed: boolean): void {
		const path = cleanedPath(points, closed, this.place, this.findings);
		if (path) this.paths.push(path);
	}

	#to(p: Point): void {
		this.#points.push({ ...p, bulge: 0 });
	}

	#curve(controls: readonly Point[]): void {
		const from = this.#points.at(-1);
		if (!from) return;
		const all = [from, ...controls];
		const [a, b, c] = all as [Point, Point, Point];
		const cubic =
			all.length === 4
				? (all as [Point, Point, Point, Point])
				: ([a, third(a, b), third(c, b), c] as const);
		const bulge = bulgeOfCubic(cubic);
		if (bulge === null) {
			this.findings.add("curve", "warning", { place: this.place });
			for (const p of bezierPoints(all, 1, this.findings)) this.#to(p);
		} else this.#points[this.#points.length - 1] = { ...from, bulge };
		this.#to(controls.at(-1)!);
	}
}

/** A quadratic's control point as a cubic has it. */
function third(end: Point, control: Point): Point {
	return { x: end.x + ((control.x - end.x) * 2) / 3, y: end.y + ((control.y - end.y) * 2) / 3 };
}
