import { type Problem, problem } from "../problem/index.js";
import {
	comparison,
	coneFit,
	cylinderFit,
	excess,
	type Form,
	type FormComparison,
	type FormFit,
	flatFit,
	leftOver,
	type StationCurvature,
	winsByUncertainties,
} from "./board-forms.js";
import { boardNotes } from "./board-radius-notes.js";
import type { Estimate } from "./estimate.js";
import {
	BEYOND_DOUBT,
	type RadiusEstimate,
	type ReadingPath,
	radiusOf,
	weighingSd,
} from "./radius-estimate.js";
import { estimate } from "./statistics.js";

/** What was read at one station. */
export interface RadiusStation {
	/** From the nut along the centre line, mm. */
	readonly x: number;
	/** As people call it: "nut", "fret 12". */
	readonly name: string;
	readonly estimate: RadiusEstimate;
}

/** A station against the fitted board. */
export interface StationRadius {
	readonly x: number;
	readonly name: string;
	/** The fitted board's; null where it is flat. */
	readonly radius: Estimate | null;
	/** Read less fitted curvature, in standard errors of the reading. */
	readonly residual: number;
}

/** The board's form and radii. */
export interface BoardRadius {
	readonly form: Form;
	readonly at: readonly StationRadius[];
	/** The fitted radius at any x (nut, last fret), mm; null on a flat board and past a cone's tip.
	 * Beyond the outer stations it holds as far as the board goes on as between them. */
	readonly radiusAt: (x: number) => Estimate | null;
	/** Each richer form against the one before it, in order. */
	readonly comparisons: readonly FormComparison[];
	readonly notes: readonly Problem[];
}

/** What was tried on the stations, and what was taken. */
export interface BoardFit {
	readonly stations: readonly RadiusStation[];
	readonly chosen: FormFit;
	readonly cylinder: FormFit;
	/** Null where no cone fits. */
	readonly cone: FormFit | null;
	/** A form that would win by the readings' uncertainties, but not by the stations' scatter. */
	readonly undecided: FormFit | null;
	/** Factor on standard errors for scatter beyond the readings' own. */
	readonly scatter: number;
	readonly curvatureAt: (x: number) => Estimate | null;
	readonly comparisons: readonly FormComparison[];
}

/**
 * Flat, cylinder or cone (R linear in x), whichever the stations support: a richer form must win
 * at 1 % (see `comparison`), and no board is flat that is cambered beyond doubt at each station
 * alone. One station cannot show a cone.
 *
 * @param path - of the readings, for problems; the station's index is added
 * @returns problems for no stations, stations in one place, a hollow board
 */
export function fitBoard(
	stations: readonly RadiusStation[],
	path: ReadingPath = ["radius"],
): BoardRadius | Problem[] {
	const faults = stationFaults(stations, path);
	if (faults.length > 0) return faults;
	const fit = fitOf(stations);
	const hollow = hollowFault(fit, path);
	if (hollow) return [hollow];
	const radiusAt = (x: number) => {
		const curvature = fit.curvatureAt(x);
		return curvature && radiusOf(curvature);
	};
	const at = stations.map(({ x, name, estimate: { curvature } }) => ({
		x,
		name,
		radius: radiusAt(x),
		residual: (curvature.value - fit.chosen.at(x)!.value) / weighingSd(curvature),
	}));
	const { comparisons } = fit;
	return { form: fit.chosen.form, at, radiusAt, comparisons, notes: boardNotes(fit, path) };
}

function fitOf(stations: readonly RadiusStation[]): BoardFit {
	const read = stations.map(({ x, estimate: { curvature } }): StationCurvature => {
		return { x, curvature: curvature.value, sd: weighingSd(curvature) };
	});
	const flat = flatFit(read);
	const cylinder = cylinderFit(read);
	const mean = cylinder.at(0)!.value;
	const cone = mean > 0 ? coneFit(read, 1 / mean) : null;
	const left = leftOver(read, cone);
	const comparisons: FormComparison[] = [];
	let chosen = flat;
	let undecided: FormFit | null = null;
	for (const rich of [cylinder, ...(cone ? [cone] : [])]) {
		const made = comparison(chosen, rich, left);
		// No board is hollow: a curvature below 0 is noise on a flat one, or refused.
		const wins = mean > 0 && (made.wins || (chosen === flat && eachCambered(read)));
		comparisons.push({ ...made, wins });
		if (!wins && mean > 0 && winsByUncertainties(chosen, rich)) undecided = rich;
		if (!wins) break;
		chosen = rich;
	}
	const scatter = excess({ chi2: chosen.chi2, df: read.length - chosen.free });
	const curvatureAt = (x: number) => {
		const fitted = chosen.at(x);
		return fitted && estimate(fitted.value, fitted.sd * scatter, Number.POSITIVE_INFINITY);
	};
	return { stations, chosen, cylinder, cone, undecided, scatter, curvatureAt, comparisons };
}

/** Whether every station alone shows camber beyond doubt, however little they agree. */
function eachCambered(read: readonly StationCurvature[]): boolean {
	return read.every(({ curvature, sd }) => curvature > BEYOND_DOUBT * sd);
}

function stationFaults(stations: readonly RadiusStation[], path: ReadingPath): Problem[] {
	if (stations.length === 0) return [problem("no-radius-readings", path)];
	return stations.flatMap(({ x, name }, i) => {
		const at = [...path, i, "at"];
		if (!Number.isFinite(x)) {
			return [problem("reading-not-a-length", at, { key: "at", given: String(x) })];
		}
		const before = stations.slice(0, i).find((s) => s.x === x);
		return before ? [problem("stations-coincide", at, { name, other: before.name, x })] : [];
	});
}

/** Refuses a board whose mean curvature is hollow beyond doubt. */
function hollowFault({ cylinder, stations }: BoardFit, path: ReadingPath): Problem | null {
	const { value, sd } = cylinder.at(0)!;
	const scatter = excess({ chi2: cylinder.chi2, df: stations.length - 1 });
	if (value >= -BEYOND_DOUBT * sd * scatter) return null;
	return problem("board-hollow", path, { radius: -1 / value, kind: "stations" });
}
