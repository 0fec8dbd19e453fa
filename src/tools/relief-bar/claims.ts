import type { SizeClaim } from "../../drawing/index.js";
import type { Point } from "../../geometry/index.js";
import { cutSize } from "../size.js";
import type { Bench } from "../tool.js";
import { hasPad, type Laid } from "./lay.js";
import { type Hole, RELIEF } from "./measures.js";

/** A stretch of the lower edge: a foot, the pad, or a relief between two of them. */
interface Stretch {
	readonly id: string;
	readonly name: string;
	readonly from: number;
	readonly to: number;
}

/** Feet and pad in their order along the bar. */
export function landsOf(laid: Laid): Stretch[] {
	const { foot, span, readAt } = laid;
	const land = (id: string, name: string, x: number) => ({
		id,
		name,
		from: x - foot / 2,
		to: x + foot / 2,
	});
	return [
		land("first-foot", "first foot", 0),
		...(hasPad(laid) ? [land("pad", "pad", readAt)] : []),
		land("second-foot", "second foot", span),
	];
}

/** The relieved stretches between feet and pad. */
function reliefsOf(lands: readonly Stretch[]): Stretch[] {
	return lands.slice(1).map((land, i) => ({
		id: `relief-${i + 1}`,
		name: `relief ${i + 1}`,
		from: lands[i]!.to,
		to: land.from,
	}));
}

/** Height over the feet at which their sides are measured. */
const AT = RELIEF / 2;
const on = (x: number, y = AT): Point => ({ x, y });

/** Promises of the bar: where it stands and reads, that feet and pad are level, and its plate. */
export function barClaims(bench: Bench, laid: Laid): SizeClaim[] {
	const { height, foot, span, dial, stem } = laid;
	const lands = landsOf(laid);
	const start = lands[0]!.from;
	const size = (claim: Omit<SizeClaim, "operation" | "bench" | "file">) => cutSize(bench, claim);
	const lengthOf = (id: string, feature: string, from: Point, to: Point, axis: "x" | "y") =>
		size({
			id,
			kind: "length",
			feature,
			datum: "outline",
			axis,
			at: [from, to],
			nominal: axis === "x" ? to.x - from.x : to.y - from.y,
		});
	const places = lands.slice(1).map(({ id, name, from }) =>
		size({
			id: `${id}-place`,
			kind: "position",
			feature: `side of the ${name}`,
			datum: "outer side of the first foot",
			axis: "x",
			at: [on(start), on(from)],
			nominal: from - start,
		}),
	);
	const reliefs = reliefsOf(lands).flatMap(({ id, name, from, to }) => [
		size({
			id: `${id}-width`,
			kind: "width",
			feature: name,
			datum: name,
			axis: "x",
			at: [on(from), on(to)],
			nominal: to - from,
		}),
		size({
			id: `${id}-depth`,
			kind: "depth",
			feature: name,
			datum: "feet",
			axis: "y",
			at: [on((from + to) / 2, 0), on((from + to) / 2, RELIEF)],
			nominal: RELIEF,
			series: "relief of the edge",
		}),
	]);
	const middle = reliefsOf(lands)[0]!;
	const x = (middle.from + middle.to) / 2;
	return [
		...places,
		...lands.map(({ id, name, from, to }) => lengthOf(`${id}-width`, name, on(from), on(to), "x")),
		...reliefs,
		size({
			id: "level",
			kind: "straightness",
			feature: hasPad(laid) ? "feet and pad" : "feet",
			datum: "feet",
			axis: "line",
			at: [on(start, 0), on(span + foot / 2, 0)],
			nominal: 0,
		}),
		lengthOf("length", "bar", on(start, height / 2), on(span + foot / 2, height / 2), "x"),
		lengthOf("height-over-relief", "bar over the relief", on(x, RELIEF), on(x, height), "y"),
		...(dial ? [holeSize(bench, "dial hole", dial)] : []),
		...(stem?.screw ? [holeSize(bench, "clamp screw hole", stem.screw)] : []),
	];
}

/** The promise of a round hole, by the name of its feature; of a series all but one are in the table alone. */
export function holeSize(
	bench: Bench,
	feature: string,
	{ x, y, diameter }: Hole,
	series?: string,
): SizeClaim {
	return cutSize(bench, {
		id: feature.replaceAll(" ", "-"),
		kind: "diameter",
		feature,
		datum: feature,
		axis: "line",
		at: [{ x, y }],
		nominal: diameter,
		...(series === undefined ? {} : { series }),
	});
}
