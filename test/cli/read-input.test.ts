import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { nodeDisk } from "../../src/cli/disk.js";
import { readInput } from "../../src/cli/read-input.js";
import { problem } from "../../src/problem/index.js";
import { faultyDisk } from "../support/faulty-disk.js";
import { tempFolder } from "../support/temp-folder.js";

const limits = { maxBytes: 1000 };

function written(bytes: string | Uint8Array): string {
	const path = join(tempFolder(), "neck.yaml");
	writeFileSync(path, bytes);
	return path;
}

describe("readInput", () => {
	it("reads a text, whatever its script, byte for byte", async () => {
		const text = "\ufeffscale: 648 mm # Mensur, 弦長, ½″ 🎸\r\n";
		expect(await readInput(nodeDisk, written(text), limits)).toEqual(
			new TextEncoder().encode(text),
		);
	});

	it("reads an empty file and one of just the limit", async () => {
		expect(await readInput(nodeDisk, written(""), limits)).toEqual(new Uint8Array());
		expect(await readInput(nodeDisk, written("a".repeat(1000)), limits)).toHaveLength(1000);
	});

	it("follows a link", async () => {
		const path = written("a");
		symlinkSync(path, `${path}.link`);
		expect(await readInput(nodeDisk, `${path}.link`, limits)).toEqual(Uint8Array.of(97));
	});

	it("says that a file is missing, also where the path leads through a file", async () => {
		const file = join(tempFolder(), "none.yaml");
		expect(await readInput(nodeDisk, file, limits)).toEqual(problem("file-missing", [], { file }));
		const through = join(written("a"), "b");
		expect(await readInput(nodeDisk, through, limits)).toEqual(
			problem("file-missing", [], { file: through }),
		);
	});

	it("refuses a folder", async () => {
		const file = join(tempFolder(), "neck");
		mkdirSync(file);
		expect(await readInput(nodeDisk, file, limits)).toEqual(
			problem("file-is-folder", [], { file }),
		);
	});

	it("refuses a file of 100 MB without reading it", async () => {
		const file = written("");
		truncateSync(file, 100_000_000);
		const { disk, calls } = faultyDisk(() => false, "EIO");
		expect(await readInput(disk, file, limits)).toEqual(
			problem("file-too-large", [], { file, size: 100_000_000, limit: 1000 }),
		);
		expect(calls.map((call) => call.operation)).toEqual(["stat"]);
	});

	it("refuses a file that grew past the limit after its size was looked up", async () => {
		const file = written("a");
		const disk = { ...nodeDisk, readFile: async () => new Uint8Array(1001) };
		expect(await readInput(disk, file, limits)).toEqual(
			problem("file-too-large", [], { file, size: 1001, limit: 1000 }),
		);
	});

	it.runIf(process.platform !== "win32")("does not wait for a pipe", async () => {
		const file = join(tempFolder(), "pipe");
		execFileSync("mkfifo", [file]);
		expect(await readInput(nodeDisk, file, limits)).toEqual(
			problem("file-unreadable", [], { file, reason: "not a plain file" }),
		);
	});

	it.each(["stat", "readFile"])("says why %s was denied", async (denied) => {
		const file = written("a");
		const { disk } = faultyDisk((_, operation) => operation === denied, "EACCES");
		expect(await readInput(disk, file, limits)).toEqual(
			problem("file-unreadable", [], { file, reason: "permission denied" }),
		);
	});

	it("refuses a path that no system takes", async () => {
		expect(await readInput(nodeDisk, "a\0b", limits)).toMatchObject({ code: "file-unreadable" });
	});

	it.each([
		["Latin-1", Uint8Array.of(0x33, 0xbd, 0x22)],
		["UTF-16 with its mark", Uint8Array.of(0xff, 0xfe, 0x61, 0x00)],
		["a character cut off", Uint8Array.of(0x61, 0xe2, 0x80)],
		["an overlong form (RFC 3629, section 10)", Uint8Array.of(0xc0, 0x80)],
		["half a surrogate pair (RFC 3629, section 3)", Uint8Array.of(0xed, 0xa0, 0x80)],
	])("refuses what is not UTF-8: %s", async (_, bytes) => {
		const file = written(bytes);
		expect(await readInput(nodeDisk, file, limits)).toEqual(problem("file-not-utf8", [], { file }));
	});
});
