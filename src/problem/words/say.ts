import { trimmed } from "../../units/index.js";
import type { Fact } from "../problem.js";

export type Facts = Readonly<Record<string, Fact>>;

/** What is wrong, and how to mend it. */
export interface Words {
	readonly what: string;
	readonly mend: string;
}

/** Wording of some codes, each from a problem's facts. */
export type Wording = Readonly<Record<string, (f: Facts) => Words>>;

/** Longest text that a message quotes. */
const MOST_QUOTED = 160;

/** Most entries of a list that a message names. */
const MOST_LISTED = 20;

/** A fact as text: numbers to the thousandth, lists with commas, unseen characters by their code. */
export function say(fact: Fact | undefined): string {
	if (fact === undefined) return "";
	if (typeof fact === "number") return Math.abs(fact) < 1e15 ? trimmed(fact, 3) : String(fact);
	if (typeof fact === "string") return quoted(fact);
	const rest = fact.length - MOST_LISTED;
	const listed = fact.slice(0, MOST_LISTED).map(quoted).join(", ");
	return rest > 0 ? `${listed} and ${rest} more` : listed;
}

function quoted(text: string): string {
	const cut = text.length > MOST_QUOTED ? `${text.slice(0, MOST_QUOTED - 1)}…` : text;
	return cut.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}\p{Co}]/gu, (c) => {
		const code = c.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0");
		return `[U+${code}]`;
	});
}

export function mm(fact: Fact | undefined): string {
	return `${say(fact)} mm`;
}

export function meant(guess: Fact | undefined): string {
	return guess ? `Did you mean "${say(guess)}"? ` : "";
}

export const w = (what: string, mend: string): Words => ({ what, mend });

/** A list of what is allowed: "a" or "a, b". */
export function allowed(fact: Fact | undefined): string {
	return `Allowed: ${say(fact)}.`;
}

export const LENGTH_FORMS = '648, 648 mm, 64.8 cm, 25.5 in, 25 1/2 in, 25-1/2", 1/64 in';

/** A figure that is judged to the micrometre, to a tenth of it. */
export function fine(fact: Fact | undefined): string {
	return typeof fact === "number" && Math.abs(fact) < 1e15 ? trimmed(fact, 4) : say(fact);
}

/** A place in a file's or a page's own coordinates: " at x 12.5, y 3". */
export function at({ x, y }: Facts): string {
	return ` at x ${say(x)}, y ${say(y)}`;
}
