import type { SlotSource } from "../fields/index.js";
import { type Problem, problem } from "../problem/index.js";
import type { SlotReading } from "../readings/index.js";
import type { Unit } from "../units/index.js";
import { readingsOfFile } from "./readings-file.js";
import type { ReadingsValues } from "./readings-schema.js";

/** Readings of slots by the line that they were read along. */
export interface ReadSlots {
	readonly centre: readonly SlotReading[];
	readonly bass: readonly SlotReading[];
	readonly treble: readonly SlotReading[];
}

const KEYS = { slots: "centre", "bass-slots": "bass", "treble-slots": "treble" } as const;

/** The files that a job's readings stand in, each once. */
export function filesOfReadings(value: unknown): string[] {
	const readings = (value as { neck?: { readings?: Record<string, unknown> } } | null)?.neck
		?.readings;
	const named = Object.keys(KEYS).map((key) => readings?.[key]);
	return [...new Set(named.filter((file): file is string => typeof file === "string"))];
}

/**
 * The readings of a job's slots, from the job itself and from the files that it names.
 *
 * @param files - texts by the names that the job gives them
 */
export function slotsOf(
	readings: ReadingsValues,
	files: ReadonlyMap<string, string>,
	unit: Unit,
): ReadSlots | Problem[] {
	const found = { centre: [], bass: [], treble: [] } as Record<keyof ReadSlots, SlotReading[]>;
	const problems: Problem[] = [];
	for (const [key, line] of Object.entries(KEYS)) {
		const source = readings[key as keyof typeof KEYS];
		if (!source) continue;
		const read = readFrom(source, files, unit);
		if ("code" in read) {
			problems.push({ ...read, where: { path: ["neck", "readings", key] } });
			continue;
		}
		for (const { fret, at, string } of read) found[string ?? line].push({ fret, at });
	}
	return problems.length > 0 ? problems : found;
}

function readFrom(source: SlotSource, files: ReadonlyMap<string, string>, unit: Unit) {
	if ("readings" in source) return source.readings.map((r) => ({ ...r, string: null }));
	const text = files.get(source.file);
	if (text === undefined) return problem("readings-not-loaded", [], { file: source.file });
	return readingsOfFile(text, source.file, unit);
}
