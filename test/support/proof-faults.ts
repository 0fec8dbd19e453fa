import type { Problem } from "../../src/problem/index.js";
import { readDxf, readSvg } from "../../src/proof/index.js";

const bytes = (text: string) => new TextEncoder().encode(text);

/** An SVG of 100 x 100 mm around some elements. */
export function svgText(inner: string, size = 'width="100mm" height="100mm"'): string {
	return `<svg xmlns="http://www.w3.org/2000/svg" ${size} viewBox="0 0 100 100">${inner}</svg>`;
}

/** What is read of an SVG of 100 x 100 mm around some elements. */
export function svgOf(inner: string, size?: string) {
	return readSvg(bytes(svgText(inner, size)));
}

/** Groups of a DXF, two to a line: "0 LINE\n8 CUT". */
function groups(text: string): string {
	return text
		.split("\n")
		.map((line) => line.trim())
		.filter((line) => line !== "")
		.map((line) => line.replace(/ |$/u, "\r\n"))
		.join("\r\n");
}

/** A DXF of some entities; the header's variables are given as groups too. */
export function dxfText(entities: string, header = "9 $INSUNITS\n70 4\n9 $MEASUREMENT\n70 1") {
	const text = `0 SECTION\n2 HEADER\n${header}\n0 ENDSEC\n0 SECTION\n2 ENTITIES\n${entities}\n0 ENDSEC\n0 EOF`;
	return `${groups(text)}\r\n`;
}

/** What is read of a DXF of some entities. */
export function dxfOf(entities: string, header?: string) {
	return readDxf(bytes(dxfText(entities, header)));
}

/** Some entities by the groups that matter. */
export const LINE = "0 LINE\n8 CUT\n10 0\n20 0\n11 10\n21 0";
export const POLYLINE =
	"0 POLYLINE\n8 CUT\n66 1\n70 1\n0 VERTEX\n10 0\n20 0\n0 VERTEX\n10 9\n20 0\n0 VERTEX\n10 9\n20 9";

/** What is found in bad files, every kind of fault once at least. */
export function problemsOfDrawings(): readonly Problem[] {
	const svgs = [
		svgText('<path d="M 0 0 L NaN 3"/><path d="M 1 1 L 1 1"/><path d="M 0 0 C 1 1 2 1 3 0"/>'),
		svgText('<g transform="scale(2)"><path d="M 0 0 L 1 1"/></g><use href="#a"/>'),
		svgText('<g style="display:none"><path d="M 0 0 L 1 1"/></g><text x="1" y="1">7</text>'),
		svgText('<text/><path d="M0 0 L Q"/><path d="M 0 0"/><text x="1" y="2">8</text>'),
		svgText("", 'width="50mm" height="50mm"'),
		svgText("", 'width="100mm" height="50mm"'),
		svgText("", 'width="100%"'),
		svgText("<g>").replace("</svg>", ""),
		"no drawing",
		"<".repeat(100_001),
	];
	const dxfs = [
		dxfText(`${LINE}\n0 SPLINE\n8 CUT\n0 SPLINE\n8 CUT`, ""),
		dxfText(LINE, "9 $INSUNITS\n70 1\n9 $MEASUREMENT\n70 1"),
		dxfText(LINE, "9 $INSUNITS\n70 5"),
		dxfText("0 LWPOLYLINE\n8 CUT\n90 3\n70 0\n10 0\n20 0\n10 5\n20 5"),
		dxfText(POLYLINE),
		dxfText(LINE).replace("EOF", ""),
	];
	return [
		...svgs.flatMap((text) => readSvg(bytes(text)).findings),
		...dxfs.flatMap((text) => readDxf(bytes(text)).findings),
	];
}
