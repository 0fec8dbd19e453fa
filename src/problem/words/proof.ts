import type { Fact } from "../problem.js";
import { at, type Facts, fine, mm, say, type Wording, w } from "./say.js";

/** How often a finding was made, if more than once. */
function times({ count }: Facts): string {
	return Number(count) > 1 ? `, ${say(count)} times in the file` : "";
}

/** The part that a path lies on: " of radius-gauge". */
function of({ part }: Facts): string {
	return part ? ` of ${say(part)}` : "";
}

/** A measured figure with its unit: angles in degrees, all else in millimetres. */
function figure({ kind }: Facts, fact: Fact | undefined): string {
	if (kind !== "angle") return `${fine(fact)} mm`;
	return `${fine((Number(fact) * 180) / Math.PI)}°`;
}

/** A factor, below a half as a share of one: "25.4", "1/25.4". */
function ratio(factor: Fact | undefined): string {
	return Number(factor) < 0.5 ? `1/${say(1 / Number(factor))}` : say(factor);
}

/** How a drawing may have come to be so many times as large. */
function slipCause(factor: Fact | undefined): string {
	if (factor === 10 || factor === 0.1)
		return "Centimetres and millimetres were taken for each other.";
	return factor === 96 / 72 || factor === 72 / 96
		? "72 and 96 dots to the inch were taken for each other."
		: "Inches and millimetres were taken for each other.";
}

