import {
	existsSync,
	mkdirSync,
	readFileSync,
	symlinkSync,
	unlinkSync,
	writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Disk, nodeDisk } from "../../src/cli/disk.js";
import { putFiles } from "../../src/cli/put-files.js";
import { problem } from "../../src/problem/index.js";
import { faultyDisk } from "../support/faulty-disk.js";
import { manifestText, outFiles } from "../support/out-files.js";
import { snapshot, tempFolder } from "../support/temp-folder.js";

type Texts = Readonly<Record<string, string>>;

const first: Texts = { "gauge.svg": "gauge 1", "gauge.dxf": "lines 1", "strip.svg": "strip 1" };
const second: Texts = { ...first, "gauge.svg": "gauge 2" };

/** Puts texts and the manifest that lists them. */
function put(folder: string, texts: Texts, force = false, disk: Disk = nodeDisk) {
	const [manifest] = outFiles({ "manifest.json": manifestText(texts) });
	return putFiles(disk, folder, outFiles(texts), manifest!, { force });
}

/** What a folder holds once the texts are put. */
function whole(texts: Texts): Texts {
	const all = Object.entries({ ...texts, "manifest.json": manifestText(texts) });
	return Object.fromEntries(all.map(([name, text]) => [name, `file ${text}`]));
}

function foreign(folder: string, file: string, why = "not listed") {
	return problem("foreign-file", [], { file, folder, why });
}

const listedButChanged = "changed since it was written";

describe("putFiles in a folder of its own", () => {
	it("makes the folder, at any depth, and writes every file and the manifest", async () => {
		const folder = join(tempFolder(), "a", "b", "c");
		expect(await put(folder, first)).toEqual({
			written: ["gauge.svg", "gauge.dxf", "strip.svg", "manifest.json"],
			unchanged: [],
			stale: [],
			left: [],
		});
		expect(snapshot(folder)).toEqual(whole(first));
	});

	it("takes a path with a slash at the end", async () => {
		const folder = tempFolder();
		await put(`${folder}/a/`, first);
		expect(snapshot(join(folder, "a"))).toEqual(whole(first));
	});

	it("changes nothing the second time", async () => {
		const folder = tempFolder();
		await put(folder, first);
		const { disk, calls } = faultyDisk(() => false, "EIO");
		expect(await put(folder, first, false, disk)).toEqual({
			written: [],
			unchanged: ["gauge.svg", "gauge.dxf", "strip.svg", "manifest.json"],
			stale: [],
			left: [],
		});
		const looks = new Set(["stat", "lstat", "readdir", "readFile"]);
		expect(calls.filter((call) => !looks.has(call.operation))).toEqual([]);
	});

	it("writes only what changed, the manifest last", async () => {
		const folder = tempFolder();
		await put(folder, first);
		const { disk, calls } = faultyDisk(() => false, "EIO");
		expect(await put(folder, second, false, disk)).toMatchObject({
			written: ["gauge.svg", "manifest.json"],
			unchanged: ["gauge.dxf", "strip.svg"],
		});
		expect(snapshot(folder)).toEqual(whole(second));
		const writes = calls.filter((call) => call.operation === "writeNew");
		expect(writes).toHaveLength(2);
		const moved = calls.filter((call) => call.operation === "rename").map((call) => call.path);
		expect(moved.at(-1)).toBe(writes[1]!.path);
		expect(calls.findIndex((call) => call.operation === "rename")).toBeGreaterThan(
			calls.findLastIndex((call) => call.operation === "writeNew"),
		);
	});

	it("names files of an earlier run that are no longer wanted, and lets them lie", async () => {
		const folder = tempFolder();
		await put(folder, { ...first, "old.svg": "old", "edited.svg": "edited", "gone.svg": "gone" });
		writeFileSync(join(folder, "edited.svg"), "by hand");
		unlinkSync(join(folder, "gone.svg"));
		expect(await put(folder, second)).toMatchObject({ stale: ["old.svg"] });
		const { "manifest.json": list, ...others } = snapshot(folder);
		const { "manifest.json": plain, ...files } = whole(second);
		expect(others).toEqual({ ...files, "old.svg": "file old", "edited.svg": "file by hand" });
		const [written, wanted] = [list, plain].map((text) => JSON.parse(text!.replace("file ", "")));
		const { earlier, ...rest } = written;
		expect(rest).toEqual(wanted);
		expect(earlier.map((file: { name: string }) => file.name)).toEqual(["old.svg"]);
	});

	it("may write again, with other bytes, what a run in between did not want", async () => {
		const folder = tempFolder();
		await put(folder, first);
		expect(await put(folder, { "gauge.svg": "gauge 2" })).toMatchObject({
			stale: ["gauge.dxf", "strip.svg"],
		});
		expect(await put(folder, { "gauge.svg": "gauge 3" })).toMatchObject({
			stale: ["gauge.dxf", "strip.svg"],
		});
		const third = { ...first, "strip.svg": "strip 3" };
		expect(await put(folder, third)).toMatchObject({ stale: [] });
		expect(snapshot(folder)).toEqual(whole(third));
	});

	it("steps aside for temporary files that a broken run left", async () => {
		const folder = tempFolder();
		const name = `.camber-${process.pid}-1.tmp`;
		writeFileSync(join(folder, name), "kept");
		expect(await put(folder, first)).toMatchObject({ left: [] });
		expect(snapshot(folder)).toEqual({ ...whole(first), [name]: "file kept" });
	});

	it("works through a folder that is a link", async () => {
		const parent = tempFolder();
		mkdirSync(join(parent, "real"));
		symlinkSync("real", join(parent, "link"));
		expect(await put(join(parent, "link"), first)).toMatchObject({ left: [] });
		expect(snapshot(join(parent, "real"))).toEqual(whole(first));
	});
});

