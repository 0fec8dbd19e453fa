import { MM_PER_INCH } from "../units/index.js";
import { numberAt, type RawTag } from "./dxf-records.js";
import type { Findings } from "./findings.js";

/** Millimetres of one unit by $INSUNITS (DXF reference, header variables), those of tables and maps left out. */
const MM_PER: Readonly<Record<number, number>> = {
	1: MM_PER_INCH,
	2: 12 * MM_PER_INCH,
	4: 1,
	5: 10,
	6: 1000,
	8: MM_PER_INCH / 1e6,
	9: MM_PER_INCH / 1000,
	10: 36 * MM_PER_INCH,
	13: 0.001,
	14: 100,
};

const INCH = 1;
const MILLIMETRE = 4;
/** Units that $MEASUREMENT calls English. */
const ENGLISH: readonly number[] = [1, 2, 8, 9, 10];

/** Millimetres of one unit of a drawing, by its header's tags; 1 where it names none. */
export function dxfScale(header: readonly RawTag[], findings: Findings): number {
	const units = variable(header, "$INSUNITS");
	const measurement = variable(header, "$MEASUREMENT");
	const factor = MM_PER[units];
	if (factor === undefined) {
		findings.add("dxf-no-unit", "error");
		return 1;
	}
	if (units === INCH) findings.add("dxf-inch", "warning", { factor });
	else if (units !== MILLIMETRE) findings.add("dxf-unit", "warning", { factor });
	const system = ENGLISH.includes(units) ? 0 : 1;
	if (!Number.isNaN(measurement) && measurement !== system) {
		findings.add("dxf-measurement", "error", { units, measurement });
	}
	return factor;
}

function variable(header: readonly RawTag[], name: string): number {
	const at = header.findIndex(({ code, value }) => code === 9 && value.trim() === name);
	return at < 0 ? Number.NaN : numberAt(header.slice(at + 1, at + 2), 70);
}
