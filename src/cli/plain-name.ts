/** Leaves room for a folder's path within the 260 characters that Windows allows by default. */
const LONGEST_NAME = 150;

/** ASCII letters, digits, dot, hyphen, underscore; no dot in front (hidden) or at the end (Windows drops it). */
const PLAIN = /^(?!\.)[A-Za-z0-9._-]+(?<!\.)$/;

/** Names that Windows keeps for devices, with any ending (Microsoft, "Naming Files, Paths, and Namespaces", from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

/**
 * Whether a name denotes the same file, inside its folder, on every system.
 *
 * @example isPlainName("radius-gauge.svg") // true
 * @example isPlainName("../gauge.svg") // false
 */
export function isPlainName(name: string): boolean {
	return name.length <= LONGEST_NAME && PLAIN.test(name) && !DEVICE.test(name);
}

/**
 * Names that can lie in one folder on every system: plain, and distinct also where case does not count.
 *
 * @throws RangeError naming the first that cannot
 */
export function requirePlainNames(names: readonly string[]): void {
	const seen = new Set<string>();
	for (const name of names) {
		if (!isPlainName(name)) throw new RangeError(`not a plain file name: ${JSON.stringify(name)}`);
		if (seen.has(name.toLowerCase())) throw new RangeError(`file name used twice: ${name}`);
		seen.add(name.toLowerCase());
	}
}
