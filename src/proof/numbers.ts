/**
 * Numbers of findings, by which people speak of them; a number is never given twice, and new
 * findings take new ones. 1xx: reading the file; 2xx: what no claim says; 3xx: claims.
 */
const NUMBERS: Readonly<Record<string, number>> = {
	"drawing-missing": 101,
	"drawing-too-large": 102,
	unreadable: 103,
	truncated: 104,
	"nothing-drawn": 105,
	"not-a-number": 106,
	"no-length": 107,
	curve: 108,
	"not-rigid": 109,
	"not-read": 110,
	"not-shown": 111,
	"text-lost": 112,
	"svg-size": 121,
	"svg-no-size": 122,
	"dxf-no-unit": 131,
	"dxf-inch": 132,
	"dxf-unit": 133,
	"dxf-measurement": 134,
	"dxf-count": 135,
	"dxf-unended": 136,
	"file-changed": 141,
	"part-not-found": 142,
	"unit-slip": 201,
	mirrored: 202,
	"layer-unknown": 203,
	"count-differs": 204,
	"contour-open": 211,
	"contour-joined": 212,
	"contour-crosses-itself": 213,
	"cuts-cross": 214,
	doubled: 215,
	"path-too-short": 216,
	"outside-page": 221,
	"outside-bed": 222,
	"parts-too-near": 223,
	"start-on-working-edge": 224,
	"outline-differs": 231,
	"outline-length": 232,
	"line-differs": 233,
	"moved-as-a-whole": 234,
	"pieces-joined": 235,
	"page-count": 241,
	"page-turned": 242,
	"page-bare": 243,
	"page-size": 244,
	"page-scale": 245,
	"page-moved": 246,
	"page-order": 247,
	"rule-missing": 251,
	"rule-wrong": 252,
	"cross-missing": 253,
	"cross-moved": 254,
	"outside-window": 255,
	"strays-on-page": 256,
	"pages-differ": 257,
	"claim-failed": 301,
	"feature-missing": 302,
	"label-wrong": 303,
	"not-round": 304,
	"off-place": 305,
	"font-not-given": 306,
};

/** The number of a finding; null for a problem that is none, a file that cannot be read. */
export function findingNumber(code: string): number | null {
	return Object.hasOwn(NUMBERS, code) ? NUMBERS[code]! : null;
}

/** All codes that have a number. */
export function numberedCodes(): string[] {
	return Object.keys(NUMBERS);
}
