/** A value that a message may quote. */
export type Fact = string | number | readonly string[];

/** Where a problem stands: a path of keys into the job, and the line and column once known. */
export interface Where {
	readonly path: readonly (string | number)[];
	readonly file?: string;
	readonly line?: number;
	readonly column?: number;
}

/**
 * One thing that is wrong, as data. Its wording lives in `wording.ts`, nowhere else.
 *
 * An `error` stops the run before any file is written; a `note` travels with the result.
 */
export interface Problem {
	readonly code: string;
	readonly severity: "error" | "warning" | "note";
	readonly where: Where;
	readonly facts: Readonly<Record<string, Fact>>;
}

/** An error at a place in the job. */
export function problem(
	code: string,
	path: readonly (string | number)[],
	facts: Readonly<Record<string, Fact>> = {},
): Problem {
	return { code, severity: "error", where: { path }, facts };
}

/** Carries problems through code that cannot return them. */
export class ProblemError extends Error {
	constructor(readonly problems: readonly Problem[]) {
		super(problems.map((p) => p.code).join(", "));
		this.name = "ProblemError";
	}
}
