import type { Pens, Sheet } from "../drawing/index.js";
import { checkPens, operationsOf, strokeExtents, strokesOf } from "./drawn.js";
import { nearestIndex } from "./dxf-colour.js";
import { type DxfFlavour, layerOf, noteEntity, strokeEntities } from "./dxf-entities.js";
import type { Layer } from "./dxf-header.js";
import { documentR12 } from "./dxf-r12.js";
import { documentR2000 } from "./dxf-r2000.js";
import { textOf } from "./dxf-tags.js";

export type { DxfFlavour };

/**
 * A sheet as DXF in millimetres, y up, in the parts' own coordinates.
 *
 * One layer per operation used: REFERENCE, TAB, SCORE, ENGRAVE, CUT; colour by layer, the nearest
 * of the colour index to the operation's pen. Arcs stay arcs. Notes are TEXT on REFERENCE,
 * ASCII with \U+XXXX. $EXTMIN and $EXTMAX are the exact box of all paths, texts left out.
 * Nine decimals (bulges fifteen), CRLF; handles are counted within the document.
 *
 * @throws RangeError on NaN, infinities, pieces without length, marks outside the sheet, a
 *   sheet without marks, notes without text or too long for the version, colours that are not
 *   #rrggbb, and, loose, arcs of more than a kilometre in radius
 * @example writeDxf(sheet, pens, "r12") // "0\r\nSECTION\r\n2\r\nHEADER\r\n9\r\n$ACADVER\r\n1\r\nAC1009\r\n…"
 */
export function writeDxf(sheet: Sheet, pens: Pens, flavour: DxfFlavour): string {
	checkPens(pens);
	const strokes = strokesOf(sheet);
	const layers: Layer[] = [
		{ name: "0", colour: 7 },
		...operationsOf(sheet, strokes).map((operation) => ({
			name: layerOf(operation),
			colour: nearestIndex(pens[operation].colour),
		})),
	];
	const contents = {
		layers,
		entities: [
			...strokes.flatMap((stroke) => strokeEntities(stroke, flavour)),
			...sheet.notes.map((note) => noteEntity(note, flavour)),
		],
		drawn: strokeExtents(strokes),
		shown: sheet.size,
	};
	return textOf(flavour === "r2000" ? documentR2000(contents) : documentR12(contents));
}
