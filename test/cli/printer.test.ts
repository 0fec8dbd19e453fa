import { describe, expect, it } from "vitest";
import { jobText, making } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";
import { snapshot } from "../support/temp-folder.js";

const printer = (...flags: string[]) => camber(["printer", ...flags]);
const read = ["--nominal", "10 in", "--across", "253", "--along", "25.45 cm"];
const words = (text: string) => text.replace(/\s+/gu, " ");

describe("camber printer", () => {
	it("prints the block for the job file and what error it leaves", async () => {
		const { code, out, err } = await printer(...read);
		expect({ code, err }).toEqual({ code: 0, err: "" });
		expect(out).toContain("\n\nprinter:\n  across: 0.996063\n  along: 1.001969\n\n");
		// By hand: 500 * 0.250127/253 = 0.494 and 500 * 0.250127/254.5 = 0.491; a bound rounds up.
		expect(words(out)).toContain(
			"500 mm (taken here; --longest or --job says another): at most 0.50 mm across, 0.50 mm along",
		);
		// By hand: 500 * 0.25/0.2 = 625, with 2 % to spare 638; 500 * 0.100127/253 = 0.1979.
		expect(words(out)).toContain("read these rules to 0.2 mm, or rules of 640 mm or more");
		for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
	});

	it("asks for no better reading where little is left", async () => {
		const { out } = await printer(...read, "--resolution", "0.1 mm", "--longest", "400 mm");
		// By hand: 400 * 0.050127/253 = 0.0793.
		expect(words(out)).toContain("400 mm: at most 0.08 mm across, 0.08 mm along");
		expect(out).not.toContain("To get to");
	});

	it("gives better readings that do leave little", async () => {
		const longer = await printer(
			...["--nominal", "640", "--across", "641.5", "--along", "634"],
			...["--longest", "500 mm"],
		);
		expect(longer.out).not.toContain("To get to");
		const finer = await printer(...read, "--resolution", "0.2 mm");
		expect(finer.out).not.toContain("To get to");
	});

	it("takes another rule along the feed", async () => {
		const { out } = await printer(...read.slice(0, -1), "400.4", "--nominal-along", "400");
		expect(out).toContain("\n  across: 0.996063\n  along: 1.001\n");
	});

	it("takes the step from how the readings are written, unless it is told", async () => {
		const told = ["--nominal", "180", "--nominal-along", "260", "--across", "179.8", "--along"];
		const tenths = await printer(...told, "259.8");
		expect(tenths.out).toContain("\n  across: 0.998889\n  along: 0.999231\n");
		expect(words(tenths.out)).toContain("from a reading to 0.1 mm");
		const halves = await printer(...told.slice(0, -2), "179.5", "--along", "259.5");
		expect(words(halves.out)).toContain("from a reading to 0.5 mm");
	});

	it("tells readings that were swapped from misread ones", async () => {
		const { code, err } = await printer(
			...["--nominal", "180", "--nominal-along", "260", "--across", "260", "--along", "179.5"],
		);
		expect(code).toBe(2);
		expect(err).toContain("across and along are swapped");
	});

	it("says that no correction is needed where the reading tells none", async () => {
		const { code, out } = await printer(
			...["--nominal", "254", "--across", "254", "--along", "254.2"],
			...["--resolution", "0.5 mm"],
		);
		expect(code).toBe(0);
		expect(out).toContain("No correction is needed");
		expect(out).not.toContain("printer:\n");
		const one = await printer("--nominal", "254", "--across", "254", "--along", "255");
		expect(one.out).toContain("stays one as far as the reading tells (254 mm read of 254 mm)");
		expect(one.out).toContain("printer:\n  across: 1\n  along: 1.003937\n");
	});

	it("takes the longest part of a job, and writes nothing", async () => {
		const { file, folder } = jobFile(making("kerf-coupon", "slot-strip"));
		const before = snapshot(folder);
		const { code, out, err } = await printer(...read, "--job", file);
		expect({ code, err }).toEqual({ code: 0, err: "" });
		expect(words(out)).toMatch(/longest part, 4\d\d(?:\.\d+)? mm \(slot-strip\): at most/u);
		expect(snapshot(folder)).toEqual(before);
	});

	it("tells a job's problems at their places", async () => {
		const { file } = jobFile(jobText("frets: 22", "frets: 0"));
		const { code, out, err } = await printer(...read, "--job", file);
		expect([code, out]).toEqual([2, ""]);
		expect(err).toContain(`error: ${file}:5:10: neck.frets: `);
		const missing = await printer(...read, "--job", `${file}.none`);
		expect(missing.code).toBe(2);
		expect(missing.err).toContain(`${file}.none`);
	});

	it.each([
		["100 mm", "101.6", "4 in for 100 mm"],
		["4 in", "100.1", "100 mm for 4 in"],
		["10 in", "250", "250 mm for 10 in"],
		["254", "258.5", "Read the rule again"],
	])("refuses a rule of %s read as %s", async (nominal, across, says) => {
		const flags = ["--nominal", nominal, "--across", across, "--along", nominal];
		const { code, out, err } = await printer(...flags);
		expect({ code, out }).toEqual({ code: 2, out: "" });
		expect(err).toContain("error: --across: ");
		expect(words(err)).toContain(says);
		expect(err.trimEnd().split("\n")).toHaveLength(1);
	});

	it("says all that is wrong at once, each once", async () => {
		const { code, err } = await printer(
			...["--nominal", "x", "--across", "253,5", "--along", "1 mm"],
			...["--resolution", "3 mm", "--longest", "0"],
		);
		expect(code).toBe(2);
		for (const flag of ["--nominal", "--across", "--along", "--resolution", "--longest"]) {
			expect(err.split(`error: ${flag}: `), flag).toHaveLength(2);
		}
		expect(err.trimEnd().split("\n")).toHaveLength(5);
	});

	it.each(["--nominal", "--across", "--along"])("asks for %s if it is missing", async (flag) => {
		const at = read.indexOf(flag);
		const { code, out, err } = await printer(...read.slice(0, at), ...read.slice(at + 2));
		expect({ code, out }).toEqual({ code: 2, out: "" });
		expect(err).toContain(`required option '${flag} <length>'`);
	});

	it("takes a length or a job, not both", async () => {
		const { code, err } = await printer(...read, "--longest", "400", "--job", "neck.yaml");
		expect(code).toBe(2);
		expect(err).toContain("--longest");
	});
});
