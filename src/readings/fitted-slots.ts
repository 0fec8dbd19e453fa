import { centsOfError } from "../neck/index.js";
import { type CurveFit, gradient, placeOf, type SlotRow, varianceOf } from "./curve-fit.js";
import { spreadOf } from "./least-squares.js";
import { studentised } from "./odd-slots.js";

/** A slot as read and as fitted. */
export interface FittedSlot {
	readonly fret: number;
	/** Mean of its readings from the rule's zero, mm. */
	readonly at: number;
	readonly fitted: number;
	/** Read less fitted, mm: positive toward the saddle. */
	readonly residual: number;
	/** What the residual sounds, cents. */
	readonly cents: number;
	/** Residual over its standard error with the slot left out; null where the fit cannot tell. */
	readonly studentised: number | null;
	/** Whether the slot is out, and was left out of the fit. */
	readonly isOdd: boolean;
}

/** Every slot read, odd ones too, against the fit. */
export function fittedSlots(
	rows: readonly SlotRow[],
	fit: CurveFit,
	odd: readonly SlotRow[],
	resolution: number,
): FittedSlot[] {
	const own = studentised(fit, resolution);
	const { shape, free, lengths, isOffset, linear } = fit;
	return rows.map((row) => {
		const { fret, at, side } = row;
		const fitted = placeOf(fit, fret, side);
		const residual = at - fitted;
		const isOdd = odd.includes(row);
		const reach = spreadOf(linear.covariance, gradient(row, shape, free, lengths, isOffset));
		const alone = residual / Math.sqrt(varianceOf(fit, resolution) * (1 + reach));
		return {
			fret,
			at,
			fitted,
			residual,
			cents: centsOfError(residual, lengths[side]! * (1 - shape.share(fret, free))),
			studentised: isOdd ? alone : (own[fit.rows.indexOf(row)] ?? null),
			isOdd,
		};
	});
}
