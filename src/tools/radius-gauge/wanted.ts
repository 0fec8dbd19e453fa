import { stationText } from "../../fields/index.js";
import { radiusAt, stationX } from "../../neck/index.js";
import { inches } from "../../units/index.js";
import type { Bench } from "../tool.js";
import type { Given } from "./settings.js";

/** One gauge to be made. */
export interface Wanted {
	readonly radius: number;
	/** Where on the neck, or null for a radius of the user's own. */
	readonly place: string | null;
	/** Of that place, mm from the theoretical nut. */
	readonly x: number | null;
	/** For the part's name. */
	readonly tag: string;
}

/** The gauges asked for: own radii, stations, or what the board needs. */
export function wantedGauges(bench: Bench, given: Given): Wanted[] {
	const { neck } = bench;
	if (given.radii) {
		return given.radii.map((radius) => ({
			radius,
			place: null,
			x: null,
			tag: `${inches(radius, 3)
				.replace(/\.?0+$/, "")
				.replace(".", "-")}in`,
		}));
	}
	if (neck.radius === "flat") return [];
	const cylinder = neck.radius.knots.length === 1;
	if (cylinder && !given.at) {
		return [{ radius: radiusAt(neck, 0)!, place: null, x: null, tag: "" }];
	}
	const middle = Math.round(neck.frets / 2);
	const stations = given.at ?? [
		{ kind: "nut" as const },
		{ kind: "fret" as const, fret: middle },
		{ kind: "last-fret" as const },
	];
	return stations.map((station) => {
		const x = stationX(neck, station);
		const place = stationText(station);
		return { radius: radiusAt(neck, x)!, place, x, tag: place.replace(/[ .]/gu, "-") };
	});
}
