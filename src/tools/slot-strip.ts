import { type Mark, OFF_WORKING_EDGE } from "../drawing/index.js";
import { line } from "../geometry/index.js";
import { fretLine, isFanned, type Neck, widthAt } from "../neck/index.js";
import { type Problem, problem } from "../problem/index.js";
import { fixed, trimmed } from "../units/index.js";
import { nutLine } from "./board-outline.js";
import { type MarkerCentre, markerCentres } from "./marker-centres.js";
import { outOfRange } from "./size.js";
import { slotClaims, stripClaims } from "./slot-strip/claims.js";
import { fretList, type StripLabels, slotLabels } from "./slot-strip/labels.js";
import {
	CROSS,
	type Ends,
	endsOf,
	type Slot,
	slotFlanks,
	slotHole,
	slotsOf,
	stringDashes,
	stripOutline,
} from "./slot-strip/lay.js";
import { type Given, type StripSettings, settings } from "./slot-strip/settings.js";
import { type StripTitle, stripTitle } from "./slot-strip/title.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Strip that must remain beside the ends of cut slots, mm. */
const LEAST_RIM = OFF_WORKING_EDGE;

function defaults(_bench: Bench, given: Given): Partial<Given> {
	return { "edge-margin": given["edge-margin"] ?? (given.slots === "scored" ? 0 : 5) };
}

function refusals(bench: Bench, s: StripSettings): Problem[] {
	const { neck, wire } = bench;
	const found: Problem[] = [];
	const rim = s["edge-margin"] + neck.binding;
	if (s.slots === "line" && bench.machine.kind !== "laser") {
		found.push(problem("line-slots-without-laser", ["slots"], { kind: bench.machine.kind }));
	}
	if (s.slots !== "scored" && rim < LEAST_RIM) {
		found.push(problem("strip-falls-apart", ["edge-margin"], { rim, least: LEAST_RIM }));
	}
	const tooFar = neck.markers.find(({ fret }) => fret > neck.frets);
	if (tooFar) found.push(problem("marker-beyond", [], { fret: tooFar.fret, frets: neck.frets }));
	const narrow = slotsOf(neck).find(({ length }) => length <= wire.tangWidth);
	if (narrow) found.push(problem("slot-too-short", [], { fret: narrow.fret.n }));
	return tooFar ? found : [...found, ...spreadProblems(bench, s)];
}

/** Double markers whose crosses would leave the board. */
function spreadProblems(bench: Bench, s: StripSettings): Problem[] {
	const spread = s["double-marker-spread"];
	if (spread === undefined) return [];
	const beside = markerCentres(bench.neck, spread).flatMap(({ at, fret }) => {
		const most = widthAt(bench.neck, at.x - CROSS) - 2 * CROSS;
		return 2 * Math.abs(at.y) > most ? [{ fret, most }] : [];
	});
	const [first] = beside;
	if (!first) return [];
	const allowed = `at most ${trimmed(first.most, 3)} mm, the board at fret ${first.fret} less the crosses`;
	return [outOfRange("double-marker-spread", spread, allowed)];
}

function cross({ at, feature }: MarkerCentre): Mark[] {
	const arm = (dx: number, dy: number): Mark => ({
		operation: "score",
		path: line({ x: at.x - dx, y: at.y - dy }, { x: at.x + dx, y: at.y + dy }),
		feature,
	});
	return [arm(CROSS, 0), arm(0, CROSS)];
}

/** Everything scored: lines of the nut, the centre, the strings, the slots and the markers. */
function scores(
	bench: Bench,
	s: StripSettings,
	ends: Ends,
	slots: readonly Slot[],
	markers: readonly MarkerCentre[],
	title: StripTitle,
): Mark[] {
	const { neck } = bench;
	const score = (feature: string, [a, b]: ReturnType<typeof nutLine>): Mark => ({
		operation: "score",
		path: line(a, b),
		feature,
	});
	const centre = title.break
		? [
				[ends.from, title.break.from],
				[title.break.to, ends.to],
			]
		: [[ends.from, ends.to]];
	return [
		...centre.map(([from, to]) =>
			score("centre line", [
				{ x: from!, y: 0 },
				{ x: to!, y: 0 },
			]),
		),
		...(neck.zeroFret ? [] : [score("theoretical nut", nutLine(neck, 0))]),
		...(neck.nutShift === 0 ? [] : [score("actual nut face", nutLine(neck, neck.nutShift))]),
		...(s["string-lines"] && neck.strings ? stringDashes(neck) : []),
		...(s.slots === "scored"
			? slots.map(({ fret, bass, treble }) => score(`slot ${fret.n}`, [bass, treble]))
			: []),
		...markers.flatMap(cross),
	];
}

