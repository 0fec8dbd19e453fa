import { arcSagitta } from "../../geometry/index.js";
import { dropAt, radiusAt } from "../../neck/index.js";
import { cutterRadius } from "../straightedge/cutter.js";
import type { Bench } from "../tool.js";
import { type BlockSettings, isSolid } from "./settings.js";

/** Rails stand this share of the half width off the middle. */
const RAIL_PLACE = 0.6;
/** From the ribs' arcs to the rails of a curved block, which must not bear, mm. */
const RAIL_CLEAR = 1;
/** Each slot of a joint is this deeper than half, so that upper edges meet before floors do, mm. */
const JOINT_AIR = 0.2;
/** Rail beyond the outermost slots, mm. */
export const RAIL_END = 8;

/** The halved joints between ribs and rails, in the ribs' frame. */
export interface Joints {
	/** Middle of either rail off the ribs' middle, mm. */
	readonly at: number;
	/** Width of every slot. */
	readonly width: number;
	/** Depth of every slot, from upper edge of the ribs, from lower edge of the rails. */
	readonly depth: number;
	/** Height of the rails, whose upper edge is flush with the ribs'. */
	readonly height: number;
	readonly length: number;
}

/** Two holes at ±x for dowels. */
export interface Dowels {
	readonly x: number;
	readonly y: number;
	readonly diameter: number;
}

/** A block's measures: ribs with their arc's ends on y = 0, mm. */
export interface Crate {
	/** Of the ribs' edge; null for a straight one. */
	readonly radius: number | null;
	/** At which the grit works; null for a flat beam. */
	readonly grit: number | null;
	readonly width: number;
	readonly sagitta: number;
	readonly top: number;
	readonly count: number;
	readonly pitch: number;
	/** From the first rib's face to the last one's. */
	readonly length: number;
	readonly joints: Joints | null;
	readonly dowels: Dowels | null;
}

/** Radius at which the grit works: the board's, or that of the crowns on it; null of a flat beam. */
export function gritRadius(bench: Bench, s: Pick<BlockSettings, "form" | "for">): number | null {
	const board = radiusAt(bench.neck, 0);
	if (s.form === "flat" || board === null) return null;
	return board + (s.for === "crowns" ? bench.wire.crownHeight : 0);
}

/** Radius of the ribs: skin and abrasive lie between them and the grit. */
export function ribRadius(bench: Bench, s: BlockSettings): number | null {
	const grit = gritRadius(bench, s);
	return grit === null ? null : grit + s.skin + s.abrasive;
}

/** The measures of a block; its width fits on its circle. */
export function crateOf(bench: Bench, s: BlockSettings): Crate {
	const { thickness } = bench.stock;
	const radius = ribRadius(bench, s);
	const width = s["block-width"];
	const sagitta = radius === null ? 0 : arcSagitta(radius, width);
	const top = s["block-height"];
	const length = (s.ribs - 1) * s["rib-pitch"] + thickness;
	const measures = { radius, width, sagitta, top, count: s.ribs, pitch: s["rib-pitch"], length };
	const joints = isSolid(s) ? null : jointsOf(bench, s, measures);
	return { ...measures, grit: gritRadius(bench, s), joints, dowels: dowelsOf(s, measures, joints) };
}

type Measures = Omit<Crate, "joints" | "dowels" | "grit">;

function jointsOf(bench: Bench, s: BlockSettings, m: Measures): Joints {
	const at = (m.width / 2) * RAIL_PLACE;
	const width = bench.stock.thickness + s["joint-fit"];
	const bottom = m.radius === null ? 0 : m.sagitta - dropAt(m.radius, at - width / 2) + RAIL_CLEAR;
	const height = m.top - bottom;
	const depth = height / 2 + JOINT_AIR + cutterRadius(bench);
	const length = m.length - bench.stock.thickness + width + 2 * RAIL_END;
	return { at, width, depth, height, length };
}

function dowelsOf(s: BlockSettings, m: Measures, joints: Joints | null): Dowels | null {
	if (s.dowel === "none") return null;
	const diameter = s.dowel;
	if (!joints) return { x: m.width / 4, y: m.sagitta + (m.top - m.sagitta) * 0.72, diameter };
	return { x: (joints.at - joints.width / 2) / 2, y: m.top - joints.height / 4, diameter };
}
