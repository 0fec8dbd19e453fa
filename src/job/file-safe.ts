/** Longest part of a file name. */
const MOST = 60;

/** Names that Windows keeps for devices (Microsoft, "Naming Files, Paths, and Namespaces", from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)$/u;

/**
 * A name as files and folders can bear it anywhere: lower case ASCII letters, digits and single
 * hyphens; empty if nothing of it is left. A device's name gets "-job" behind it.
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
	return DEVICE.test(plain) ? `${plain}-job` : plain;
}
