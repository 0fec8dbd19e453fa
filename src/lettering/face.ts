import { moved, type Path, shift } from "../geometry/index.js";
import type { Lettering } from "./lettering.js";
import { characters, drawnSign, named } from "./signs.js";

/** What a font says of its signs. Lengths are in heights of its capitals. */
export interface Face {
	readonly name: string;
	has(sign: string): boolean;
	/** From the origin of a sign to the origin of the next. */
	advance(sign: string): number;
	/** Added between two signs, mostly negative. */
	kerning(left: string, right: string): number;
	/** The sign at the origin, capitals `height` mm high. */
	drawn(sign: string, height: number): Path[];
}

/** Sets text in a face, sign after sign on one line. */
export function letteringOf(face: Face): Lettering {
	const known = new Map<string, string | null>();
	function signOf(character: string): string | null {
		const sign = known.get(character);
		if (sign !== undefined) return sign;
		const found = drawnSign(character, (s) => face.has(s));
		known.set(character, found);
		return found;
	}
	const missing = (text: string) => [
		...new Set(characters(text).filter((character) => signOf(character) === null)),
	];

	function signs(text: string, height: number): string[] {
		if (!(height > 0 && Number.isFinite(height))) {
			throw new RangeError(`the height of letters must be above 0 mm: ${height}`);
		}
		const set = characters(text).map(signOf);
		if (set.includes(null)) {
			const lacking = missing(text).map(named).join(", ");
			throw new RangeError(`the lettering "${face.name}" lacks ${lacking}`);
		}
		return set as string[];
	}

	/** Where each sign stands, in heights of capitals, and where the next one would. */
	function stops(set: readonly string[]): number[] {
		const result = [0];
		set.forEach((sign, i) => {
			const next = set[i + 1];
			const gap = next === undefined ? 0 : face.kerning(sign, next);
			result.push(result[i]! + face.advance(sign) + gap);
		});
		return result;
	}

	return {
		name: face.name,
		missing,
		width: (text, height) => stops(signs(text, height)).at(-1)! * height,
		paths(text, height) {
			const set = signs(text, height);
			const at = stops(set);
			return set.flatMap((sign, i) =>
				face.drawn(sign, height).map((path) => moved(path, shift(at[i]! * height, 0))),
			);
		},
	};
}
