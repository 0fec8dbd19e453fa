import type { SizeClaim } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { pointOnFret, widthAt } from "../../neck/index.js";
import { cutSize } from "../size.js";
import { slotClaims } from "../slot-strip/claims.js";
import { type Bench, CORNER_RADIUS } from "../tool.js";
import type { Guide, Hole } from "./lay.js";
import type { GuideSettings } from "./settings.js";

const ORIGIN: Point = { x: 0, y: 0 };
const NUT = "theoretical nut";
/** From a corner to where the plate is measured beside it, mm. */
const OFF_CORNER = 2 * CORNER_RADIUS;

/** Promises of the guide: its holes, its nut end, its sides and the lines on it. */
export function guideClaims(bench: Bench, s: GuideSettings, guide: Guide): SizeClaim[] {
	return [
		...guide.holes.flatMap((hole, i) => holeClaims(bench, hole, guide.diameter, i === 0)),
		...nutEndClaims(bench, guide),
		...plateClaims(bench, guide),
		...(s["slot-lines"] ? slotClaims(bench, guide.slots, { slots: "scored" }) : []),
	];
}

function holeClaims(bench: Bench, hole: Hole, diameter: number, isFirst: boolean): SizeClaim[] {
	const { id, at, feature } = hole;
	return [
		cutSize(bench, {
			id: `${id}-along`,
			kind: "position",
			feature,
			datum: NUT,
			axis: "x",
			at: [ORIGIN, at],
			nominal: at.x,
		}),
		cutSize(bench, {
			id: `${id}-across`,
			kind: "position",
			feature,
			datum: "centre line",
			axis: "y",
			at: [{ x: at.x, y: 0 }, at],
			nominal: at.y,
			series: "hole from the centre line",
		}),
		cutSize(bench, {
			id: `${id}-diameter`,
			kind: "diameter",
			feature,
			datum: feature,
			axis: "line",
			at: [at],
			nominal: diameter,
			// One leader stands for all.
			...(isFirst ? {} : { series: "diameter of the other holes" }),
		}),
	];
}

/** Where the nut end lies, beside both of its corners. */
function nutEndClaims(bench: Bench, { face, nutEnd }: Guide): SizeClaim[] {
	return nutEnd.map((corner) => {
		const y = corner.y - Math.sign(corner.y) * OFF_CORNER;
		const side = Math.sign(y) === bench.neck.trebleSide ? "treble" : "bass";
		const at = pointOnFret(face, y);
		return cutSize(bench, {
			id: `nut-end-${side}`,
			kind: "position",
			feature: `nut end ${side}`,
			datum: NUT,
			axis: "x",
			at: [ORIGIN, at],
			nominal: at.x,
		});
	});
}

function plateClaims(bench: Bench, { neck, face, nutEnd, to }: Guide): SizeClaim[] {
	const across = (id: string, feature: string, x: number) => {
		const half = widthAt(neck, x) / 2;
		return cutSize(bench, {
			id,
			kind: "width",
			feature,
			datum: "board's edges",
			axis: "y",
			at: [
				{ x, y: -half },
				{ x, y: half },
			],
			nominal: 2 * half,
		});
	};
	return [
		across("width-nut", "plate beside the nut", Math.max(...nutEnd.map((p) => p.x)) + OFF_CORNER),
		across("width-far-end", "plate before its far end", to - OFF_CORNER),
		cutSize(bench, {
			id: "length",
			kind: "length",
			feature: "plate",
			datum: "nut end",
			axis: "x",
			at: [
				{ x: face.x, y: 0 },
				{ x: to, y: 0 },
			],
			nominal: to - face.x,
		}),
	];
}
