import { loadReadings } from "./load-readings.js";
import { type JobRead, type ReadOptions, readJob } from "./read-job.js";

/** As `readJob`, with the files that its readings name loaded first. */
export async function loadJob(
	text: string,
	options: ReadOptions & { readonly load?: (path: string) => Promise<Uint8Array> } = {},
): Promise<JobRead> {
	const files = await loadReadings(text, options.load);
	if (Array.isArray(files)) return { ok: false, problems: files };
	return readJob(text, { ...options, files });
}
