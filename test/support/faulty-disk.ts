import { writeFile } from "node:fs/promises";
import { type Disk, nodeDisk } from "../../src/cli/disk.js";

/** An error as the system throws it. */
export function systemError(code: string): Error {
	return Object.assign(new Error(`${code}: injected`), { code });
}

/**
 * How an operation fails: it does nothing; it does its work and fails all the same (a network
 * disk that loses the answer); or, for a write, it leaves half the bytes.
 */
export type Manner = "before" | "after" | "half";

/** Which operations fail: by their number, counted from 1, and their name. */
export type Fails = (count: number, operation: keyof Disk, path: string) => boolean;

/** The real disk, without the wait for each file to be flushed. */
const quickDisk: Disk = {
	...nodeDisk,
	writeNew: (path, bytes) => writeFile(path, bytes, { flag: "wx" }),
};

/** The real disk, on which chosen operations fail. `calls` lists what was asked, in order. */
export function faultyDisk(fails: Fails, code: string, manner: Manner = "before") {
	const calls: { readonly operation: keyof Disk; readonly path: string }[] = [];
	const disk = {} as Record<keyof Disk, unknown>;
	for (const operation of Object.keys(quickDisk) as (keyof Disk)[]) {
		const real = quickDisk[operation] as (...given: unknown[]) => Promise<unknown>;
		disk[operation] = async (path: string, ...rest: unknown[]) => {
			calls.push({ operation, path });
			if (!fails(calls.length, operation, path)) return real(path, ...rest);
			if (manner === "after") await real(path, ...rest);
			if (manner === "half" && operation === "writeNew") {
				const bytes = rest[0] as Uint8Array;
				await real(path, bytes.subarray(0, bytes.length >> 1));
			}
			throw systemError(code);
		};
	}
	return { disk: disk as unknown as Disk, calls };
}
