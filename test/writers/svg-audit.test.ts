import { describe, expect, it } from "vitest";
import { writeSvg } from "../../src/writers/index.js";
import { expectedOf, handDrawing, PENS } from "../support/drawings.js";
import { auditSvg } from "../support/read-svg.js";

const SHEET = handDrawing();
const EXPECTED = expectedOf(SHEET);
const GOOD = writeSvg(SHEET, PENS);

/** [what is done, pattern, replacement, the rule that must see it] */
const DAMAGES: readonly (readonly [string, string | RegExp, string, string])[] = [
	["a tag that is not closed", "</g>", "", "unreadable"],
	["a control character", "56 mm", "56\u0001mm", "unreadable"],
	["NaN", /M -?\d+\.\d+/, "M NaN", "unreadable"],
	["a width in inches", /width="[\d.]+mm"/, 'width="3.000000in"', "size"],
	["a width 25.4 times too large", /width="([\d.]+)mm"/, 'width="2540.000000mm"', "size"],
	["a viewBox of other decimals", /viewBox="\S+/, 'viewBox="0', "viewBox"],
	["a line width with a unit", 'stroke-width="0.100000"', 'stroke-width="0.1mm"', "stroke-width"],
	["a filled group", 'fill="none"', 'fill="#000000"', "fill"],
	["a stroke without colour", 'stroke="#c2185b"', 'stroke="none"', "stroke"],
	[
		"groups out of order",
		/(<g id="score"[\s\S]*?<\/g>\n)(<g id="engrave"[\s\S]*?<\/g>\n)/,
		"$2$1",
		"groups",
	],
	["a class that is not the id", 'class="cut"', 'class="score"', "groups"],
	["no title", /<title>.*<\/title>\n/, "", "title"],
	["a stray element", "</svg>", '<rect width="1"/></svg>', "stray"],
	["a stray element in a group", "</g>", '<circle r="1"/></g>', "stray"],
	["three decimals", /L (-?\d+\.\d{3})\d{3}/, "L $1", "decimals"],
	["an open contour", / Z" data-feature="outline"/, '" data-feature="outline"', "open-contour"],
	["a repeated vertex", /(L [-\d.]+ [-\d.]+) /, "$1 $1 ", "repeated-vertex"],
	["a flipped sweep", /(A 253\.\S+ \S+ 0 0) 0/, "$1 1", "geometry"],
	["a large-arc flag", /(A 253\.\S+ \S+ 0) 0/, "$1 1", "long-arc"],
	["an arc made straight", /A 253\.\S+ \S+ 0 0 0/, "L", "geometry"],
	["a vertex 2e-6 mm off", "56.500000 -0.250000", "56.500002 -0.250000", "geometry"],
	["a radius 2e-6 mm off", /A 3\.000000 3\.000000/, "A 3.000002 3.000002", "radius"],
	[
		"a contour that crosses itself",
		"56.500000 -18.250000",
		"-9.500000 -18.250000",
		"self-crossing",
	],
	["a contour lost", /<path [^>]*data-feature="hole"[^>]*>\n/, "", "count"],
	["a contour too many", /(<path [^>]*data-feature="slot 7"[^>]*>\n)/, "$1$1", "count"],
	["a feature renamed", 'data-feature="slot 7"', 'data-feature="slot 6"', "feature"],
	["a note lost", /<text .*<\/text>\n/, "", "count"],
	["a note moved", "translate(20.000000", "translate(21.000000", "note"],
	["a note of another width", 'textLength="12.000000"', 'textLength="14.000000"', "note"],
	["a font size with a unit", /font-size="[\d.]+"/, 'font-size="3mm"', "note"],
];

describe("the audit of an SVG file", () => {
	it("finds nothing in a good file", () => {
		expect(auditSvg(GOOD, EXPECTED)).toEqual([]);
	});

	it.each(DAMAGES)("finds %s", (_what, pattern, by, rule) => {
		const damaged = GOOD.replace(pattern, by);
		expect(damaged).not.toBe(GOOD);
		expect(auditSvg(damaged, EXPECTED).map((f) => f.rule)).toContain(rule);
	});
});
