import fc from "fast-check";

/** What was drawn for a neck, in mm, kept apart from how the project reads it. */
export interface Drawn {
	readonly scale: { readonly bass: number; readonly treble: number };
	readonly squareFret: number;
	readonly fanned: boolean;
	/** Share of the string from nut to fret n, computed here from the numbers drawn. */
	readonly share: (n: number) => number;
	readonly frets: number;
	readonly left: boolean;
	readonly zeroFret: boolean;
	readonly nutShift: number;
	readonly binding: number;
	readonly strings: { readonly atNut: number; readonly atSaddle: number } | null;
	/** Strings, both of every course counted. */
	readonly stringCount: number;
	readonly width: { readonly nut: number; readonly lastFret: number };
	readonly radius: { readonly nut: number; readonly lastFret: number } | "flat";
	readonly crown: { readonly width: number; readonly height: number };
	readonly tang: number;
}

/** A job file as an object, and what it was drawn from. */
export interface RandomJob {
	readonly job: { readonly [key: string]: unknown };
	readonly drawn: Drawn;
}

export interface NeckOptions {
	/** Least distance of neighbouring frets, mm. */
	readonly leastGap: number;
	readonly fanned?: boolean;
	readonly strings?: boolean;
	readonly left?: boolean;
	/** Whether the board is curved across, whatever was drawn. */
	readonly arched?: boolean;
	/** The job's list of tools. */
	readonly make?: readonly unknown[];
}

/** How properties over random necks are run: few different jobs, each read once in a file. */
export const RUNS = { seed: 1_847, numRuns: 40 };

/** A number with as many decimals as a bench reading has. */
export const reading = (min: number, max: number, digits = 2) =>
	fc
		.integer({ min: Math.ceil(min * 10 ** digits), max: Math.floor(max * 10 ** digits) })
		.map((i) => i / 10 ** digits);

interface Division {
	readonly given: unknown;
	readonly share: (n: number) => number;
}

const equal = (steps: number): Division => ({
	given: steps,
	share: (n) => 1 - 2 ** (-n / steps),
});

const ruleOf18: Division = { given: "rule-of-18", share: (n) => 1 - (17 / 18) ** n };

/** Twelve notes of a key, each up to 25 cents beside its equal step, repeated at the octave. */
const listed = fc.array(reading(-25, 25, 1), { minLength: 11, maxLength: 11 }).map((beside) => {
	const cents = [...beside.map((b, i) => 100 * (i + 1) + b), 1200];
	const at = (n: number) => (n === 0 ? 0 : 1200 * Math.floor((n - 1) / 12) + cents[(n - 1) % 12]!);
	const share = (n: number) => {
		const low = Math.floor(n);
		const between = low === n ? at(n) : at(low) + (n - low) * (at(low + 1) - at(low));
		return 1 - 2 ** (-between / 1200);
	};
	return { given: { cents }, share };
});

const division: fc.Arbitrary<Division> = fc.oneof(
	{ weight: 3, arbitrary: fc.constant(equal(12)) },
	fc.constantFrom(equal(19), equal(24), equal(31), ruleOf18),
	listed,
);

/** The highest fret before neighbours come nearer than `least` on this scale. */
function highestFret({ share }: Division, scale: number, least: number): number {
	let n = 1;
	while (n < 60 && scale * (share(n + 1) - share(n)) >= least) n++;
	return n;
}

const raw = fc.record({
	scale: reading(330, 900),
	shorter: fc.double({ min: 0.9, max: 0.985, noNaN: true }),
	square: fc.integer({ min: 0, max: 24 }).map((halves) => halves / 2),
	division,
	fretsPart: fc.double({ min: 0.3, max: 1, noNaN: true }),
	fanned: fc.boolean(),
	withStrings: fc.boolean(),
	left: fc.boolean(),
	zeroFret: fc.boolean(),
	shift: fc.oneof(fc.constant(0), reading(-3, 2)),
	binding: fc.oneof(fc.constant(0), reading(0.5, 2)),
	nutWidth: reading(30, 62),
	taper: fc.oneof(fc.constant(0), reading(4, 24)),
	overhang: reading(2.6, 4.5),
	count: fc.integer({ min: 4, max: 9 }),
	pairGap: fc.option(reading(1.6, 2.6), { nil: null }),
	board: fc.oneof(
		fc.constant("flat" as const),
		reading(184, 510).map((r) => [r, r] as const),
		fc.tuple(reading(184, 300), reading(300, 510)),
	),
	doubles: fc.boolean(),
	crown: fc.tuple(reading(1.3, 2.9), reading(0.9, 1.4)),
	tang: fc.tuple(reading(0.45, 0.65), reading(1.4, 2)),
	material: fc.constantFrom("acrylic", "plywood", "mdf", "steel", "aluminium"),
	thickness: reading(1, 4, 1),
	tolerance: reading(0.02, 0.1),
	unit: fc.constantFrom("mm", "in", "cm"),
});

