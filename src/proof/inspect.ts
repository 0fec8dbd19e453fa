import type { Lettering } from "../lettering/index.js";
import type { Problem } from "../problem/index.js";
import { contourFaults } from "./contours.js";
import { countFaults } from "./counts.js";
import { crossingFaults } from "./crossing-cuts.js";
import { startFaults } from "./cut-starts.js";
import { doubledFaults, doubledPairs } from "./doubled.js";
import { found } from "./found.js";
import { laidStrokes } from "./laid-strokes.js";
import { MOST_PIECES, pathWeb } from "./path-web.js";
import { roomFaults, spacingFaults } from "./room.js";
import type { PromisedFile, ReadDrawing } from "./types.js";
import { wholeFault } from "./whole.js";

/**
 * What is wrong with a drawing that no claim speaks of: layers and numbers of paths, contours that
 * are not closed or cross, paths that lie on each other, what leaves its page or bed, parts too
 * near to each other, starts on working edges.
 *
 * A drawing that is mirrored, or whose unit was taken for another, is told so first; of where its
 * parts lie nothing else is said then, and no claim needs to be measured.
 *
 * @param letters - the lettering of the labels: shows whether they are mirrored on a symmetric part,
 *   and whether fewer strokes than promised are but joined ones, as a DXF of loose lines makes them
 * @returns nothing for a drawing that is as promised
 */
export function inspect(
	drawing: ReadDrawing,
	promised: PromisedFile,
	letters?: Lettering,
): Problem[] {
	const laid = laidStrokes(drawing, promised);
	const whole = wholeFault(laid, promised, letters ?? null);
	const counts = countFaults(drawing, laid, promised, letters ?? null);
	if (whole) return [whole, ...counts];
	const web = pathWeb(laid);
	if (!web) return [found("drawing-too-large", "error", TOO_MUCH), ...counts];
	const pairs = doubledPairs(web);
	return [
		...counts,
		...contourFaults(laid, promised),
		...doubledFaults(laid, web, pairs, promised),
		...crossingFaults(web, pairs, promised),
		...roomFaults(drawing, laid, promised),
		...spacingFaults(laid, promised),
		...startFaults(laid, promised),
	];
}

/** What is told of a file that heaps up more than any template holds. */
const TOO_MUCH = { limit: MOST_PIECES, of: "pieces of cuts and scores, or too many on one place," };