function notes(neck: Neck, s: StripSettings, texts: StripLabels): string[] {
	const lines = [
		"All distances run from the theoretical nut on the centre line; none is chained from fret to fret.",
	];
	if (neck.nutShift !== 0) {
		lines.push(
			`The nut's actual face stands at ${fixed(neck.nutShift, 3)} mm: lay that line on it, not the theoretical one.`,
		);
	}
	if (isFanned(neck)) {
		lines.push(
			"Fanned frets: the numbers at the slots are distances on the centre line; those along the outer strings stand in the manifest and in the fret table.",
		);
	}
	if (neck.binding > 0) {
		lines.push(
			`Slots end ${fixed(neck.binding, 3)} mm inside the edge, blind under the binding; the crown runs over it. Both lengths stand in the fret table.`,
		);
	}
	if (s.slots === "tang") lines.push("The slots are as wide as the wire's tang.");
	if (s.slots === "line") {
		lines.push(
			"Each slot is one cut, as wide as the machine's beam makes it: it shows the place, and guides a knife or a thin saw.",
		);
	}
	if (texts.unnumbered.length > 0) {
		lines.push(`No room for the number at ${fretList(neck, texts.unnumbered)}.`);
	}
	if (texts.unmeasured.length > 0) {
		lines.push(`No room for the distance at ${fretList(neck, texts.unmeasured)}.`);
	}
	return lines;
}

function build(bench: Bench, given: Given, name: string): Built {
	const s = given as StripSettings;
	const { neck } = bench;
	const problems = refusals(bench, s);
	if (problems.length > 0) return { parts: [], problems };

	const slots = slotsOf(neck);
	const ends = endsOf(neck, slots, s);
	const markers = markerCentres(neck, s["double-marker-spread"]);
	const texts = slotLabels(bench, slots, s, markers);
	const title = stripTitle(bench, ends, s);
	const labels = [...title.labels, ...texts.labels];
	const holes = s.slots === "tang" ? slots : [];
	const cuts = s.slots === "scored" ? [] : slots;
	const lastFret = fretLine(neck, neck.frets).x;
	const part = {
		name,
		tool: "slot-strip",
		title: "Fret-slot strip",
		stock: bench.stock,
		marks: [
			...scores(bench, s, ends, slots, markers, title),
			...labels.flatMap((l) => l.marks),
			...cuts.map(
				(slot): Mark => ({
					operation: "cut",
					path:
						s.slots === "tang"
							? slotHole(slot, bench.wire.tangWidth)
							: line(slot.bass, slot.treble),
					feature: `slot ${slot.fret.n}`,
				}),
			),
			{
				operation: "cut" as const,
				path: stripOutline(neck, ends, s["edge-margin"]),
				feature: "outline",
			},
		],
		workingEdge: "the slots and the nut line",
		working: holes.flatMap((slot) => slotFlanks(slot, bench.wire.tangWidth)),
		claims: [
			...slotClaims(bench, slots, s),
			...stripClaims(bench, ends, s, markers, lastFret),
			...labels.map((l) => l.claim),
		],
		notes: notes(neck, s, texts),
	};
	return { parts: [part], problems: [] };
}

export const slotStrip = tool({
	id: "slot-strip",
	title: "Fret-slot strip",
	purpose:
		"Shows where every slot, marker and string lies on this board. Lay its nut line on the nut end of the board and its centre line on the board's, then mark the slots through or saw along them.",
	settings,
	defaults,
	build,
});
