import { OFF_WORKING_EDGE, type Part } from "../drawing/index.js";
import { stationProblems, stationText } from "../fields/index.js";
import { crossingOf, pointAlong, radiusAt, stringLines } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { inchLabel, trimmed } from "../units/index.js";
import { hangingHole } from "./hanging-hole.js";
import { heightToFit, label } from "./label.js";
import { outOfRange } from "./size.js";
import { archNotes } from "./string-arch-gauge/notes.js";
import { type ArchSettings, type Given, settings } from "./string-arch-gauge/settings.js";
import {
	archClaims,
	archOutline,
	arcPath,
	HANDLE_DROP,
	shapeOf,
} from "./string-arch-gauge/shape.js";
import { type Arch, archThrough, undersides } from "./string-arch-gauge/undersides.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Clearance of strings over the crowns' level at a nut, mm (common practice, no source). */
const USUAL_CLEARANCE = 0.1;
/** Fret at which action is measured (common practice, no source). */
const ACTION_FRET = 12;
/** Letters of the handle, mm. */
const LETTERS = 2.5;
/** Between letters, hole and the ends of the handle, mm. */
const BESIDE_LETTERS = 3;
/** Above this an arch is no arch that a gauge could show, mm. */
const FLATTEST = 10_000;
/** Least of the handle over and under its letters or its hole, mm. */
const RIM = 1.5;

function defaults({ neck }: Bench, given: Given): Partial<Given> {
	return {
		"arch-at": given["arch-at"] ?? { kind: "saddle" },
		"action-fret": given["action-fret"] ?? Math.min(ACTION_FRET, neck.frets),
		"nut-clearance": given["nut-clearance"] ?? (neck.zeroFret ? 0 : USUAL_CLEARANCE),
	};
}

/** What the neck lacks, before any height is reckoned. */
function neckProblems({ neck, wire }: Bench, s: ArchSettings): Problem[] {
	if (neck.radius === "flat") return [problem("flat-board-arch", [])];
	const lines = neck.strings ? stringLines(neck) : [];
	if (lines.length < 3) return [problem("arch-needs-strings", [], { count: lines.length })];
	const fret = s["action-fret"];
	if (fret > neck.frets) {
		return [problem("action-beyond", ["action-fret"], { fret, frets: neck.frets })];
	}
	const off = stationProblems(neck, s["arch-at"], ["arch-at"]);
	if (off.length > 0) return off;
	const stands = lines.flatMap((line) => [
		{ place: "the nut's face", at: pointAlong(line, neck.nutShift) },
		{ place: `fret ${fret}`, at: crossingOf(neck, line, fret).at },
	]);
	const beyond = stands.find(
		({ at }) => !(radiusAt(neck, at.x)! + wire.crownHeight > Math.abs(at.y)),
	);
	if (!beyond) return [];
	const facts = { place: beyond.place, radius: radiusAt(neck, beyond.at.x)! };
	return [problem("radius-vanishes", [], facts)];
}

function archProblems({ radius, spread }: Arch, s: ArchSettings): Problem[] {
	if (!(radius > 0 && radius < FLATTEST)) {
		const facts = { place: stationText(s["arch-at"]), hollow: radius < 0 ? "yes" : "no" };
		return [problem("arch-not-round", ["arch-at"], facts)];
	}
	const most = Math.floor((radius - spread / 2) * 10 - 1e-9) / 10;
	if (s["head-margin"] <= most) return [];
	const allowed = `at most ${trimmed(most, 1)} mm on an arch this round`;
	return [outOfRange("head-margin", s["head-margin"], allowed)];
}

/** The handle: its letters beside the head, then its hole. */
function handleOf(bench: Bench, s: ArchSettings, arch: Arch, width: number) {
	const diameter = s["gauge-hole"] === "none" ? 0 : s["gauge-hole"];
	const { radius } = arch;
	const fit = `${inchLabel(radius)}   R ${trimmed(radius, 2)} mm   strings at ${stationText(s["arch-at"])}`;
	const text = [bench.job, fit].join("   ");
	const holeRoom = diameter > 0 ? diameter + 2 * BESIDE_LETTERS : BESIDE_LETTERS;
	const room = s["handle-length"] && s["handle-length"] - BESIDE_LETTERS - holeRoom;
	const wanted = bench.letters.width(text, LETTERS);
	const height = room === undefined ? LETTERS : heightToFit(bench.letters, text, room, LETTERS);
	if (!height) {
		const least = bench.letters.width(text, 1.8) + BESIDE_LETTERS + holeRoom;
		const allowed = `at least ${Math.ceil(least)} mm for its letters and its hole`;
		return outOfRange("handle-length", s["handle-length"]!, allowed);
	}
	const length = s["handle-length"] ?? Math.ceil(wanted + BESIDE_LETTERS + holeRoom - 1e-9);
	const shape = shapeOf(radius, width, s["head-height"], length);
	const high = -HANDLE_DROP - shape.bottom;
	const needed = Math.max(height * 1.3, diameter) + 2 * RIM;
	if (high < needed - 1e-9) {
		const least = Math.ceil((s["head-height"] + needed - high) * 10 - 1e-9) / 10;
		return outOfRange("head-height", s["head-height"], `at least ${trimmed(least, 1)} mm`);
	}
	const middle = (shape.bottom - HANDLE_DROP) / 2;
	const at = { x: width / 2 + OFF_WORKING_EDGE, y: middle - height / 2 };
	const holeAt = { x: shape.end - BESIDE_LETTERS - diameter / 2, y: middle };
	return {
		shape,
		letters: label(bench.letters, "arch", text, { at, height }),
		hole: hangingHole(bench, holeAt, diameter),
	};
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as ArchSettings;
	const refuse = (...problems: Problem[]): Built => ({ parts: [], problems });
	const lacking = neckProblems(bench, s);
	if (lacking.length > 0) return refuse(...lacking);
	const arch = archThrough(undersides(bench, s, s["arch-at"]));
	const unsound = archProblems(arch, s);
	if (unsound.length > 0) return refuse(...unsound);
	const width = arch.spread + 2 * s["head-margin"];
	const made = handleOf(bench, s, arch, width);
	if ("code" in made) return refuse(made);
	const { shape, letters, hole } = made;
	const part: Part = {
		name,
		tool: "string-arch-gauge",
		title: `String-arch gauge, ${inchLabel(arch.radius)}, at ${stationText(s["arch-at"])}`,
		stock: bench.stock,
		marks: [
			...letters.marks,
			...hole.marks,
			{ operation: "cut", path: archOutline(shape), feature: "outline" },
		],
		workingEdge: "the convex arc of the head",
		working: [arcPath(shape)],
		claims: [...archClaims(bench, shape), ...hole.claims, letters.claim],
		notes: archNotes(bench, s, arch),
	};
	return { parts: [part], problems: [] };
}

export const stringArchGauge = tool({
	id: "string-arch-gauge",
	title: "String-arch gauge",
	purpose:
		"Shows whether the strings lie on the arch that gives the wanted action, from the lowest to the highest. Slide its narrow head under the strings and raise it until it meets them: a string that it lifts, or that stays clear, is out.",
	settings,
	defaults,
	build,
});