type Raw = typeof raw extends fc.Arbitrary<infer R> ? R : never;

/** Radius of a board that must not be flat where a flat one was drawn, mm. */
const ARCHED = 254;

const UNITS = { mm: 1, cm: 10, in: 25.4 } as const;

/** Whether the strings go in pairs. */
function hasCourses({ pairGap, count }: Raw): boolean {
	return pairGap !== null && count < 7;
}

/** What the raw draw means once it is made to fit together. */
function drawnOf(r: Raw, options: NeckOptions): Drawn {
	const fanned = options.fanned ?? r.fanned;
	const treble = fanned ? r.scale * r.shorter : r.scale;
	const { share } = r.division;
	const most = highestFret(r.division, treble, options.leastGap);
	const frets = Math.max(1, Math.round(most * r.fretsPart));
	const zeroFret = r.zeroFret;
	const first = treble * share(1);
	const shift = zeroFret ? -Math.abs(r.shift) : Math.min(r.shift, first * 0.4);
	const strings = fanned || (options.strings ?? r.withStrings);
	const atNut = r.nutWidth - 2 * r.overhang;
	const board = r.board === "flat" && options.arched ? ([ARCHED, ARCHED] as const) : r.board;
	return {
		scale: { bass: r.scale, treble },
		squareFret: r.square,
		fanned,
		share,
		frets,
		left: options.left ?? r.left,
		zeroFret,
		nutShift: shift === 0 ? 0 : shift,
		binding: r.binding,
		strings: strings ? { atNut, atSaddle: atNut + r.taper } : null,
		stringCount: hasCourses(r) ? 2 * r.count : r.count,
		width: { nut: r.nutWidth, lastFret: r.nutWidth + r.taper * share(frets) },
		radius: board === "flat" ? "flat" : { nut: board[0], lastFret: board[1] },
		crown: { width: r.crown[0], height: r.crown[1] },
		tang: r.tang[0],
	};
}

function markersOf({ frets }: Drawn, doubles: boolean): unknown[] {
	const single = [3, 5, 7, 9, 15, 17, 19, 21].filter((n) => n <= frets);
	return doubles && frets >= 12 ? [...single, { 12: "double" }] : single;
}

function neckOf(r: Raw, drawn: Drawn, as: (mm: number) => number): Record<string, unknown> {
	const { radius, strings, width, scale } = drawn;
	return {
		scale: drawn.fanned
			? { bass: as(scale.bass), treble: as(scale.treble), "square-fret": drawn.squareFret }
			: as(scale.bass),
		frets: drawn.frets,
		division: r.division.given,
		radius:
			radius === "flat"
				? "flat"
				: radius.nut === radius.lastFret
					? as(radius.nut)
					: { nut: as(radius.nut), "last-fret": as(radius.lastFret) },
		width:
			width.nut === width.lastFret
				? as(width.nut)
				: { nut: as(width.nut), "last-fret": as(width.lastFret) },
		...(strings && {
			strings: {
				...(hasCourses(r) ? { courses: r.count, "pair-gap": as(r.pairGap!) } : { count: r.count }),
				"at-nut": as(strings.atNut),
				"at-saddle": as(strings.atSaddle),
			},
		}),
		handed: drawn.left ? "left" : "right",
		"zero-fret": drawn.zeroFret,
		"nut-shift": as(drawn.nutShift),
		binding: as(drawn.binding),
		markers: markersOf(drawn, r.doubles),
	};
}

/**
 * Jobs for necks as a bench may meet them: one scale or two, several divisions, either hand, zero
 * fret, moved nut, binding, courses, flat, cylindrical and compound boards, in mm, cm or inch.
 */
export function randomJob(options: NeckOptions): fc.Arbitrary<RandomJob> {
	return raw.map((r) => {
		const drawn = drawnOf(r, options);
		const as = (mm: number) => mm / UNITS[r.unit];
		const job = {
			format: 1,
			job: "Any neck",
			units: r.unit,
			neck: neckOf(r, drawn, as),
			wire: {
				"crown-width": as(drawn.crown.width),
				"crown-height": as(drawn.crown.height),
				"tang-width": as(drawn.tang),
				"tang-depth": as(r.tang[1]),
			},
			stock: { material: r.material, thickness: as(r.thickness) },
			machine: { tolerance: as(r.tolerance) },
			make: options.make ?? ["slot-strip"],
		};
		return { job, drawn };
	});
}