/** What is found in written files. */
export const PROOF: Wording = {
	"part-not-found": (f) =>
		w(
			`${say(f.part)} was not found in the file`,
			`It may hold another part, be drawn in another unit or for another kerf than ${fine(f.kerf)} mm, or have lost its cut contours.`,
		),
	"outline-differs": (f) =>
		w(
			`${say(f.part)} leaves its outline at ${fine(f.x)}, ${fine(f.y)} mm from its own origin by ${fine(f.by)} mm, where ${fine(f.most)} mm are allowed`,
			"Do not cut it: write the file anew, or undo what was changed there.",
		),
	"line-differs": (f) =>
		w(
			`a ${f.operation === "score" ? "scored line" : "single cut"} of ${say(f.part)} is off by ${fine(f.by)} mm at ${fine(f.x)}, ${fine(f.y)} mm from the part's own origin`,
			"It was moved, turned, shortened or added. Do not cut it: write the file anew, or undo that.",
		),
	"moved-as-a-whole": (f) =>
		w(
			`${say(f.part)} lies ${fine(f.x)}, ${fine(f.y)} mm away and turned by ${fine(f.turn)} degrees: it was measured where it lies`,
			"That does no harm unless the place on the bed matters, or the axes are corrected for a stretch.",
		),
	"pieces-joined": (f) =>
		w(
			`the cuts are in ${say(f.pieces)} pieces, which were joined into ${say(f.joined)} paths to be measured`,
			"Some cutting programs start anew at every piece: join them there, or write the file anew.",
		),
	"outline-length": (f) =>
		w(
			`${say(f.part)} has contours ${fine(f.measured)} mm long where ${fine(f.nominal)} mm are promised`,
			"Do not cut it: something of its outline is missing or drawn twice. Write the file anew.",
		),
	"nothing-drawn": () =>
		w("no path could be read from the file", "It holds nothing to cut: write it anew."),
	"unit-slip": (f) =>
		w(
			`what is cut measures ${say(f.width)} x ${mm(f.height)} and should measure ${say(f.promisedWidth)} x ${mm(f.promisedHeight)}: ${ratio(f.factor)} times that`,
			`${slipCause(f.factor)} Save the drawing again in millimetres at 1:1, and do not cut this one.`,
		),
	mirrored: (f) =>
		w(
			`the drawing is mirrored along ${say(f.axis)}`,
			"Mirror it back, or write it anew: labels would read backwards and what is not symmetric would lie wrong.",
		),
	"layer-unknown": (f) =>
		w(
			f.layer
				? `paths on the layer "${say(f.layer)}", which no template has: ${say(f.count)}, the first${at(f)}`
				: `paths on no layer: ${say(f.count)}, the first${at(f)}`,
			"Move them to cut, score, engrave, tab or reference, or remove them.",
		),
	"count-differs": (f) =>
		w(
			`paths to ${say(f.operation)}: ${say(f.found)} instead of ${say(f.promised)}${
				(f.parts as readonly string[]).length > 0 ? `, on ${say(f.parts)}` : ""
			}${f.strays ? `; ${say(f.strays)} on no part` : ""}`,
			"Paths were added, removed, split or moved to another layer: write the file anew, or undo that.",
		),
	"contour-open": (f) =>
		w(
			`open cuts on ${say(f.part)}: ${say(f.found)} instead of ${say(f.promised)}; one ends${at(f)}, ${mm(f.gap)} from where it begins`,
			"Close it, or write the file anew: what is not cut all around stays in its sheet.",
		),
	"contour-joined": (f) =>
		w(
			`open cuts on ${say(f.part)}: ${say(f.found)} instead of ${say(f.promised)}`,
			"Tabs or single lines were closed or joined: write the file anew, or part them again.",
		),
	"contour-crosses-itself": (f) =>
		w(
			`a cut${of(f)} crosses itself${at(f)}${times(f)}`,
			"Mend its corners there: what lies inside of it is not clear.",
		),
	"cuts-cross": (f) =>
		w(
			`cuts${of(f)} cross each other${at(f)}${times(f)}`,
			"Move them apart, or write the file anew: they would cut into the part.",
		),
	doubled: (f) =>
		w(
			`a path to ${say(f.operation)}${of(f)} lies on another${at(f)}, along ${mm(f.length)}${times(f)}`,
			"It would be worked twice: remove one of them.",
		),
	"path-too-short": (f) =>
		w(
			`a path on ${f.layer ? say(f.layer) : "no layer"} is only ${mm(f.length)} long,${at(f)}${times(f)}`,
			"Some machines stop or burn at such a point: remove it.",
		),
	"outside-page": (f) =>
		w(
			`the drawing reaches ${mm(f.by)} out of its page${at(f)}${times(f)}`,
			"What lies outside is not shown and may not be cut: move it back, or make the page larger.",
		),
	"outside-bed": (f) =>
		w(
			`paths${of(f)} reach ${mm(f.by)} out of the bed or into its margin of ${mm(f.margin)}${at(f)}${times(f)}`,
			"Move them back to where the machine can go.",
		),
	"parts-too-near": (f) =>
		w(
			`${say(f.part)} and ${say(f.other)} are ${mm(f.apart)} apart${at(f)}`,
			`Move them apart: the bed asks for ${mm(f.spacing)} between parts.`,
		),
	"start-on-working-edge": (f) =>
		w(
			`a cut${of(f)} begins ${mm(f.clear)} from a working edge${at(f)}${times(f)}`,
			`A start leaves a mark: begin it ${mm(f.least)} away, or as far as the contour lets you.`,
		),
	"claim-failed": (f) =>
		w(
			`${say(f.part)}: the ${say(f.kind)} of ${say(f.feature)} (${say(f.claim)}) is ${figure(f, f.measured)} instead of ${figure(f, f.nominal)}: off by ${figure(f, f.deviation)}, where ${figure(f, f.tolerance)} is allowed`,
			"Do not cut it: write the file anew, or undo what was changed there.",
		),
	"feature-missing": (f) =>
		w(
			`${say(f.part)}: no ${say(f.feature)} is found near its place, so that its ${say(f.kind)} (${say(f.claim)}) cannot be measured`,
			"Write the file anew, or undo what was moved or removed.",
		),
	"label-wrong": (f) =>
		w(
			`${say(f.part)}: the letters "${say(f.text)}" are not at their place, or not they alone (${say(f.claim)})`,
			"A wrong number misleads like a wrong size: write the file anew.",
		),
	"not-round": (f) =>
		w(
			`${say(f.part)}: ${say(f.feature)} leaves its circle by ${fine(f.by)} mm (${say(f.claim)})`,
			"It was redrawn as chords or another curve: save it with arcs, or write the file anew.",
		),
	"off-place": (f) =>
		w(
			`${say(f.part)}: the middle of ${say(f.feature)} lies ${fine(f.by)} mm beside its place (${say(f.claim)})`,
			"Move it back, or write the file anew.",
		),
	"font-not-given": (f) =>
		w(
			`${say(f.part)}: labels in the lettering "${say(f.font)}" (${say(f.count)}) were not compared`,
			"Give the same font file, or read the labels yourself.",
		),
	"drawing-too-large": (f) =>
		w(
			`the drawing has more than ${say(f.limit)} ${say(f.of)} and was not read to its end`,
			"A drawing of templates has a small share of that: check that it is the right file.",
		),
	unreadable: (f) =>
		w(
			`the drawing cannot be read: ${say(f.reason)}`,
			"Save it again as plain SVG, as DXF in text form, or a page as PDF; or write it anew.",
		),
	truncated: (f) =>
		w(
			`the drawing is cut short or damaged at ${say(f.place)}`,
			"Copy or save it again: the rest of it is missing.",
		),
	"not-a-number": (f) =>
		w(
			`"${say(f.given)}" in ${say(f.place)} is no number that a drawing can hold${times(f)}`,
			"What it belongs to was left out; mend it in the program that wrote the file.",
		),
	"no-length": (f) =>
		w(
			`${say(f.place)} has a piece without length${times(f)}`,
			"Some machines stop or burn at such a point: remove points that lie over each other.",
		),
	curve: (f) =>
		w(
			`${say(f.place)} is a curve that is no arc of a circle${times(f)}`,
			"camber draws lines and arcs only: the program that saved the file has changed them. It is measured as lines.",
		),
	"not-rigid": (f) =>
		w(
			`${say(f.place)} is scaled or slanted by a transform${times(f)}`,
			"It is measured as it is shown; move and turn templates only.",
		),
	"not-read": (f) =>
		w(
			`${say(f.kind)} is not read${times(f)}`,
			"What it shows was not measured: turn it into plain paths, or remove it.",
		),
	"not-shown": (f) =>
		w(
			`${say(f.place)} is hidden and was not measured${times(f)}`,
			"Some machines cut what is hidden: remove it.",
		),
	"text-lost": (f) =>
		w(
			`"${say(f.text)}" on ${say(f.layer)} is text, not paths${times(f)}`,
			"Cutting programs drop text: turn it into paths, or move it to the layer reference.",
		),
	"svg-size": (f) =>
		w(
			f.x === f.y
				? `one unit of the drawing is ${say(f.x)} mm`
				: `one unit of the drawing is ${say(f.x)} mm along x and ${say(f.y)} mm along y`,
			"Programs that take a unit for a millimetre cut it at another size: set width, height and viewBox to the same millimetres.",
		),
	"svg-no-size": (f) =>
		w(
			`the drawing does not say its size; a unit was taken for ${mm(f.factor)}, 96 to the inch`,
			"Give its svg element a width and a height in mm.",
		),
	"dxf-no-unit": () =>
		w(
			"the drawing does not say its unit; millimetres were taken",
			"Save it with millimetres for its unit ($INSUNITS 4), or choose them when it is opened.",
		),
	"dxf-inch": () =>
		w(
			"the drawing is in inches",
			"It was read as such; choose inches wherever it is opened, or save it in millimetres.",
		),
	"dxf-unit": (f) =>
		w(
			`one unit of the drawing is ${say(f.factor)} mm`,
			"It was read as such; save it in millimetres, which every program asks for first.",
		),
	"dxf-measurement": (f) =>
		w(
			`the drawing contradicts itself: $INSUNITS is ${say(f.units)}, $MEASUREMENT ${say(f.measurement)}`,
			"Programs go by the one or the other, 25.4 times apart: save it in millimetres (4 and 1).",
		),
	"dxf-count": (f) =>
		w(
			`${say(f.place)} says that it has ${say(f.given)} points, and has ${say(f.found)}${times(f)}`,
			"Some programs refuse the file: save it again.",
		),
	"dxf-unended": (f) =>
		w(
			`${say(f.place)} is not ended by SEQEND${times(f)}`,
			"Some programs hang or drop what follows: save it again.",
		),
};
