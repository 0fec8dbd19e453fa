import { describe, expect, it } from "vitest";
import { camber } from "../support/run-camber.js";

const kerf = (...flags: string[]) => camber(["kerf", ...flags]);
const drawn = ["--blocks", "10", "--nominal", "100mm"];

describe("camber kerf", () => {
	it("prints the kerf, its uncertainty and the line for the job file", async () => {
		const { code, out, err } = await kerf(...drawn, "--measured", "98.42mm");
		expect({ code, err }).toEqual({ code: 0, err: "" });
		expect(out).toContain("Kerf 0.158 ± 0.0012 mm, from 10 blocks drawn 100 mm, one reading.");
		expect(out.replace(/\s+/gu, " ")).toContain("twice the standard one of 0.00058 mm");
		expect(out.split("\n")).toContain("kerf: 0.158 mm");
	});

	it("takes several readings, in any unit", async () => {
		const more = ["--measured", "98.44", "--measured", "9.84 cm", "--resolution", "0.01 mm"];
		const { code, out } = await kerf(...drawn, "--measured", "98.42mm", ...more);
		expect(code).toBe(0);
		expect(out).toContain("mean of 3 readings, spread 0.0040 mm");
		expect(out).toContain("steps of 0.01 mm");
		expect(out.split("\n")).toContain("kerf: 0.158 mm");
	});

	it("doubts readings far apart and a kerf within its own uncertainty", async () => {
		const apart = await kerf(...drawn, "--measured", "98.4", "--measured", "97.1");
		expect(apart.out).toContain("The readings lie 1.3 mm apart");
		expect((await kerf(...drawn, "--measured", "99.99")).out).toContain("its own uncertainty");
		expect((await kerf(...drawn, "--measured", "98.42")).out).not.toMatch(
			/apart|own uncertainty:/u,
		);
	});

	it("names the sheet as a machine's list does, and refuses one that is none", async () => {
		const { out } = await kerf(...drawn, "--measured", "98.42mm", "--sheet", "Acrylic 1/8 in");
		expect(out.split("\n")).toContain("acrylic 3.175 mm: 0.158 mm");
		const bad = await kerf(...drawn, "--measured", "98.42mm", "--sheet", "glass 3 mm");
		expect(bad.code).toBe(2);
		expect(bad.err).toContain('--sheet: "glass 3 mm" names no sheet');
	});

	it.each([
		[["100mm"], "--measured: 100 mm over blocks drawn 100 mm leave nothing"],
		[["98.42", "100.1"], "--measured: 100.1 mm over"],
		[["20"], "--measured: 20 mm over 10 blocks drawn 100 mm make a kerf of 8 mm"],
		[["98,42"], '--measured: "98,42" has a decimal comma. Write a decimal point: 98.42.'],
		[["98.42 lines"], 'has the unit "lines"'],
		[["wide"], '--measured: "wide" is no length'],
		[["0"], "--measured: 0 means 0 mm here, which is out of range"],
		[["-3 mm"], "--measured: -3 mm is out of range"],
		[["1/0 in"], "divides by zero"],
	])("refuses the readings %j as a job file would", async (readings, says) => {
		const flags = readings.flatMap((r) => ["--measured", r]);
		const { code, out, err } = await kerf(...drawn, ...flags);
		expect({ code, out }).toEqual({ code: 2, out: "" });
		expect(err).toContain(says);
		expect(err).not.toMatch(/undefined|NaN|\n\s+at /u);
	});

	it.each(["0", "-1", "2.5", "ten", "1001"])("refuses %s blocks", async (blocks) => {
		const rest = ["--nominal", "100mm", "--measured", "98.42mm"];
		const { code, err } = await kerf("--blocks", blocks, ...rest);
		expect(code).toBe(2);
		expect(err).toContain(
			`--blocks: ${blocks} is not allowed here. Give a whole number, 1 to 1000.`,
		);
	});

	it("says all that is wrong at once", async () => {
		const wrong = ["--blocks", "0", "--nominal", "x", "--measured", "y", "--resolution", "2 mm"];
		const { code, err } = await kerf(...wrong);
		expect(code).toBe(2);
		for (const flag of ["--blocks", "--nominal", "--measured", "--resolution"]) {
			expect(err).toContain(`error: ${flag}: `);
		}
	});

	it("asks for what is missing", async () => {
		const { code, err } = await kerf(...drawn);
		expect(code).toBe(2);
		expect(err).toContain("--measured");
	});
});
