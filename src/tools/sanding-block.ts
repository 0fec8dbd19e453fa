import type { Mark, Part } from "../drawing/index.js";
import { arcSagitta } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { inchLabel } from "../units/index.js";
import type { Label } from "./label.js";
import { boardLength, boardShape, greatestWidth } from "./sanding-block/board.js";
import { railClaims, ribClaims } from "./sanding-block/claims.js";
import { type Crate, type Joints, ribRadius } from "./sanding-block/crate.js";
import { railLabels, ribLabels } from "./sanding-block/labels.js";
import { railNotes, ribNotes } from "./sanding-block/notes.js";
import { dowelHole, railLands, railOutline, ribEdge, ribOutline } from "./sanding-block/outline.js";
import { soundCrate } from "./sanding-block/refusals.js";
import { type BlockSettings, type Given, isSolid, settings } from "./sanding-block/settings.js";
import { cutterRadius } from "./straightedge/cutter.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Common practice, no source: the board's edges are worked too if the block reaches beyond them, mm. */
const BEYOND_EDGES = 6;
/** A beam for single lines, mm wide. */
const BEAM = 40;
/** Plate over the arc's middle: a hand's grip, joints and letters, mm. */
const OVER_EDGE = 38;
const OPEN_PITCH = 25;
/** Length of a solid stack, mm. */
const STACK = 100;

/** As many as a job may ask for; a thin sheet's default stack could be more. */
const MOST_RIBS = 400;

/** Height over the arc's ends; a width that does not fit its circle is refused later. */
function usualHeight(bench: Bench, radius: number | null, width: number): number {
	const fits = radius !== null && width <= 2 * radius;
	const over = OVER_EDGE + 2 * cutterRadius(bench);
	return Math.ceil((fits ? arcSagitta(radius, width) : 0) + over - 1e-9);
}

function defaults(bench: Bench, given: Given): Partial<Given> {
	const { neck, stock } = bench;
	const shape = boardShape(neck);
	const form = given.form ?? (shape === "cylinder" ? "curved" : "flat");
	const solid = isSolid(given);
	const pitch = given["rib-pitch"] ?? (solid ? stock.thickness : OPEN_PITCH);
	const length = solid ? STACK : boardLength(neck) * (form === "flat" ? 1 : 0.5);
	const ribs = given.ribs ?? Math.max(2, Math.ceil((length - stock.thickness) / pitch - 1e-9) + 1);
	const whole = Math.ceil(greatestWidth(neck) - 1e-9) + BEYOND_EDGES;
	const width = given["block-width"] ?? (form === "flat" && shape !== "flat" ? BEAM : whole);
	const part = { form, ribs, "rib-pitch": pitch, "block-width": width };
	const radius = ribRadius(bench, { ...given, ...part, "block-height": 0 });
	return { ...part, "block-height": given["block-height"] ?? usualHeight(bench, radius, width) };
}

function cut(path: Mark["path"], feature: string): Mark {
	return { operation: "cut", path, feature };
}

/** What the part is called: "Sanding block for wood, 12 in" or "Flat sanding beam". */
function blockTitle(bench: Bench, s: BlockSettings): string {
	const { radius } = bench.neck;
	if (s.form === "flat" || radius === "flat") return `Flat sanding beam for ${s.for}`;
	return `Sanding block for ${s.for}, ${inchLabel(radius.knots[0]!.value)}`;
}

function ribPart(
	bench: Bench,
	s: BlockSettings,
	crate: Crate,
	labels: Label[],
	name: string,
): Part {
	const { dowels } = crate;
	const holes = dowels
		? ([-1, 1] as const).map((side, i) => cut(dowelHole(dowels, side), `dowel hole ${i + 1}`))
		: [];
	return {
		name: `${name}-rib`,
		tool: "sanding-block",
		title: `${blockTitle(bench, s)}, rib`,
		stock: bench.stock,
		layers: crate.count,
		marks: [...labels.flatMap((l) => l.marks), ...holes, cut(ribOutline(crate), "outline")],
		workingEdge:
			crate.radius === null ? "the straight lower edge" : "the concave arc, over its whole width",
		working: [ribEdge(crate)],
		claims: [...ribClaims(bench, crate), ...labels.map((l) => l.claim)],
		notes: ribNotes(bench, s, crate),
	};
}

function railPart(
	bench: Bench,
	s: BlockSettings,
	crate: Crate,
	joints: Joints,
	name: string,
): Part | Problem {
	const labels = railLabels(bench, s, joints);
	if (!Array.isArray(labels)) return labels;
	const flat = crate.radius === null;
	return {
		name: `${name}-rail`,
		tool: "sanding-block",
		title: `${blockTitle(bench, s)}, rail`,
		stock: bench.stock,
		layers: 2,
		marks: [...labels.flatMap((l) => l.marks), cut(railOutline(crate, joints), "outline")],
		workingEdge: flat ? "lower edge, between the slots" : "none: the slots place the ribs",
		working: flat ? railLands(crate, joints) : [],
		claims: [...railClaims(bench, crate, joints), ...labels.map((l) => l.claim)],
		notes: railNotes(crate),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as BlockSettings;
	const refuse = (...problems: Problem[]): Built => ({ parts: [], problems });
	if (s.ribs > MOST_RIBS) {
		return refuse(problem("too-many-ribs", ["ribs"], { ribs: s.ribs, most: MOST_RIBS }));
	}
	const crate = soundCrate(bench, s);
	if (Array.isArray(crate)) return refuse(...crate);
	const rib = ribPart(bench, s, crate, ribLabels(bench, s, crate), name);
	if (!crate.joints) return { parts: [rib], problems: [] };
	const rail = railPart(bench, s, crate, crate.joints, name);
	if ("code" in rail) return refuse(rail);
	return { parts: [rib, rail], problems: [] };
}

export const sandingBlock = tool({
	id: "sanding-block",
	title: "Sanding block",
	purpose:
		"Ribs and rails that join to a long block, or a solid stack, whose grit works at exactly this board's radius, on the wood or on the frets' crowns. Bend a skin over the ribs, stick abrasive on it, and work lengthwise along the centre line.",
	settings,
	defaults,
	build,
});
