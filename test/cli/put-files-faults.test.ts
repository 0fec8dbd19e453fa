import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Disk, nodeDisk } from "../../src/cli/disk.js";
import { putFiles } from "../../src/cli/put-files.js";
import { type Fact, problem } from "../../src/problem/index.js";
import { faultyDisk, type Manner } from "../support/faulty-disk.js";
import { manifestText, outFiles } from "../support/out-files.js";
import { snapshot, tempFolder } from "../support/temp-folder.js";

const old = { "same.svg": "same", "older.svg": "older", "stale.svg": "stale" };
const wanted = { "new.svg": "new", "same.svg": "same", "older.svg": "newer", "link.svg": "file" };

/** What a folder holds once all is put. */
function wholly(earlier: Readonly<Record<string, string>>) {
	return { ...wanted, "manifest.json": manifestText(wanted, earlier) };
}

function put(disk: Disk, folder: string, texts: Readonly<Record<string, string>>) {
	const [manifest] = outFiles({ "manifest.json": manifestText(texts) });
	return putFiles(disk, folder, outFiles(texts), manifest!, { force: true });
}

/** Every kind of thing that a run meets: new, unchanged, older, stale, a link, a file of others. */
async function usedFolder(): Promise<string> {
	const parent = tempFolder();
	const folder = join(parent, "out");
	mkdirSync(folder);
	const files = { ...old, "manifest.json": manifestText(old) };
	for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
	writeFileSync(join(parent, "precious"), "precious");
	symlinkSync("../precious", join(folder, "link.svg"));
	writeFileSync(join(folder, "notes.txt"), "notes");
	mkdirSync(join(folder, "sub"));
	return folder;
}

/** A folder that is to be made, two levels deep. */
async function missingFolder(): Promise<string> {
	return join(tempFolder(), "deep", "er", "out");
}

/** The folder, or else its nearest parent that is there. */
function seen(folder: string): Record<string, string> {
	return snapshot(folder.replace(/\/(deep\/er\/)?out$/, ""));
}

/** Stops a loop that would not end. */
const MOST_OPERATIONS = 200;

const starts = [
	[
		"a folder in use",
		usedFolder,
		"lstat readFile readdir rename rm stat writeNew",
		{ "stale.svg": "stale" },
	],
	["a folder to be made", missingFolder, "lstat mkdir rename stat writeNew", {}],
] as const;

const faults: [Manner, string][] = [
	["before", "ENOSPC"],
	["half", "ENOSPC"],
	["after", "EIO"],
	["before", "EPERM"],
];

describe.each(starts)("putFiles in %s", (_, start, operations, earlier) => {
	it.each(faults)(
		"is whole or leaves all as it was, whichever operation fails %s (%s)",
		async (manner, code) => {
			const full = code === "ENOSPC";
			let count = 0;
			const failed = new Set<string>();
			for (let done = false; !done; ) {
				count += 1;
				expect(count).toBeLessThan(MOST_OPERATIONS);
				const folder = await start();
				const before = seen(folder);
				const { disk, calls } = faultyDisk((nth) => nth === count, code, manner);
				const result = await put(disk, folder, wanted);
				const after = seen(folder);
				if (calls.length >= count) failed.add(calls[count - 1]!.operation);
				if (Array.isArray(result)) {
					expect(after, JSON.stringify(calls.at(count - 1))).toEqual(before);
					expect(result).toHaveLength(1);
					expect(result[0]!.code).toMatch(
						/^(disk-full|write-failed|folder-unusable|file-unreadable)$/,
					);
					const wrote = ["writeNew", "mkdir"].includes(calls[count - 1]!.operation);
					if (full && wrote) expect(result[0]!.code).toBe("disk-full");
				} else {
					for (const [name, text] of Object.entries(wholly(earlier))) {
						expect(readFileSync(join(folder, name), "utf8")).toBe(text);
					}
					const temporaries = Object.keys(after).filter((name) => name.endsWith(".tmp"));
					expect(temporaries).toEqual(result.left.map((name) => `out/${name}`));
					done = calls.length < count;
				}
			}
			expect([...failed].sort().join(" ")).toBe(operations);
		},
	);

	it("loses no bytes and names what it left, if the disk dies for good at any operation", async () => {
		for (let count = 1, done = false; !done; count += 1) {
			expect(count).toBeLessThan(MOST_OPERATIONS);
			const folder = await start();
			const before = seen(folder);
			const { disk, calls } = faultyDisk((nth) => nth >= count, "EIO");
			const result = await put(disk, folder, wanted);
			const after = seen(folder);
			done = calls.length < count;
			if (!Array.isArray(result)) {
				const temporaries = Object.keys(after).filter((name) => name.endsWith(".tmp"));
				expect(temporaries.sort()).toEqual(result.left.map((name) => `out/${name}`).sort());
				continue;
			}
			for (const what of Object.values(before)) expect(Object.values(after)).toContain(what);
			const root = folder.replace(/(deep\/er\/)?out$/, "");
			const named = new Set<Fact | undefined>(
				result.flatMap(({ facts }) => [facts.file, facts.kept, facts.folder]),
			);
			for (const name of new Set([...Object.keys(before), ...Object.keys(after)])) {
				if (before[name] !== after[name]) expect(named).toContain(root + name);
			}
		}
	});
});

describe("putFiles", () => {
	it("tells where the old file lies if it cannot be moved back", async () => {
		const folder = join(tempFolder(), "out");
		await put(nodeDisk, folder, { "a.svg": "old" });
		const target = join(folder, "a.svg");
		let renames = 0;
		const { disk } = faultyDisk((_, operation) => operation === "rename" && ++renames > 1, "EBUSY");
		const kept = join(folder, `.camber-${process.pid}-2.tmp`);
		const reason = "resource busy or locked";
		expect(await put(disk, folder, { "a.svg": "new" })).toEqual([
			problem("write-failed", [], { file: target, reason }),
			problem("not-restored", [], { file: target, kept, reason }),
		]);
		expect(readFileSync(kept, "utf8")).toBe("old");
	});

	it("tells of a temporary file that it cannot remove", async () => {
		const folder = tempFolder();
		const { disk } = faultyDisk((_, op) => op === "writeNew" || op === "rm", "ENOSPC", "half");
		const reason = "no space left on device";
		expect(await put(disk, folder, { "a.svg": "new" })).toEqual([
			problem("disk-full", [], { file: join(folder, "a.svg"), reason }),
			problem("left-behind", [], { file: join(folder, `.camber-${process.pid}-1.tmp`), reason }),
		]);
	});

	it("leaves alone what somebody else put under a temporary's name meanwhile", async () => {
		const folder = tempFolder();
		const name = `.camber-${process.pid}-2.tmp`;
		const disk: Disk = {
			...nodeDisk,
			writeNew: async (path, bytes) => {
				if (path.endsWith("-1.tmp")) writeFileSync(join(folder, name), "theirs");
				return nodeDisk.writeNew(path, bytes);
			},
		};
		expect(await put(disk, folder, { "a.svg": "new" })).toEqual([
			problem("write-failed", [], {
				file: join(folder, "manifest.json"),
				reason: "file already exists",
			}),
		]);
		expect(snapshot(folder)).toEqual({ [name]: "file theirs" });
	});

	it("takes a used-up quota for a full disk", async () => {
		const folder = tempFolder();
		const { disk } = faultyDisk((_, operation) => operation === "writeNew", "EDQUOT");
		expect(await put(disk, folder, { "a.svg": "new" })).toMatchObject([{ code: "disk-full" }]);
	});
});
