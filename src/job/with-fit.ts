import { parseDocument } from "yaml";
import { stationText } from "../fields/index.js";
import { fretFraction, highestFret, type Law } from "../neck/index.js";
import { fixed, trimmed } from "../units/index.js";
import type { Job } from "./read-job.js";

/**
 * A job's text with what was fitted put into `neck` as numbers; its readings stay beside them as
 * the record, comments stay where they are.
 *
 * @example withFit(text, job) // "… neck:\n  use: numbers\n  scale: 647.7003 mm …"
 */
export function withFit(text: string, job: Job): string {
	const doc = parseDocument(text);
	const { fit, neckValues } = job;
	const set = (key: string, value: unknown) =>
		doc.setIn(["neck", key], doc.createNode(value, { flow: true } as object));
	if (fit?.scale) {
		const { scale, division } = neckValues;
		set("scale", typeof scale === "number" ? mm(scale) : fannedText(scale));
		if (division.kind !== "positions") set("division", divisionText(division, neckValues.frets));
		set("nut-shift", mm(neckValues["nut-shift"]));
		set("scale-uncertainty", mm(neckValues["scale-uncertainty"]));
	}
	if (fit?.radius) set("radius", profileText(neckValues.radius));
	if (fit?.width) set("width", profileText(neckValues.width));
	set("use", "numbers");
	return doc.toString({ lineWidth: 0 });
}

function mm(value: number): string {
	return `${trimmed(value, 4)} mm`;
}

type Values = Job["neckValues"];

function fannedText(scale: Exclude<Values["scale"], number>) {
	const square = Number(fixed(scale["square-fret"], 3));
	return { bass: mm(scale.bass), treble: mm(scale.treble), "square-fret": square };
}

function profileText(value: Values["radius"] | Values["width"]) {
	if (typeof value === "string") return value;
	if (typeof value === "number") return mm(value);
	return Object.fromEntries(
		value.map(({ station, value: at }) => [
			stationText(station).replace("last fret", "last-fret"),
			mm(at),
		]),
	);
}

/** A law as a job writes it; one that has no name of its own as the ratios of its frets. */
function divisionText(law: Law, frets: number): unknown {
	if (law.kind === "rule-of-18") return law.kind;
	if (law.kind === "equal" && Number.isInteger(law.steps)) return law.steps;
	const most = Math.min(frets, highestFret(law));
	const ratios = Array.from({ length: most }, (_, i) => 1 / (1 - fretFraction(law, i + 1)));
	return { ratios: ratios.map((r) => Number(fixed(r, 9))) };
}
