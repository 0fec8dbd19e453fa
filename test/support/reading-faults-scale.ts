import type { Law } from "../../src/neck/index.js";
import type { Problem } from "../../src/problem/index.js";
import { fitFanned } from "../../src/readings/fanned-fit.js";
import { fitScale, type ScaleOptions } from "../../src/readings/scale-fit.js";
import type { SlotReading } from "../../src/readings/slot-readings.js";

const TWELVE: Law = { kind: "equal", steps: 12 };
const equal = (n: number) => 1 - 2 ** (-n / 12);
const eighteen = (n: number) => 1 - (17 / 18) ** n;
const frets = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

/** A board's slots: scale times the share of each fret, from a rule's zero before the nut. */
export function slots(
	of: readonly number[],
	scale: number,
	share = equal,
	offset = 0,
): SlotReading[] {
	return of.map((fret) => ({ fret, at: offset + scale * share(fret) }));
}

/** Problems and notes of readings that are wrong, or that leave something open, by what is wrong. */
export function readingFaultsScale(): Problem[] {
	const told = { law: TWELVE, resolution: 0.1, nut: "true", frets: 24 } as const;
	const saidOf = (readings: readonly SlotReading[], options: Partial<ScaleOptions> = {}) => {
		const found = fitScale(readings, { ...told, ...options });
		return Array.isArray(found) ? found : found.notes;
	};
	const whole = slots(frets(22), 650);
	const spoilt = (fret: number, at: number) =>
		whole.map((r) => (r.fret === fret ? { fret, at } : r));
	const strewn = [0, 0, -19, 12, 0].map((off, i) => ({
		fret: 2 * i + 2,
		at: 650 * equal(2 * i + 2) + off,
	}));
	return [
		...saidOf([]),
		...saidOf(slots([12], 650), { nut: "filed" }),
		...saidOf(frets(20).map((fret) => ({ fret, at: 325 }))),
		...saidOf(spoilt(7, 190)),
		...saidOf(slots(frets(22), 25.5)),
		...saidOf(slots(frets(22), 650 * 25.4)),
		...saidOf(slots(frets(22), 20)),
		...saidOf([{ fret: 2.5, at: 90 }]),
		...saidOf([{ fret: 25, at: 500 }]),
		...saidOf([{ fret: 5, at: Number.NaN }]),
		...saidOf([{ fret: 1, at: -0.4 }]),
		...saidOf([...whole, { fret: 5, at: 165 }]),
		...saidOf(slots([12], 650)),
		...saidOf(slots(frets(22), 650, eighteen)),
		...saidOf(slots(frets(4), 650), { nut: "unknown" }),
		...saidOf(slots(frets(4), 650), { nut: "unknown", frets: 5 }),
		...saidOf(slots([5, 12], 650), { nut: "unknown" }),
		...saidOf(spoilt(7, 650 * equal(7) + 0.9)),
		...saidOf(spoilt(7, 650 * equal(7) - 0.9)),
		...saidOf(slots(frets(22), 650, equal, -0.7)),
		...saidOf(strewn),
		...saidOf(
			[
				{ fret: 5, at: 161 },
				{ fret: 12, at: 322.5 },
				{ fret: 17, at: 403.5 },
			],
			{ nut: "unknown", resolution: 0.5 },
		),
		...fannedFaults(),
	];
}

function fannedFaults(): Problem[] {
	const options = {
		law: TWELVE,
		resolution: 0.1,
		nut: "true",
		frets: 24,
		from: "square-line",
	} as const;
	const bass = slots(frets(20), 690, equal, -5);
	const treble = slots(frets(20), 650, equal, 10);
	const all = [
		fitFanned(
			{ bass: slots(frets(20), 690), treble: slots(frets(20), 650) },
			{ ...options, from: "nut" },
		),
		fitFanned({ bass, treble: slots(frets(20), 690, equal, 10) }, options),
		fitFanned({ bass, treble: slots(frets(20), 650, equal, -30) }, options),
		fitFanned({ bass, treble }, { ...options, spread: { atNut: 0, atSaddle: 2000 } }),
		fitFanned({ bass, treble: treble.slice(0, 1) }, options),
		fitFanned({ bass, treble: treble.slice(10, 12) }, options),
		fitFanned(
			{
				bass: slots(frets(20), 690),
				treble: [
					{ fret: 5, at: 163 },
					{ fret: 12, at: 327 },
				],
			},
			{ ...options, from: "nut" },
		),
	];
	return all.flatMap((f) => (Array.isArray(f) ? f : f.notes));
}
