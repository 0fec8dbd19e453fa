import type { Font } from "opentype.js";
import type { Path } from "../geometry/index.js";
import { contours, type OutlineCommand } from "./contour.js";
import { letteringOf } from "./face.js";
import type { Lettering } from "./lettering.js";

/**
 * Lettering in the outlines of a font file (OpenType, TrueType, WOFF): closed contours of lines
 * and arcs, outer ones counter-clockwise, holes clockwise. The font's kerning is kept;
 * ligatures and alternates are not used. Contours that overlap in the font stay apart.
 *
 * Capitals are `height` high by the top of the font's H.
 *
 * @param bytes - the font file
 * @param name - recorded in label claims, quoted in messages
 * @throws RangeError (as a rejection) if the bytes are no font, or one without a capital H
 */
export async function outlineLettering(
	bytes: ArrayBuffer | Uint8Array,
	name: string,
): Promise<Lettering> {
	const opentype = (await import("opentype.js")).default;
	let font: Font;
	let capital: number;
	try {
		const own = new Uint8Array(bytes).slice();
		refuseCutOff(own);
		font = opentype.parse(own.buffer);
		capital = font.charToGlyph("H").getBoundingBox().y2;
	} catch (fault) {
		throw new RangeError(`the font "${name}" cannot be read: ${reason(fault)}`);
	}
	if (!(capital > 0) || !(font.charToGlyphIndex("H") > 0)) {
		throw new RangeError(`the font "${name}" has no capital H to take the letter height from`);
	}
	const glyph = (sign: string) => font.charToGlyph(sign);
	const fitted = new Map<string, Path[]>();
	function drawn(sign: string, height: number): Path[] {
		const key = `${sign} ${height}`;
		const known = fitted.get(key);
		if (known) return known;
		const paths = contours(glyph(sign).path.commands as OutlineCommand[], height / capital);
		fitted.set(key, paths);
		return paths;
	}
	return letteringOf({
		name,
		has: (sign) => font.charToGlyphIndex(sign) > 0,
		advance: (sign) => (glyph(sign).advanceWidth ?? 0) / capital,
		kerning: (left, right) => font.getKerningValue(glyph(left), glyph(right)) / capital,
		drawn,
	});
}

function reason(fault: unknown): string {
	return fault instanceof Error ? fault.message.trim() : String(fault);
}

const TRUE_TYPE = 0x00010000;
const OPEN_TYPE_CFF = 0x4f54544f;

/**
 * A file that ends early parses here and there and draws wrong glyphs: every table must lie
 * within it (OpenType specification, "Organization of an OpenType font": table directory).
 */
function refuseCutOff(bytes: Uint8Array): void {
	const view = new DataView(bytes.buffer);
	if (bytes.length < 12) throw new RangeError("too short for a font file");
	const kind = view.getUint32(0);
	if (kind !== TRUE_TYPE && kind !== OPEN_TYPE_CFF) return;
	for (let i = 0; i < view.getUint16(4); i++) {
		const record = 12 + 16 * i;
		if (view.getUint32(record + 8) + view.getUint32(record + 12) > bytes.length) {
			throw new RangeError("the file is cut off");
		}
	}
}