describe("putFiles beside files of somebody else", () => {
	it("leaves other files alone", async () => {
		const folder = tempFolder();
		writeFileSync(join(folder, "notes.txt"), "mine");
		await put(folder, first);
		expect(snapshot(folder)).toEqual({ ...whole(first), "notes.txt": "file mine" });
	});

	it("refuses every file that camber did not write, and writes nothing", async () => {
		const folder = tempFolder();
		writeFileSync(join(folder, "gauge.svg"), "mine");
		writeFileSync(join(folder, "strip.svg"), "mine too");
		const before = snapshot(folder);
		expect(await put(folder, first)).toEqual([
			foreign(folder, "gauge.svg"),
			foreign(folder, "strip.svg"),
		]);
		expect(snapshot(folder)).toEqual(before);
	});

	it("refuses a file edited since camber wrote it", async () => {
		const folder = tempFolder();
		await put(folder, first);
		writeFileSync(join(folder, "gauge.svg"), "gauge 1 edited");
		const before = snapshot(folder);
		expect(await put(folder, second)).toEqual([foreign(folder, "gauge.svg", listedButChanged)]);
		expect(snapshot(folder)).toEqual(before);
	});

	it("does not take a copy under another name for its own", async () => {
		const folder = tempFolder();
		await put(folder, first);
		writeFileSync(join(folder, "copy.svg"), first["gauge.svg"]!);
		expect(await put(folder, { ...first, "copy.svg": "new" })).toEqual([
			foreign(folder, "copy.svg"),
		]);
	});

	it("takes a file that already holds the bytes wanted", async () => {
		const folder = tempFolder();
		writeFileSync(join(folder, "gauge.svg"), first["gauge.svg"]!);
		expect(await put(folder, first)).toMatchObject({ unchanged: ["gauge.svg"] });
	});

	it("replaces edited and unknown files with force", async () => {
		const folder = tempFolder();
		await put(folder, first);
		writeFileSync(join(folder, "gauge.svg"), "gauge 1 edited");
		writeFileSync(join(folder, "new.svg"), "mine");
		const texts = { ...second, "new.svg": "new" };
		expect(await put(folder, texts, true)).toMatchObject({
			written: ["gauge.svg", "new.svg", "manifest.json"],
			left: [],
		});
		expect(snapshot(folder)).toEqual(whole(texts));
	});

	it.each([
		["of another program", '{"writer":"other","files":[]}'],
		["that is no JSON", "writer: camber"],
		["cut off", manifestText(first).slice(0, 40)],
		["without a list", '{"writer":"camber"}'],
		["with a list of something else", '{"writer":"camber","files":["gauge.svg"]}'],
		["that is empty", ""],
	])("refuses a manifest %s", async (_, text) => {
		const folder = tempFolder();
		writeFileSync(join(folder, "manifest.json"), text);
		writeFileSync(join(folder, "gauge.svg"), "gauge 1");
		const before = snapshot(folder);
		expect(await put(folder, second)).toEqual([
			foreign(folder, "gauge.svg"),
			foreign(folder, "manifest.json"),
		]);
		expect(snapshot(folder)).toEqual(before);
		expect(await put(folder, second, true)).toMatchObject({ left: [] });
		expect(snapshot(folder)).toEqual(whole(second));
	});

	it("reads nothing outside the folder that a manifest may name", async () => {
		const parent = tempFolder();
		const folder = join(parent, "out");
		mkdirSync(folder);
		writeFileSync(join(parent, "secret"), "s");
		writeFileSync(join(folder, "manifest.json"), manifestText({ "../secret": "s" }));
		const { disk, calls } = faultyDisk(() => false, "EIO");
		expect(await put(folder, first, false, disk)).toMatchObject({ stale: [] });
		const outside = calls.filter(({ path }) => path !== folder && !path.startsWith(`${folder}/`));
		expect(outside).toEqual([]);
	});
});

