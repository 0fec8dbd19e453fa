import { describe, expect, it } from "vitest";
import { singleKeys } from "../../src/cli/commands/single.js";
import { flagOf } from "../../src/job/keys.js";
import { TOOLS } from "../../src/tools/index.js";
import { camber, jobFile } from "../support/run-camber.js";
import { snapshot, tempFolder } from "../support/temp-folder.js";

const NECK = {
	"--scale": "648 mm",
	"--frets": "22",
	"--radius": "{nut: 10 in, last-fret: 14 in}",
	"--width": "{nut: 43 mm, last-fret: 56 mm}",
	"--strings-count": "6",
	"--strings-at-nut": "35.5 mm",
	"--strings-at-saddle": "52 mm",
	"--crown-width": "2.7 mm",
	"--crown-height": "1.3 mm",
	"--tang-width": "0.53 mm",
	"--tang-depth": "1.6 mm",
	"--material": "acrylic",
	"--thickness": "3 mm",
};

function flags(more: Readonly<Record<string, string>> = {}): string[] {
	return Object.entries({ ...NECK, ...more }).flat();
}

/** The same neck as a job file that makes one tool. */
function asFile(tool: string, more = "", settings = "{}"): string {
	return `format: 1
job: Flagged
neck:
  scale: 648 mm
  frets: 22
  radius: {nut: 10 in, last-fret: 14 in}
  width: {nut: 43 mm, last-fret: 56 mm}
  strings: {count: 6, at-nut: 35.5 mm, at-saddle: 52 mm}
${more}wire: {crown-width: 2.7 mm, crown-height: 1.3 mm, tang-width: 0.53 mm, tang-depth: 1.6 mm}
stock: {material: acrylic, thickness: 3 mm}
make: [{${tool}: ${settings}}]
`;
}

describe("the flags of camber single", () => {
	it("reach every key of a job and every setting of the tool", async () => {
		for (const tool of TOOLS) {
			const { out } = await camber(["single", tool.id, "--help"]);
			const { job, tool: own } = singleKeys(tool);
			for (const { path } of [...job, ...own]) expect(out).toContain(`${flagOf(path)} <value>`);
			expect(own.map(({ path }) => path[0])).toEqual(
				expect.arrayContaining(Object.keys(tool.settings("mm").shape)),
			);
			const needed = out.match(/\(needed\)/gu) ?? [];
			expect(needed).toHaveLength(tool.neckless ? (tool.onPaper ? 0 : 2) : 7);
			const owed = out.replace(/\s+/gu, " ").match(/\(needed, or readings\.\w+\)/gu) ?? [];
			expect(owed).toHaveLength(tool.neckless ? 0 : 3);
		}
	});
});

