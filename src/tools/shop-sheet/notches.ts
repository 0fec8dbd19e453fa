import { fixed, trimmed } from "../../units/index.js";
import { notchedStraightedge } from "../notched-straightedge.js";
import { layEdges, lineOf } from "../straightedge/lay.js";
import { settings as edgeSettings, type StraightedgeSettings } from "../straightedge/settings.js";
import type { Bench } from "../tool.js";
import { type Line, pair, paragraph, type Setting } from "./lines.js";
import { span } from "./texts.js";

/** The notches that the notched straightedge would have on this bench, its settings left as they are. */
function notchesOf(bench: Bench) {
	const given = edgeSettings("mm").parse({});
	const s = { ...given, ...notchedStraightedge.defaults(bench, given) } as StraightedgeSettings;
	const { first } = layEdges(bench, s, lineOf(bench.neck, s.along)!);
	return { ...first, allowance: s["lapping-allowance"] };
}

/** Width and depth of a straightedge's notches, and where there is no room for them. */
export function notchLines(bench: Bench, set: Setting): Line[] {
	const { cut, edge, allowance } = notchesOf(bench);
	// A zero fret under the arch of a cleared nut end has no notch of its own.
	const notches = cut.notches.filter(({ fret }) => fret > 0 || !edge.zeroInArch);
	const { material, thickness } = bench.stock;
	const tight = cut.tooTight[0];
	return [
		...pair(set, "notch width", span(notches.map(({ width }) => width))),
		...pair(set, "room beside a fret", span(notches.map(({ clearance }) => clearance))),
		...pair(set, `notch depth, with ${fixed(allowance, 3)} to lap off`, fixed(edge.depth, 3)),
		...pair(
			set,
			`its budget in ${material} ${trimmed(thickness, 3)} mm`,
			`${fixed(cut.budget.total, 3)} a side`,
		),
		...(tight
			? paragraph(
					set,
					`Too little land is left before fret ${tight.fret}: it needs narrower notches.`,
				)
			: []),
	];
}
