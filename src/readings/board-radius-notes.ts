import type { Problem } from "../problem/index.js";
import { excess } from "./board-forms.js";
import { note } from "./board-note.js";
import type { BoardFit } from "./board-radius.js";
import { type ReadingPath, radiusOf, reach95 } from "./radius-estimate.js";
import { usualRadiiNotes } from "./usual-radii.js";

/** What the stations leave open, and which further reading would decide it. */
export function boardNotes(fit: BoardFit, path: ReadingPath): Problem[] {
	return [
		...stationNotes(fit, path),
		...scatterNotes(fit, path),
		...(fit.chosen.form === "flat" ? flatNotes(fit, path) : []),
		...(fit.chosen.form === "cylinder" ? cylinderNotes(fit, path) : []),
		...(fit.chosen.form === "cone" ? coneNotes(fit, path) : []),
	];
}

function stationNotes({ stations, chosen }: BoardFit, path: ReadingPath): Problem[] {
	const [first] = stations;
	if (stations.length === 1) {
		return [note("one-station", path, { name: first!.name, form: chosen.form })];
	}
	if (stations.length > 2 || chosen.form !== "cone") return [];
	return [note("two-stations", path, { names: stations.map((s) => s.name) })];
}

function scatterNotes(fit: BoardFit, path: ReadingPath): Problem[] {
	const { stations, chosen, undecided, scatter } = fit;
	if (scatter === 1) return [];
	const off = stations.map(({ x, name, estimate: { curvature } }) => ({
		name,
		by: Math.abs(curvature.value - chosen.at(x)!.value) / curvature.standard,
	}));
	const worst = off.reduce((a, b) => (b.by > a.by ? b : a));
	const facts = { form: chosen.form, scatter, worst: worst.name };
	const open = undecided
		? [note("form-undecided", path, { form: chosen.form, rich: undecided.form })]
		: [];
	return [note("stations-scatter", path, facts), ...open];
}

/** The roundest board that would have read as flat. */
function flatNotes({ stations, cylinder }: BoardFit, path: ReadingPath): Problem[] {
	const { value, sd } = cylinder.at(0)!;
	const scatter = excess({ chi2: cylinder.chi2, df: stations.length - 1 });
	const most = value + reach95() * sd * scatter;
	if (most <= 0) return [note("flat-leans-hollow", path, { radius: -1 / value })];
	const chord = Math.max(...stations.map((s) => s.estimate.chord));
	return [note("flat-within", path, { least: 1 / most, chord })];
}

/** How much a cone could grow between the outer stations unseen. */
function cylinderNotes(fit: BoardFit, path: ReadingPath): Problem[] {
	const { stations, cone } = fit;
	const radius = radiusOf(fit.curvatureAt(0)!)!;
	const chord = Math.max(...stations.map((s) => s.estimate.chord));
	const usual = usualRadiiNotes(radius, chord, path);
	if (!cone?.growth) return usual;
	const ordered = [...stations].sort((a, b) => a.x - b.x);
	const [from, to] = [ordered[0]!, ordered[ordered.length - 1]!];
	const span = to.x - from.x;
	const reach = reach95() * cone.growth.sd * span;
	const grown = cone.growth.value * span;
	const facts = { from: from.name, to: to.name, least: grown - reach, most: grown + reach };
	return [...usual, note("cone-unseen", path, facts)];
}

function coneNotes(fit: BoardFit, path: ReadingPath): Problem[] {
	const usual = fit.stations.flatMap(({ x, estimate }, i) =>
		usualRadiiNotes(radiusOf(fit.curvatureAt(x)!)!, estimate.chord, [...path, i]),
	);
	const { growth } = fit.chosen;
	return growth!.value < 0 ? [...usual, note("cone-narrows", path, {})] : usual;
}
