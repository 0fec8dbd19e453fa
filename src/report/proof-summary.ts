import type { Problem } from "../problem/index.js";
import type { Measured, Proven } from "../proof/index.js";
import { fixed } from "../units/index.js";
import { counted } from "./figures.js";

/** What came of measuring files, in a few numbers. */
export interface ProofSummary {
	readonly files: number;
	/** Claims measured: sizes, angles and labels. */
	readonly claims: number;
	/** Largest deviation of a length, mm; null if no length was measured. */
	readonly largest: number | null;
	readonly errors: number;
	readonly warnings: number;
	readonly notes: number;
}

/** Sums up what files were found to be. */
export function proofSummary(proven: readonly Proven[]): ProofSummary {
	const measured = proven.flatMap((p) => p.measured);
	const findings = proven.flatMap((p) => p.findings);
	const count = (severity: Problem["severity"]) =>
		findings.filter((f) => f.severity === severity).length;
	return {
		files: proven.length,
		claims: measured.filter(({ value }) => Number.isFinite(value)).length,
		largest: largestDeviation(measured),
		errors: count("error"),
		warnings: count("warning"),
		notes: count("note"),
	};
}

/** The largest deviation of a length among what was found, mm, unsigned; null if there is none. */
export function largestDeviation(measured: readonly Measured[]): number | null {
	let largest: number | null = null;
	for (const { claim, deviation } of measured) {
		if (claim.kind === "angle" || claim.kind === "label" || !Number.isFinite(deviation)) continue;
		largest = Math.max(largest ?? 0, Math.abs(deviation));
	}
	return largest;
}

/** A largest deviation in words: "0.0004 mm", "under 0.0001 mm". */
export function deviationText(largest: number): string {
	if (largest < 0.00005) return "under 0.0001 mm";
	return largest < 1e7 ? `${fixed(largest, 4)} mm` : "over 1e7 mm";
}

/** A summary in a line: "48 claims measured in 6 files, largest deviation 0.0004 mm". */
export function summaryText({ claims, files, largest }: ProofSummary): string {
	const head = `${counted(claims, "claim")} measured in ${counted(files, "file")}`;
	return largest === null ? head : `${head}, largest deviation ${deviationText(largest)}`;
}

/** What was found besides: "1 error, 2 warnings"; empty if there is nothing. */
export function findingsText({ errors, warnings, notes }: ProofSummary): string {
	const counts = [
		[errors, "error"],
		[warnings, "warning"],
		[notes, "note"],
	] as const;
	return counts
		.filter(([n]) => n > 0)
		.map(([n, what]) => counted(n, what))
		.join(", ");
}