describe("putFiles where something else than a file lies", () => {
	it("refuses a folder with a file's name, with force too", async () => {
		const folder = tempFolder();
		mkdirSync(join(folder, "gauge.svg"));
		mkdirSync(join(folder, "manifest.json"));
		const refused = ["gauge.svg", "manifest.json"].map((file) =>
			problem("target-is-folder", [], { file, folder }),
		);
		expect(await put(folder, first)).toEqual(refused);
		expect(await put(folder, first, true)).toEqual(refused);
		expect(snapshot(folder)).toEqual({ "gauge.svg": "folder", "manifest.json": "folder" });
	});

	it("tells all kinds of trouble together", async () => {
		const folder = tempFolder();
		mkdirSync(join(folder, "gauge.svg"));
		writeFileSync(join(folder, "gauge.dxf"), "mine");
		symlinkSync("nowhere", join(folder, "strip.svg"));
		const found = await put(folder, first);
		expect(found).toEqual([
			problem("target-is-folder", [], { file: "gauge.svg", folder }),
			foreign(folder, "gauge.dxf"),
			foreign(folder, "strip.svg"),
		]);
	});

	it("never writes through a link: refuses it, and with force replaces the link alone", async () => {
		const parent = tempFolder();
		const folder = join(parent, "out");
		await put(folder, first);
		const precious = join(parent, "precious");
		// Even the very bytes camber wrote, or those wanted, do not make a link camber's.
		writeFileSync(precious, "gauge 1");
		unlinkSync(join(folder, "gauge.svg"));
		symlinkSync(precious, join(folder, "gauge.svg"));
		expect(await put(folder, second)).toEqual([foreign(folder, "gauge.svg", listedButChanged)]);
		expect(await put(folder, first)).toEqual([foreign(folder, "gauge.svg", listedButChanged)]);
		expect(await put(folder, second, true)).toMatchObject({ left: [] });
		expect(snapshot(folder)).toEqual(whole(second));
		expect(readFileSync(precious, "utf8")).toBe("gauge 1");
	});

	it("does not look through a manifest that is a link", async () => {
		const parent = tempFolder();
		const folder = join(parent, "out");
		await put(folder, first);
		writeFileSync(join(parent, "elsewhere.json"), manifestText(first));
		unlinkSync(join(folder, "manifest.json"));
		symlinkSync("../elsewhere.json", join(folder, "manifest.json"));
		expect(await put(folder, second)).toEqual([
			foreign(folder, "gauge.svg"),
			foreign(folder, "manifest.json"),
		]);
	});
});

