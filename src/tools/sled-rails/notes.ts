import { isExtrapolated } from "../../neck/index.js";
import { fixed, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { Rail } from "./rails.js";
import type { RailSettings } from "./settings.js";

/** What a router asks of whoever holds it. */
export const ROUTER_CAUTIONS: readonly string[] = [
	"Router: wear eye and ear protection and a dust mask; clamp the board, both rails and the bench stops; unplug the router before you touch its bit.",
	"Router: keep hands off the board and the rails while the bit turns, both hands on the sled; take shallow passes, and let the bit stop before you lift the sled.",
	"The router's manual, the bit's greatest speed, and the codes and licensed practice where you work govern; where they differ from this sheet, follow them.",
];

/** A bit this far beside the line that the plate bears on is told of, mm. */
const BESIDE = 5;

/** What the person at the bench must know of a rail and its twin. */
export function sledNotes(bench: Bench, s: RailSettings, rail: Rail, twin: Rail): string[] {
	const apart = Math.abs(twin.x - rail.x);
	const h = fixed(s["rail-height"], 3);
	return [
		`One of a pair, ${fixed(apart, 2)} mm apart from middle to middle, both square to the centre line with their marks on it; this one ${placeText(s, rail)}.`,
		`Block the board up until its finished surface will lie ${fixed(s["foot-height"], 3)} mm over the bench on the centre line, at both ends alike: the raw board stands higher by what is to come off.`,
		`The sled's underside is one flat plate, longer than ${fixed(apart + bench.stock.thickness, 1)} mm. For the last pass the bit's end stands ${h} mm below it.`,
		...edgeNotes(bench, rail),
		"The rails are plates from the bench up: neck and board must end between them, or lie on a beam that does.",
		...extrapolated(bench, rail),
		...ROUTER_CAUTIONS,
	];
}

function placeText(s: RailSettings, { tag }: Rail): string {
	const by = trimmed(tag === "nut" ? s["before-nut"] : s["past-end"], 3);
	return tag === "nut"
		? `${by} mm before the board's nut end`
		: `${by} mm past the board's far end`;
}

function edgeNotes(bench: Bench, { board, radius }: Rail): string[] {
	if (board === null || radius === null) {
		return ["The board is flat and so are the rails: both are level, and equally high."];
	}
	const cone =
		bench.neck.radius !== "flat" && bench.neck.radius.knots.length > 1
			? " Skids under it would not do: on a board whose radius changes they stand at different heights on the two rails."
			: "";
	return [
		`The edge is the board's own arc, ${fixed(board, 3)} mm here, lifted: ${fixed(radius, 3)} mm about the same centre. The plate bears on one line of both rails; rock it across so that this line passes under the bit.${cone}`,
		`Where the bit stands beside that line it leaves wood and never takes too much: ${fixed(Math.hypot(board, BESIDE) - board, 3)} mm at ${BESIDE} mm.`,
	];
}

function extrapolated({ neck }: Bench, { x }: Rail): string[] {
	if (neck.radius === "flat" || !isExtrapolated(neck.radius, x)) return [];
	return ["The radius here is drawn out beyond the measured stations, along the same cone."];
}
