import { trimmed } from "../../units/index.js";
import { at, fine, mm, say, type Wording, w } from "./say.js";

const ANEW = "Do not use the page: write it anew.";

/** What is found in written pages of paper. */
export const PAPER_PROOF: Wording = {
	"page-turned": (f) =>
		w(
			`page ${say(f.page)} is shown turned by ${say(f.degrees)}°`,
			"Printers fit turned pages to their paper: save it unturned, or write it anew.",
		),
	"page-count": (f) =>
		w(
			`the file has ${f.found === 1 ? "one page" : `${say(f.found)} pages`}, not ${say(f.promised)}`,
			"Pages were added or left out: write it anew; no part was measured.",
		),
	"page-bare": (f) =>
		w(
			`page ${say(f.page)} has no paths`,
			"What it showed was removed, or turned into text or pictures: write it anew.",
		),
	"page-size": (f) =>
		w(
			`page ${say(f.page)} is ${fine(f.width)} x ${fine(f.height)} mm, not ${fine(f.promisedWidth)} x ${fine(f.promisedHeight)} mm`,
			"Printers scale a page that is not their paper's size: write it anew for the paper at hand.",
		),
	"page-scale": (f) =>
		w(
			`page ${say(f.page)} is made ${trimmed(Number(f.factor), 6)} of what it should be ${f.axis === "across" ? "across the page" : "along the page"}: all its rules say so`,
			"It was scaled after it was written, or its correction for the printer is not the one promised. Write it anew; no part was measured.",
		),
	"page-moved": (f) =>
		w(
			`all of page ${say(f.page)} lies ${fine(f.x)} mm across and ${fine(f.y)} mm along beside its place`,
			"It would not fit its neighbours: write it anew; no part was measured.",
		),
	"page-order": (f) =>
		w(
			`page ${say(f.page)} shows what page ${say(f.other)} should show`,
			"Pages were exchanged: put them back in order, or write the file anew.",
		),
	"rule-missing": (f) =>
		w(
			`page ${say(f.page)} lacks its rule of ${mm(f.length)}${at(f)}`,
			"Nobody could tell whether it was printed at its size: write it anew.",
		),
	"rule-wrong": (f) =>
		w(
			`a rule of ${mm(f.length)} on page ${say(f.page)} is ${fine(f.measured)} mm long and ends up to ${fine(f.by)} mm beside its place${at(f)}`,
			ANEW,
		),
	"cross-missing": (f) =>
		w(
			`page ${say(f.page)} lacks the cross${at(f)}`,
			"Its neighbours are laid to it: write the page anew.",
		),
	"cross-moved": (f) =>
		w(
			`a cross on page ${say(f.page)} lies ${fine(f.by)} mm beside its place${at(f)}`,
			"Pages laid together by it would be off by as much: write it anew.",
		),
	"outside-window": (f) =>
		w(
			`page ${say(f.page)} shows more of its part than it should: ${say(f.count)} ${f.count === 1 ? "path reaches" : "paths reach"} up to ${fine(f.by)} mm beyond it${at(f)}`,
			ANEW,
		),
	"strays-on-page": (f) =>
		w(
			`page ${say(f.page)} shows no part, but has paths to cut, score or engrave (${say(f.count)})${at(f)}`,
			"Somebody may take them for a template: remove them, or write the page anew.",
		),
	"pages-differ": (f) =>
		w(
			`pages ${say(f.page)} and ${say(f.other)} show a ${say(f.operation)} up to ${fine(f.by)} mm apart where both show it, on page ${say(f.page)}${at(f)}`,
			"One of them was changed: write both anew.",
		),
};
