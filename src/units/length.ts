import { MM_PER_INCH } from "./format.js";

/** What a bare number means in a job file. */
export type Unit = "mm" | "cm" | "m" | "in";

/** Why a text is no length. `given` is quoted in the message. */
export interface LengthFault {
	readonly fault:
		| "decimal-comma"
		| "unknown-unit"
		| "not-a-length"
		| "zero-denominator"
		| "not-finite";
	readonly given: string;
	readonly unit?: string;
}

const MM_PER: Readonly<Record<Unit, number>> = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH };

const UNIT_NAMES: Readonly<Record<string, Unit>> = {
	mm: "mm",
	cm: "cm",
	m: "m",
	in: "in",
	inch: "in",
	inches: "in",
	'"': "in",
	"″": "in",
	"”": "in",
	"''": "in",
};

const VULGAR: Readonly<Record<string, string>> = {
	"½": "1/2",
	"¼": "1/4",
	"¾": "3/4",
	"⅛": "1/8",
	"⅜": "3/8",
	"⅝": "5/8",
	"⅞": "7/8",
};

/** A sign, then a fraction or a number with or without a fraction, then the unit. */
const NUMBER =
	/^([+-]?)(?:\s*(\d+)\/(\d+)|(\d+(?:\.\d+)?|\.\d+)(?:(?:\s+|-\s*)(\d+)\/(\d+))?)\s*(.*)$/u;

/**
 * A length as people write it, in millimetres.
 *
 * Takes `648`, `648 mm`, `64.8 cm`, `25.5 in`, `25 1/2 in`, `25-1/2"`, `25 ½″`, `1/64 in`.
 * A number without a unit takes `bare`. The sign is kept: ranges are the caller's business.
 * `25 -1/2` could mean either 25½ or 24½ and is refused.
 *
 * @example parseLength("25 1/2 in", "mm") // 647.7
 */
export function parseLength(given: string | number, bare: Unit): number | LengthFault {
	if (typeof given === "number") {
		return finite(given * MM_PER[bare], String(given));
	}
	const text = given
		.trim()
		.replace(/[½¼¾⅛⅜⅝⅞]/gu, (c) => ` ${VULGAR[c]}`)
		.replace(/[−–]/gu, "-")
		.replace(/(\d)\s*\/\s*(\d)/gu, "$1/$2")
		.trim();
	if (/^[+-]?(nan|\.nan|\.?inf(inity)?)$/iu.test(text)) return { fault: "not-finite", given };
	if (/^[+-]?\d+,\d/u.test(text)) return { fault: "decimal-comma", given };
	const match = NUMBER.exec(text);
	if (!match) return { fault: "not-a-length", given };
	const [, sign, onlyTop, onlyBottom, whole, top, bottom, unitText] = match;
	const denominator = Number(bottom ?? onlyBottom ?? 1);
	if (denominator === 0) return { fault: "zero-denominator", given };
	const unit = unitText === "" ? bare : unitNamed(unitText!);
	if (!unit) {
		const fault = /^[a-zµ'"′″]+$/iu.test(unitText!) ? "unknown-unit" : "not-a-length";
		return { fault, given, unit: unitText! };
	}
	if (top !== undefined && whole!.includes(".")) return { fault: "not-a-length", given };
	const fraction = Number(top ?? onlyTop ?? 0) / denominator;
	const size = Number(whole ?? 0) + fraction;
	return finite((sign === "-" ? -size : size) * MM_PER[unit], given);
}

function unitNamed(text: string): Unit | undefined {
	const name = text.trim().toLowerCase();
	return Object.hasOwn(UNIT_NAMES, name) ? UNIT_NAMES[name] : undefined;
}

function finite(mm: number, given: string): number | LengthFault {
	return Number.isFinite(mm) ? mm : { fault: "not-finite", given };
}
