import type { OutFile, Pens, Sheet } from "../drawing/index.js";
import { type DxfFlavour, writeDxf, writeSvg } from "../writers/index.js";
import type { Formats } from "./formats.js";

/** A drawing in every format asked for. */
export function writeAll(
	sheet: Sheet,
	pens: Pens,
	formats: Formats["drawings"],
	dxf: DxfFlavour,
): OutFile[] {
	return formats.map((format): OutFile => {
		const text = format === "svg" ? writeSvg(sheet, pens) : writeDxf(sheet, pens, dxf);
		return {
			name: `${sheet.name}.${format}`,
			format,
			bytes: new TextEncoder().encode(text),
			sheet: sheet.name,
			parts: sheet.placed.map(({ part }) => part.name),
		};
	});
}
