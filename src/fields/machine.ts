import * as z from "zod";
import { parseLength, type Unit } from "../units/index.js";
import {
	describe,
	type FieldText,
	fault,
	inRange,
	type LengthRange,
	lengthField,
	rangeText,
	slipOf,
} from "./length.js";

/** Speeds that a machine's head may have, mm/s. */
const SPEED: LengthRange = { above: 0, to: 10_000 };

/** Thicknesses nearer than this are one sheet's, mm. */
const SAME_SHEET = 1e-6;

/** A speed: `12 mm/s`, `700 mm/min`, `0.5 in/s`; a bare number is in lengths a second. */
export function speedField(unit: Unit, text: FieldText) {
	return z
		.union([z.string(), z.number()])
		.transform((given, ctx) => {
			const match = /^(.*?)\s*\/\s*(s|sec|min)\s*$/u.exec(String(given));
			const length = parseLength(match ? match[1]! : given, unit);
			const value = typeof length === "number" ? length / (match?.[2] === "min" ? 60 : 1) : null;
			if (value !== null && inRange(value, SPEED)) return value;
			fault(ctx, "speed", { given: String(given), allowed: rangeText(SPEED, " mm/s") });
			return z.NEVER;
		})
		.meta({ ...describe(text), kind: "speed", range: "like 12 mm/s, 700 mm/min, 0.5 in/s" });
}

/** Two lengths along the axes of a bed: `600 x 400 mm`, `24 in x 16 in`. */
export function bedField(unit: Unit, range: LengthRange, text: FieldText) {
	return z
		.string()
		.transform((given, ctx) => {
			if (/\d,\d/u.test(given)) {
				fault(ctx, "decimal-comma", { given });
				return z.NEVER;
			}
			const sides = given.split(/\s*[x×]\s*/u);
			const tail = /[a-z"″”]+\s*$/iu.exec(given)?.[0] ?? "";
			const [x, y] = sides.map((side) =>
				parseLength(/[a-z"″”]\s*$/iu.test(side) ? side : `${side} ${tail}`, unit),
			);
			if (sides.length !== 2 || typeof x !== "number" || typeof y !== "number") {
				fault(ctx, "bed", { given });
				return z.NEVER;
			}
			for (const [i, mm] of [x, y].entries()) {
				if (inRange(mm, range)) continue;
				const side = sides[i]!;
				const facts = { given: side, mm, allowed: rangeText(range), slip: slipOf(side, range) };
				fault(ctx, "length-range", facts);
			}
			return { x, y };
		})
		.meta({ ...describe(text), kind: "text", range: "like 600 x 400 mm" });
}

/** A sheet by its name, "acrylic 3 mm"; null if it names no known material or no thickness. */
export function parseSheet(given: string, unit: Unit, materials: readonly string[]) {
	const [, word = "", size = ""] = /^\s*([a-z]+)\s+(.+)$/iu.exec(given) ?? [];
	const material = word.toLowerCase();
	const thickness = parseLength(size, unit);
	if (!materials.includes(material) || typeof thickness !== "number" || !(thickness > 0)) {
		return null;
	}
	return { material, thickness };
}

/** One width of cut, or one for each sheet: `{acrylic 3 mm: 0.16 mm, mdf 3 mm: 0.2 mm}`. */
export function kerfField(
	unit: Unit,
	range: LengthRange,
	materials: readonly string[],
	text: FieldText,
) {
	const list = z
		.record(z.string(), lengthField(unit, range, { text: "Width of the cut in that sheet" }))
		.transform((map, ctx) => {
			const entries = Object.entries(map).map(([key, kerf]) => {
				const sheet = parseSheet(key, unit, materials);
				if (!sheet)
					fault(ctx, "kerf-sheet-key", { given: key, allowed: materials.join(", ") }, [key]);
				return { material: "", thickness: 0, ...sheet, kerf };
			});
			if (entries.length === 0) fault(ctx, "kerf-list-empty", {});
			entries.forEach(({ material, thickness }, i) => {
				const same = (e: (typeof entries)[number]) =>
					e.material === material && Math.abs(e.thickness - thickness) < SAME_SHEET;
				const first = entries.findIndex(same);
				if (first === i || material === "") return;
				const [given, before] = [Object.keys(map)[i]!, Object.keys(map)[first]!];
				fault(ctx, "kerf-twice-key", { given, before }, [given]);
			});
			return entries;
		});
	return z.union([lengthField(unit, range, { text: "One width for every sheet" }), list]).meta({
		...describe(text),
		kind: "length or map",
		range: `${rangeText(range)}, or a list like {acrylic 3 mm: 0.16 mm, mdf 3 mm: 0.2 mm}`,
	});
}
