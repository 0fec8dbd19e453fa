import { extents, grown, type Move, moved, type Point, undone } from "../geometry/index.js";
import type { Lettering } from "../lettering/index.js";
import { type Problem, problem } from "../problem/index.js";
import { asMade } from "./as-made.js";
import { type Cutter, loadCutter } from "./cut.js";
import { finishedPart } from "./finished.js";
import { inspect } from "./inspect.js";
import { judged } from "./judge.js";
import { lineFaults } from "./lines.js";
import { measureFinished } from "./measure.js";
import { outlineFaults } from "./outline.js";
import { placeOf } from "./place.js";
import { type PrintedFile, provePrint } from "./print.js";
import { type Proven, proven } from "./proven.js";
import { readDxf } from "./read-dxf.js";
import { readSvg } from "./read-svg.js";
import { rejoined } from "./rejoined.js";
import { areSame, beginAlike } from "./same.js";
import type {
	Measured,
	PromisedFile,
	PromisedPart,
	PromisedPrint,
	ReadDrawing,
	ReadStroke,
} from "./types.js";

/** Two files within this are one drawing: what six decimals lose twice, mm. */
const ONE_DRAWING = 3e-6;
/** How far beyond its box a part's strokes are looked for, mm; less than two parts are apart. */
const AROUND = 0.9;
/** From this share of claims on that find nothing in their place the part is looked for elsewhere. */
const MOSTLY = 0.5;
/** Findings that make measuring pointless: everything would be off for one reason. */
const WHOLE = new Set(["unit-slip", "mirrored"]);

/** Drawings that were measured already: the same part in another file is compared, not swept. */
interface Known {
	readonly part: PromisedPart;
	readonly strokes: readonly ReadStroke[];
	readonly measured: readonly Measured[];
	readonly faults: readonly Problem[];
}

/** A drawing that was measured already: the same in another format is compared with it. */
interface Twin {
	readonly drawing: ReadDrawing;
	readonly promised: PromisedFile;
	readonly measured: readonly Measured[];
	readonly findings: readonly Problem[];
}

/**
 * One written file measured against what its manifest promises of it; for several files of a job
 * a `Prover` measures what they share but once.
 *
 * @param letters - the lettering whose strokes labels are compared with
 * @example (await prove(bytes, promised.files[0], letters)).findings // [] if all is well
 */
export function prove(
	bytes: Uint8Array,
	promised: PromisedFile,
	letters: Lettering,
): Promise<Proven> {
	return new Prover(letters).prove(bytes, promised);
}

/** Measures files of one job one after the other; each distinct geometry of a part once. */
export class Prover {
	readonly #known: Known[] = [];
	readonly #twins: Twin[] = [];

	#cutter: Cutter | null = null;

	/** @param letters - the lettering whose strokes labels are compared with */
	constructor(private readonly letters: Lettering) {}

	/**
	 * Measures a written file against what its manifest promises of it.
	 *
	 * The bytes alone are read. Their form comes first, then what no claim says, then every
	 * claim of every part, each part moved back from its place into its own frame. What was moved
	 * for a kerf is cut first: what a beam of that width would leave is measured.
	 */
	async prove(bytes: Uint8Array, promised: PromisedFile): Promise<Proven> {
		const drawing = read(bytes, promised);
		const proven = await this.#prove(drawing, promised);
		const lost = proven.measured.filter(({ value }) => !Number.isFinite(value)).length;
		if (promised.placed.length > 1 || lost < MOSTLY * proven.measured.length || lost === 0) {
			return proven;
		}
		return (await this.#elsewhere(drawing, promised)) ?? proven;
	}

	/** A file whose one part was moved or turned as a whole, measured where it lies; null of none. */
	async #elsewhere(drawing: ReadDrawing, promised: PromisedFile): Promise<Proven | null> {
		const [{ part, move: from }] = promised.placed as [PromisedFile["placed"][number]];
		const move = this.#placeOf(drawing, promised);
		if (!move || move.mirror) return null;
		const found = await this.#prove(drawing, { ...promised, placed: [{ part, move }] });
		if (found.measured.some(({ value }) => !Number.isFinite(value))) return null;
		const turn = ((move.turn - from.turn) * 180) / Math.PI;
		const facts = { part: part.name, x: move.x - from.x, y: move.y - from.y, turn };
		const told = { ...problem("moved-as-a-whole", [], facts), severity: "warning" as const };
		return proven(promised.name, found.measured, [told, ...found.findings]);
	}

