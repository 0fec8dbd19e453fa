import type { Stock } from "../drawing/index.js";
import { trimmed } from "../units/index.js";

/** What a part is cut from: "plywood 3 mm, grain along x". */
export function stockText({ material, thickness, grain }: Stock): string {
	const name = `${material} ${trimmed(thickness, 3)} mm`;
	return grain ? `${name}, grain along ${grain}` : name;
}
