import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { codeOf, entryAt, isMissing, nodeDisk, reasonOf } from "../../src/cli/disk.js";
import { systemError } from "../support/faulty-disk.js";
import { snapshot, tempFolder } from "../support/temp-folder.js";

const bytes = new TextEncoder().encode("new");

describe("nodeDisk", () => {
	it("writes a file and reads the same bytes back as a plain Uint8Array", async () => {
		const path = join(tempFolder(), "a.bin");
		const every = Uint8Array.from({ length: 256 }, (_, index) => index);
		await nodeDisk.writeNew(path, every);
		const read = await nodeDisk.readFile(path);
		expect(read).toEqual(every);
		expect(Buffer.isBuffer(read)).toBe(false);
	});

	it("never writes over a file that is there", async () => {
		const folder = tempFolder();
		writeFileSync(join(folder, "a"), "old");
		await expect(nodeDisk.writeNew(join(folder, "a"), bytes)).rejects.toMatchObject({
			code: "EEXIST",
		});
		expect(snapshot(folder)).toEqual({ a: "file old" });
	});

	it("makes one level of folder and refuses one that is there", async () => {
		const folder = tempFolder();
		await nodeDisk.mkdir(join(folder, "a"));
		await expect(nodeDisk.mkdir(join(folder, "a"))).rejects.toMatchObject({ code: "EEXIST" });
		await expect(nodeDisk.mkdir(join(folder, "b", "c"))).rejects.toMatchObject({ code: "ENOENT" });
	});

	it("removes no folder that holds something", async () => {
		const folder = tempFolder();
		await nodeDisk.mkdir(join(folder, "a"));
		await nodeDisk.writeNew(join(folder, "a", "b"), bytes);
		await expect(nodeDisk.rmdir(join(folder, "a"))).rejects.toThrow();
		await expect(nodeDisk.rm(join(folder, "a"))).rejects.toThrow();
		expect(snapshot(folder)).toEqual({ a: "folder", "a/b": "file new" });
	});
});

describe("errors of the disk", () => {
	it("are told in the words of the system", () => {
		// The words of POSIX strerror, as libuv prints them.
		expect(reasonOf(systemError("ENOSPC"))).toBe("no space left on device");
		expect(reasonOf(systemError("EROFS"))).toBe("read-only file system");
		expect(reasonOf(new Error("odd"))).toBe("odd");
		expect(reasonOf("odd")).toBe("odd");
	});

	it("tell a missing file from every other trouble", async () => {
		const folder = tempFolder();
		writeFileSync(join(folder, "a"), "old");
		const through = await nodeDisk.stat(join(folder, "a", "b")).catch((error) => error);
		expect(codeOf(through)).toBe("ENOTDIR");
		expect(isMissing(through)).toBe(true);
		expect(isMissing(systemError("EACCES"))).toBe(false);
		expect(isMissing(new Error("no code"))).toBe(false);
		expect(await entryAt(nodeDisk, "lstat", join(folder, "b"))).toBeUndefined();
		expect((await entryAt(nodeDisk, "lstat", join(folder, "a")))?.size).toBe(3);
	});
});