	#placeOf(drawing: ReadDrawing, { placed, stretch }: PromisedFile): Move | null {
		const strokes = drawing.strokes.map((s) => ({ ...s, path: asMade(s.path, stretch) }));
		return placeOf({ ...drawing, strokes }, placed[0]!.part, this.letters);
	}

	/**
	 * The same for a file in which the one part lies wherever a drawing program put it: it is
	 * looked for first, in any turn.
	 */
	async proveSought(bytes: Uint8Array, promised: PromisedFile): Promise<Proven> {
		const drawing = read(bytes, promised);
		const { part } = promised.placed[0]!;
		const move = this.#placeOf(drawing, promised);
		if (!move) {
			const whole = inspect(drawing, promised, this.letters).filter((f) => WHOLE.has(f.code));
			const lost = problem("part-not-found", [], { part: part.name, kerf: part.kerf });
			return proven(promised.name, [], [...drawing.findings, ...whole, lost]);
		}
		const mirrored = move.mirror ? [problem("mirrored", [], { axis: "y" })] : [];
		const found = await this.#prove(drawing, { ...promised, placed: [{ part, move }] });
		return proven(promised.name, found.measured, [...mirrored, ...found.findings]);
	}

	/**
	 * Measures what is printed on paper: every page, and the part that its pages show together.
	 *
	 * @returns one entry for each promised file, in their order
	 */
	provePrint(files: readonly PrintedFile[], promised: PromisedPrint): Promise<Proven[]> {
		return provePrint(files, promised, this.letters);
	}

	async #prove(drawing: ReadDrawing, promised: PromisedFile): Promise<Proven> {
		if (promised.placed.some(({ part }) => part.kerf > 0)) this.#cutter ??= await loadCutter();
		const found = drawing.findings;
		if (drawing.strokes.length === 0) {
			const empty = found.some((f) => f.severity === "error") ? [] : [problem("nothing-drawn", [])];
			return proven(promised.name, [], [...found, ...empty]);
		}
		const twin = this.#twins.find((t) => isTwin(t, drawing, promised));
		if (twin) return proven(promised.name, twin.measured, [...found, ...twin.findings]);
		const inspected = inspect(drawing, promised, this.letters);
		if (inspected.some(({ code }) => WHOLE.has(code))) {
			return proven(promised.name, [], [...found, ...inspected]);
		}
		const known = promised.placed.map(({ part, move }) =>
			this.#measure(part, strokesOf(drawing, part, move, promised.stretch)),
		);
		const measured = known.flatMap((k) => k.measured);
		const findings = [...inspected, ...judged(measured), ...known.flatMap((k) => k.faults)];
		const lasting = findings.filter(({ code }) => code !== "outside-page");
		this.#twins.push({ drawing, promised, measured, findings: lasting });
		return proven(promised.name, measured, [...found, ...findings]);
	}

	#measure(part: PromisedPart, strokes: readonly ReadStroke[]): Known {
		const known = this.#known.find(
			(k) => k.part === part && areSame(k.strokes, strokes, ONE_DRAWING),
		);
		if (known) return known;
		const finished = finishedPart(part, strokes, this.#cutter);
		const measured = measureFinished(part, finished, this.letters);
		const faults = [...outlineFaults(part, finished), ...lineFaults(part, finished)];
		const made = { part, strokes, measured, faults };
		this.#known.push(made);
		return made;
	}
}

function read(bytes: Uint8Array, promised: PromisedFile): ReadDrawing {
	const drawing = promised.format === "svg" ? readSvg(bytes) : readDxf(bytes);
	return rejoined(drawing, promised);
}

/** Whether another file shows the same parts at the same places with the same strokes. */
function isTwin(twin: Twin, drawing: ReadDrawing, { placed, stretch }: PromisedFile): boolean {
	const other = twin.promised;
	const isAlike =
		placed.length === other.placed.length &&
		stretch.x === other.stretch.x &&
		stretch.y === other.stretch.y &&
		placed.every(({ part, move }, i) => {
			const beside = other.placed[i]!;
			const { x, y, turn, mirror } = beside.move;
			const isSame = move.x === x && move.y === y && move.turn === turn && move.mirror === mirror;
			return isSame && beside.part === part;
		});
	const workOf = ({ strokes }: ReadDrawing) => strokes.filter((s) => s.operation !== "reference");
	if (!isAlike) return false;
	const [a, b] = [workOf(twin.drawing), workOf(drawing)];
	return areSame(a, b, ONE_DRAWING) && beginAlike(a, b, ONE_DRAWING);
}

/** The strokes that lie where a part was placed, back in the part's own frame. */
function strokesOf(
	drawing: ReadDrawing,
	part: PromisedPart,
	move: Move,
	stretch: Point,
): ReadStroke[] {
	const back = undone(move);
	const room = grown(part.box, AROUND);
	return drawing.strokes.flatMap((stroke) => {
		if (stroke.operation === "reference" || stroke.operation === null) return [];
		const path = moved(asMade(stroke.path, stretch), back);
		const box = extents(path);
		const isOwn =
			box.minX >= room.minX &&
			box.minY >= room.minY &&
			box.maxX <= room.maxX &&
			box.maxY <= room.maxY;
		return isOwn ? [{ ...stroke, path }] : [];
	});
}
