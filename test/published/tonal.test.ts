import { Interval, Midi, Note } from "tonal";
import { describe, expect, it } from "vitest";
import { fretLine, fretTable } from "../../src/neck/index.js";
import { neckWith } from "../support/made-parts.js";

/** The general-purpose music library `tonal` on the npm registry: frequencies of notes. */
describe("tonal, a general-purpose music library", () => {
	const neck = neckWith({ frets: 24 });

	it.each(["E2", "A2", "D3", "G3", "B3", "E4"])(
		"puts the frets of the string %s where the project puts them",
		(name) => {
			const open = Note.midi(name)!;
			const off = fretTable(neck).map(({ fret, fromNut }) => {
				const ratio = Midi.midiToFreq(open + fret) / Midi.midiToFreq(open);
				return Math.abs(647.7 * (1 - 1 / ratio) - fromNut);
			});
			expect(off).toHaveLength(24);
			expect(Math.max(...off)).toBeLessThan(1e-11);
		},
	);

	it.each([
		["3m", 3],
		["4P", 5],
		["5P", 7],
		["8P", 12],
		["12P", 19],
		["15P", 24],
	])("counts an interval of %s to fret %i", (interval, fret) => {
		const raised = Note.freq(Note.transpose("A3", interval))!;
		const { x } = fretLine(neck, Interval.semitones(interval)!);
		expect(x).toBe(fretLine(neck, fret).x);
		expect(647.7 / (647.7 - x)).toBeCloseTo(raised / Note.freq("A3")!, 12);
	});
});
