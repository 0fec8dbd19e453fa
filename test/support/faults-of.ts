import type * as z from "zod";

interface Fault {
	readonly code: string;
	readonly facts: object;
}

/** Codes and facts that a field's own checks raise for a value; none if it is taken. */
export function faultsOf(field: z.ZodType, given: unknown): Fault[] {
	const result = field.safeParse(given);
	return result.success ? [] : result.error.issues.flatMap(ownFaults);
}

/** An issue's own fault, or those of the alternatives that a union tried. */
function ownFaults(issue: z.core.$ZodIssue): Fault[] {
	if (issue.code === "invalid_union") return issue.errors.flat().flatMap(ownFaults);
	return issue.code === "custom" ? [issue.params as unknown as Fault] : [];
}
