/** A fitted value with what the readings leave open, in the value's unit. */
export interface Estimate {
	readonly value: number;
	/** Standard error. */
	readonly standard: number;
	/** Ends of the 95 % interval. */
	readonly low: number;
	readonly high: number;
}