describe("camber single", () => {
	it("makes a kerf coupon of the sheet alone", async () => {
		const sheet = ["--material", "acrylic", "--thickness", "3mm", "--out", `${tempFolder()}/out`];
		const { code, err, out } = await camber(["single", "kerf-coupon", ...sheet]);
		expect({ code, err }).toEqual({ code: 0, err: "" });
		expect(out).toContain("Kerf coupon, 10 blocks");
	});

	it.each([
		[
			"radius-gauge",
			{ "--at": "[nut, 7, 120 mm]", "--gauge-width": "60" },
			"",
			"{at: [nut, 7, 120 mm], gauge-width: 60}",
		],
		[
			"radius-gauge",
			{ "--faces": "[convex]", "--name": "block" },
			"",
			"{faces: [convex], name: block}",
		],
		[
			"notched-straightedge",
			{ "--along": "1", "--zero-fret": "true", "--second-edge": "{scale: 25 in, frets: 20}" },
			"  zero-fret: true\n",
			"{along: 1, second-edge: {scale: 25 in, frets: 20}}",
		],
		[
			"slot-strip",
			{
				"--slots": "tang",
				"--markers": "[3, {12: double}]",
				"--nut-shift": "-0.5",
				"--distances": "false",
			},
			"  markers: [3, {12: double}]\n  nut-shift: -0.5\n",
			"{slots: tang, distances: false}",
		],
		[
			"slot-strip",
			{
				"--division": "{ratios: [9/8, 5/4, 3/2, 2]}",
				"--frets": "8",
				"--date": "1.10",
				"--pens-cut-colour": "#123456",
				"--temperature-swing": "5 K",
			},
			"  division: {ratios: [9/8, 5/4, 3/2, 2]}\ndate: 1.10\nmachine: {pens: {cut: {colour: '#123456'}}}\nshop: {temperature-swing: 5}\n",
			"{}",
		],
	])("makes %s of %j as a job file would", async (tool, more, neck, settings) => {
		const out = `${tempFolder()}/out`;
		const text = asFile(tool, neck, settings).replace(
			"frets: 22",
			`frets: ${(more as { "--frets"?: string })["--frets"] ?? 22}`,
		);
		const { file, out: fromFile } = jobFile(text);
		const byFile = await camber(["make", file, "-o", fromFile]);
		expect(byFile.err).toBe("");
		const byFlags = await camber(["single", tool, ...flags(more), "--job", "Flagged", "-o", out]);
		expect(byFlags.err).toBe("");
		expect(snapshot(out)).toEqual(snapshot(fromFile));
	});

	it("calls the job after the tool if it has no name", async () => {
		const out = `${tempFolder()}/out`;
		const { out: said } = await camber(["single", "radius-gauge", ...flags(), "-o", out]);
		expect(said).toContain("Radius gauge: 3 parts");
	});

	it.each([
		[{ "--scale": "25.5" }, "--scale: 25.5 means 25.5 mm here"],
		[{ "--scale": "{bass: 27 in, treble: 25.5, square-fret: 7}" }, "--scale: 25.5 means"],
		[{ "--radius": "{nut: 10,5 in}" }, '--radius: "5 in"'],
		[{ "--radius": "{nut: 10 in" }, "the value of --radius cannot be read: {nut: 10 in"],
		[{ "--radius": "{nut: &a 10 in, 7: *a}" }, "the value of --radius cannot be read"],
		[{ "--radius": "[12 in]" }, "--radius: "],
		[{ "--frets": "twenty" }, '--frets: "twenty" stands where'],
		[{ "--frets": "22.5" }, "--frets: 22.5 is not allowed"],
		[{ "--crown-width": "2.7 in" }, "--crown-width: 2.7 in is 68.58 mm"],
		[{ "--strings-courses": "4" }, "--strings-count: strings need count or courses"],
		[{ "--strings-at-nut": "60" }, "--strings-at-nut: at the nut"],
		[{ "--material": "pvc" }, "--material: pvc is refused"],
		[{ "--pens-cut-colour": "red" }, '--pens-cut-colour: "red"'],
		[{ "--kerf": "9 mm" }, "--kerf: 9 mm is out of range"],
		[{ "--job": "漢字" }, '--job: "漢字"'],
		[{ "--zero-fret": "yes" }, '--zero-fret: "yes"'],
		[{ "--at": "nut" }, '--at: "nut" stands where a list'],
		[{ "--at": "[nut, saddle, 900 mm]" }, "--at: 900 mm is not on this neck"],
		[{ "--faces": "[convex, hollow]" }, '--faces: "hollow"'],
		[{ "--radii": "[20 mm]" }, "--gauge-width: a gauge 56 mm wide"],
		[{ "--gauge-hole": "wide" }, '--gauge-hole: "wide" is no length'],
		[{ "--name": "漢字" }, '--name: "漢字"'],
		[{ "--font": "none.ttf" }, "--font: the font none.ttf cannot be used"],
		[{ "--format": "png" }, '"png" is not allowed for --format'],
	])("points to the flag: %j", async (more, says) => {
		const folder = tempFolder();
		const out = `${folder}/out`;
		const { code, err } = await camber(["single", "radius-gauge", ...flags(more), "-o", out]);
		expect(code).toBe(2);
		expect(err).toContain(`error: ${says}`);
		expect(err).not.toMatch(/undefined|: neck\.|make\[/u);
		expect(snapshot(folder)).toEqual({});
	});

	it("names every flag that is missing", async () => {
		const { code, err } = await camber(["single", "slot-strip"]);
		expect(code).toBe(2);
		const flag = /^error: (--[a-z-]+): "[a-z-]+" is missing/gmu;
		expect([...err.matchAll(flag)].map((m) => m[1])).toEqual([
			"--scale",
			"--radius",
			"--width",
			"--frets",
			"--crown-width",
			"--crown-height",
			"--tang-width",
			"--tang-depth",
			"--material",
			"--thickness",
		]);
	});

	it("reports to machines too", async () => {
		const { code, out, err } = await camber(["single", "slot-strip", "--json"]);
		expect([code, err]).toEqual([2, ""]);
		expect(JSON.parse(out).problems).toHaveLength(10);
		const unread = await camber(["single", "slot-strip", "--radius", "{nut", "--json"]);
		expect(JSON.parse(unread.out).problems).toMatchObject([{ code: "flag-yaml" }]);
	});
});
