/** Longest part of a file name. */
const MOST = 60;

/**
 * A name as files can bear it anywhere: lower case ASCII letters, digits and single hyphens.
 *
 * @example fileSafe("Heron – baritone №2") // "heron-baritone-2"
 */
export function fileSafe(name: string): string {
	const plain = name
		.normalize("NFKD")
		.replace(/[\u0300-\u036f]/gu, "")
		.toLowerCase()
		.replace(/[^a-z0-9]+/gu, "-")
		.replace(/^-+|-+$/gu, "")
		.slice(0, MOST)
		.replace(/-+$/u, "");
	return plain === "" ? "job" : plain;
}