describe("putFiles where the folder is no use", () => {
	it.each(["", "/"])("refuses a folder that is a file (%j at the end)", async (end) => {
		const folder = join(tempFolder(), "out");
		writeFileSync(folder, "mine");
		expect(await put(folder + end, first)).toEqual([problem("folder-is-file", [], { folder })]);
		expect(readFileSync(folder, "utf8")).toBe("mine");
	});

	it("refuses a folder under a file", async () => {
		const file = join(tempFolder(), "file");
		writeFileSync(file, "mine");
		const folder = join(file, "a", "b");
		expect(await put(folder, first)).toEqual([problem("folder-under-file", [], { folder, file })]);
	});

	it("refuses a folder that is a link to nowhere", async () => {
		const parent = tempFolder();
		const folder = join(parent, "out");
		symlinkSync("nowhere", folder);
		const reason = "file already exists";
		expect(await put(folder, first)).toEqual([problem("folder-unusable", [], { folder, reason })]);
		expect(snapshot(parent)).toEqual({ out: "link to nowhere" });
	});

	it("refuses a disk that is not there", async () => {
		const { disk } = faultyDisk((_, operation) => operation === "stat", "ENOENT");
		expect(await put("/out", first, false, disk)).toEqual([
			problem("folder-unusable", [], { folder: "/out", reason: "there is no /" }),
		]);
	});

	it.each([
		["EACCES", "permission denied"],
		["EPERM", "operation not permitted"],
		["EROFS", "read-only file system"],
	])("refuses a folder it may not make or fill: %s", async (code, reason) => {
		// A read-only disk bars removal too, even of what is not there.
		const changes = ["mkdir", "writeNew", "rename", "rm", "rmdir"];
		const cases = [
			{ made: false, barred: ["stat"] },
			{ made: true, barred: ["readdir"] },
			{ made: false, barred: ["mkdir"] },
			{ made: false, barred: ["writeNew"] },
			{ made: true, barred: ["writeNew"] },
			{ made: false, barred: changes },
			{ made: true, barred: changes },
		];
		for (const { made, barred } of cases) {
			const parent = tempFolder();
			const folder = join(parent, "out");
			if (made) mkdirSync(folder);
			const before = snapshot(parent);
			const { disk } = faultyDisk((_, operation) => barred.includes(operation), code);
			const refused = problem("folder-unusable", [], { folder, reason });
			expect(await put(folder, first, false, disk)).toEqual([refused]);
			expect(snapshot(parent)).toEqual(before);
		}
	});

	it("refuses a file that it cannot look into, with force too", async () => {
		const folder = tempFolder();
		await put(folder, first);
		const file = join(folder, "gauge.svg");
		const { disk } = faultyDisk((_, op, path) => op === "readFile" && path === file, "EACCES");
		const reason = "permission denied";
		const refused = [problem("file-unreadable", [], { file, reason })];
		expect(await put(folder, second, false, disk)).toEqual(refused);
		expect(await put(folder, second, true, disk)).toEqual(refused);
	});
});

describe("putFiles with names that are no use", () => {
	it.each([
		["a path upwards", ["../gauge.svg"]],
		["a full path", ["/tmp/gauge.svg"]],
		["a Windows path", ["a\\gauge.svg"]],
		["a Windows device", ["aux.svg"]],
		["two that differ in case alone", ["gauge.svg", "Gauge.SVG"]],
		["the manifest's own", ["Manifest.json"]],
	])("throws before it touches the disk: %s", async (_, names) => {
		const folder = join(tempFolder(), "out");
		const { disk, calls } = faultyDisk(() => false, "EIO");
		const texts = Object.fromEntries(names.map((name) => [name, "text"]));
		await expect(put(folder, texts, true, disk)).rejects.toThrow(RangeError);
		expect(calls).toEqual([]);
		expect(existsSync(folder)).toBe(false);
	});
});
