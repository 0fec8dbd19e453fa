import type { Lettering } from "./lettering.js";
import { outlineLettering } from "./outline.js";
import { strokeLettering } from "./stroke.js";

/** A font file and the name it goes by. */
export interface FontFile {
	readonly bytes: ArrayBuffer | Uint8Array;
	readonly name: string;
}

/**
 * The lettering of a job: that of its font file, or single strokes if it names none.
 *
 * @throws RangeError (as a rejection) if the font cannot be used
 */
export async function loadLettering(font: FontFile | undefined): Promise<Lettering> {
	return font ? outlineLettering(font.bytes, font.name) : strokeLettering();
}
