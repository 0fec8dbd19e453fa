import { making } from "../job-text.js";
import { type BadJob, bad } from "./bad-job.js";

const FANNED = "scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}";
const rocker = (settings: string) => making(`fret-rocker: ${settings}`);
const crowns = (settings: string) => making(`crown-gauge: ${settings}`);
const indexing = (settings: string) => making(`indexing-strip: ${settings}`);
const mask = (settings: string) =>
	making(`board-mask: {stock: {material: steel, thickness: 0.3 mm}, ${settings}}`);
const guide = (settings: string) =>
	making(`marker-guide: ${settings}`).replace(
		"  radius:",
		"  markers: [3, {12: double}, 15]\n  radius:",
	);

export const TOOLS_SCALE: readonly BadJob[] = [
	bad(
		"a rocker for two frets",
		making("fret-rocker").replace("frets: 22", "frets: 2"),
		"too-few-frets-to-rock",
		"fret-rocker",
		"2 frets",
		"3 frets or more",
	),
	bad(
		"a rocker whose ends have no room between the crowns",
		rocker("{end-clearance: 2.9 mm}")
			.replace("frets: 22", "frets: 30")
			.replace("crown-width: 2.7", "crown-width: 5"),
		"three-frets-too-close",
		"2.9 mm",
		"frets 27 to 29",
		"end-clearance",
	),
	bad(
		"a crown gauge for frets with no room for its feet between them",
		making("crown-gauge").replace("frets: 22", "frets: 60"),
		"no-room-for-feet",
		"crown-gauge",
		"frets 59 and 60",
		"2 mm",
	),
	bad(
		"a notch for crowns higher than the wire",
		crowns("{crown-heights: [1.2, 1.6 mm]}"),
		"notch-above-wire",
		"1.6 mm]",
		"1.6 mm",
		"at most 1.5 mm",
	),
	bad(
		"two notches of one height",
		crowns("{crown-heights: [1.3 mm, 1 mm, 1.29 mm]}"),
		"notches-alike",
		"[1.3",
		"1.29 mm and 1.3 mm",
		"0.02 mm",
	),
	bad(
		"an indexing strip for fanned frets",
		making("indexing-strip").replace("scale: 648 mm", FANNED),
		"fanned-in-a-mitre-box",
		"indexing-strip",
		"slot-strip",
	),
	bad(
		"notches of an indexing strip with nearly nothing between",
		indexing("{pin: 10 mm}"),
		"index-land-too-narrow",
		"10 mm",
		"fret 21 and fret 22",
		"1.5 mm",
	),
	bad(
		"an indexing strip that is too low",
		indexing("{strip-height: 14 mm}"),
		"index-strip-too-low",
		"14 mm",
		"14 mm",
		"strip-height",
	),
	bad(
		"notches that do not reach the pin's middle",
		indexing("{pin: 6 mm, notch-depth: 2.5 mm}"),
		"notch-below-pin",
		"2.5 mm",
		"2.5 mm",
		"3 mm",
	),
	bad(
		"a mask of a sheet that does not bend",
		making("board-mask"),
		"mask-too-thick",
		"board-mask",
		"3 mm",
		"0.5 mm",
	),
	bad(
		"a mask that would tear between two windows",
		mask("crown-clearance: 2.9 mm").replace("frets: 22", "frets: 30"),
		"mask-land-too-narrow",
		"2.9 mm",
		"fret 29 and fret 30",
		"1.5 mm",
	),
	bad(
		"a mask in more pieces than it has joints for",
		mask("pieces: 5").replace("frets: 22", "frets: 3"),
		"mask-seams",
		"5}\n",
		"pieces: 3",
	),
	bad(
		"a drill guide without markers",
		making("marker-guide"),
		"guide-needs-markers",
		"marker-guide",
		"neck: markers: [3, 5, 7, 9, {12: double}]",
	),
	bad(
		"a drill guide at a fret that has no marker",
		guide("{markers-at: [12, 13]}"),
		"no-marker-at-fret",
		"[12, 13",
		"fret 13",
		"3, 12, 15",
	),
	bad(
		"a drill as wide as the wood between two crowns",
		guide("{drill: 12.6 mm, double-marker-spread: 25}"),
		"drill-meets-crown",
		"12.6 mm",
		"marker 15",
		"12.501 mm",
		"0.5 mm",
	),
	bad(
		"drilled holes at the board's edge",
		guide("{double-marker-spread: 44, drill: 5 mm}"),
		"guide-hole-at-edge",
		"5 mm}",
		"marker 12",
		"3 mm",
		"side",
	),
	bad(
		"drilled holes that meet",
		guide("{double-marker-spread: 7, drill: 5 mm}"),
		"guide-holes-too-near",
		"5 mm}",
		"marker 12 bass and marker 12 treble",
		"1.9 mm",
	),
];
