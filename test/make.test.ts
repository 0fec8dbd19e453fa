import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { type MakeOptions, make } from "../src/make.js";
import { type Problem, problemText } from "../src/problem/index.js";
import { OWN_SIGNS } from "../src/stages/letters.js";
import { cubicFont } from "./lettering/cubic-font.js";
import { JOB, jobText, making, withBlock } from "./support/job-text.js";
import { readDxf } from "./support/read-dxf.js";
import { readSvg } from "./support/read-svg.js";

const FONT =
	"node_modules/@expo-google-fonts/barlow-condensed/500Medium/BarlowCondensed_500Medium.ttf";

async function made(text: string, options: MakeOptions = {}) {
	const result = await make(text, { proof: false, ...options });
	if (!result.ok) throw new Error(result.problems.map(problemText).join("\n"));
	return result;
}

/** Every file's text by its name. */
async function filesOf(text: string, options: MakeOptions = {}): Promise<Record<string, string>> {
	const { files } = await made(text, options);
	const decoder = new TextDecoder();
	return Object.fromEntries(files.map(({ name, bytes }) => [name, decoder.decode(bytes)]));
}

async function refusals(text: string, options: MakeOptions = {}): Promise<readonly Problem[]> {
	const result = await make(text, { proof: false, ...options });
	return result.ok ? [] : result.problems;
}

/** A tree with the keys of every map in the opposite order; lists stay as they are. */
function keysTurned(tree: unknown): unknown {
	if (Array.isArray(tree)) return tree.map(keysTurned);
	if (typeof tree !== "object" || tree === null) return tree;
	const entries = Object.entries(tree).reverse();
	return Object.fromEntries(entries.map(([key, value]) => [key, keysTurned(value)]));
}

describe("make", () => {
	it("names its files after job and part, the manifest last", async () => {
		const { files } = await made(making("radius-gauge: {faces: [concave, convex]}", "slot-strip"));
		expect(files.map(({ name }) => name)).toEqual([
			"test-neck-radius-gauge-concave.svg",
			"test-neck-radius-gauge-concave.dxf",
			"test-neck-radius-gauge-convex.svg",
			"test-neck-radius-gauge-convex.dxf",
			"test-neck-slot-strip.svg",
			"test-neck-slot-strip.dxf",
			"manifest.json",
		]);
	});

	it("gives the same bytes twice, whatever the order of the job's keys", async () => {
		const once = await filesOf(JOB);
		expect(await filesOf(JOB)).toEqual(once);
		expect(await filesOf(stringify(keysTurned(parse(JOB))))).toEqual(once);
	});

	it("gives the same bytes for the same lengths in any unit", async () => {
		const inches = `format: 1
units: in
job: Test neck
neck:
  scale: 25.5
  frets: 22
  radius: {nut: 10, 5 in: 11, last-fret: 14}
  width: {nut: 1 3/4, last-fret: 2.25}
wire: {crown-width: 0.11, crown-height: 0.05, tang-width: 0.02, tang-depth: 0.06}
stock: {material: acrylic, thickness: 1/8}
machine: {tolerance: 0.05 mm}
make:
  - notched-straightedge: {height: 1 1/2, hanging-hole: 0.2}
  - radius-gauge: {at: [nut, 5 in]}
  - slot-strip: {end-margin: 0.5}
`;
		const inMm = {
			"25.5": 647.7,
			"radius: {nut: 10, 5 in: 11, last-fret: 14}":
				"radius: {nut: 254, 127 mm: 279.4, last-fret: 355.6}",
			"1 3/4": 44.45,
			"2.25": 57.15,
			"0.11": 2.794,
			"0.05,": "1.27,",
			"0.02": 0.508,
			"0.06": 1.524,
			"1/8": 3.175,
			"1 1/2": 38.1,
			"0.2}": "5.08}",
			"0.5}": "12.7}",
			"[nut, 5 in]": "[nut, 127 mm]",
		};
		const swap = (text: string) =>
			Object.entries(inMm).reduce((t, [from, to]) => t.replace(from, String(to)), text);
		const millimetres = swap(inches).replace("units: in\n", "");
		const centimetres = inches
			.replace("units: in", "units: cm")
			.replace("scale: 25.5", "scale: 64.77")
			.replace(
				"{nut: 10, 5 in: 11, last-fret: 14}",
				"{nut: 25.4, 12.7 cm: 27.94, last-fret: 35.56}",
			)
			.replace("1 3/4", "4.445")
			.replace("2.25", "5.715")
			.replace(
				"0.11, crown-height: 0.05, tang-width: 0.02, tang-depth: 0.06",
				"0.2794, crown-height: 0.127, tang-width: 0.0508, tang-depth: 0.1524",
			)
			.replace("1/8", "0.3175")
			.replace("1 1/2, hanging-hole: 0.2", "3.81, hanging-hole: 0.508")
			.replace("[nut, 5 in]", "[nut, 12.7 cm]")
			.replace("0.5}", "1.27}");
		const once = await filesOf(inches);
		expect(Object.keys(once)).toHaveLength(9);
		expect(await filesOf(millimetres)).toEqual(once);
		expect(await filesOf(centimetres)).toEqual(once);
	});

	it("makes only the formats asked for, and says so in the manifest", async () => {
		const files = await filesOf(making("radius-gauge"), { formats: ["dxf"] });
		expect(Object.keys(files)).toEqual(["test-neck-radius-gauge-concave.dxf", "manifest.json"]);
		expect(JSON.parse(files["manifest.json"]!).files).toHaveLength(1);
	});

	it.each([
		["r2000", "AC1015"],
		["r12", "AC1009"],
		["loose", "AC1009"],
	] as const)("writes DXF %s as %s", async (dxf, version) => {
		const files = await filesOf(making("radius-gauge"), { formats: ["dxf"], dxf });
		const { header } = readDxf(files["test-neck-radius-gauge-concave.dxf"]!);
		expect(header.get("$ACADVER")?.[0]?.value).toBe(version);
	});

	it("leaves the reference layer out on demand, and nothing else", async () => {
		const text = making("radius-gauge", "slot-strip");
		const [all, bare] = [await filesOf(text), await filesOf(text, { dimensions: false })];
		const layers = (dxf: string) => [...new Set(readDxf(dxf).entities.map(({ layer }) => layer))];
		const groups = (svg: string) => readSvg(svg).groups.map(({ attributes }) => attributes.id);
		for (const name of Object.keys(all).filter((n) => n.endsWith(".dxf"))) {
			const lost = layers(all[name]!).filter((layer) => !layers(bare[name]!).includes(layer));
			expect(lost).toHaveLength(1);
			expect(lost[0]).toMatch(/reference/iu);
			const svg = name.replace(".dxf", ".svg");
			const gone = groups(all[svg]!).filter((id) => !groups(bare[svg]!).includes(id));
			expect(gone).toHaveLength(1);
			expect(gone[0]).toMatch(/reference/iu);
		}
	});

	it("makes an unusual scale only when asked to", async () => {
		const text = making("radius-gauge").replace("648 mm", "2100 mm");
		expect((await refusals(text)).map(({ code }) => code)).toEqual(["length-range"]);
		expect(await refusals(text, { allowUnusual: true })).toEqual([]);
	});

	it("tells the problems of all tools at once and makes nothing", async () => {
		const text = making(
			"notched-straightedge: {along: 7}",
			"radius-gauge: {radii: [20 mm]}",
			"slot-strip: {slots: tang, edge-margin: 1}",
		);
		const result = await make(text, { proof: false });
		expect(result.ok).toBe(false);
		expect("files" in result).toBe(false);
		expect(!result.ok && result.problems.map(({ code }) => code)).toEqual([
			"no-such-string",
			"chord-wider-than-circle",
			"strip-falls-apart",
		]);
	});

	it("has cautions of the machine and of every material, each once, the standing one last", async () => {
		const text = making("radius-gauge: {stock: {material: steel, thickness: 1}}", "slot-strip");
		const { cautions } = await made(text);
		expect(new Set(cautions).size).toBe(cautions.length);
		const of = (word: string) => cautions.filter((c) => c.startsWith(word)).length;
		expect([of("Laser"), of("Steel"), of("Acrylic")]).toEqual([2, 1, 1]);
		expect(cautions.at(-1)).toMatch(/^This sheet is a drawing/u);
	});
});

describe("a job with a font", () => {
	const text = withBlock("lettering: {font: fonts/Barlow.ttf}");
	const load = async () => new Uint8Array(readFileSync(FONT));

	it("is lettered in its outlines, named after the file wherever it lies", async () => {
		const gauge = making("radius-gauge").replace(
			"make:",
			"lettering: {font: fonts/Barlow.ttf}\nmake:",
		);
		const files = await filesOf(gauge, { load });
		const moved = gauge.replace("fonts/Barlow.ttf", "../Barlow.ttf");
		expect(await filesOf(moved, { load })).toEqual(files);
		expect(files["manifest.json"]).toContain('"font": "barlow"');
		const plain = await filesOf(making("radius-gauge"));
		expect(files["test-neck-radius-gauge-concave.svg"]).not.toBe(
			plain["test-neck-radius-gauge-concave.svg"],
		);
	});

	it("asks its loader for the path as the job gives it", async () => {
		const asked: string[] = [];
		const listening = async (path: string) => {
			asked.push(path);
			return load();
		};
		await made(text, { load: listening, formats: ["svg"] });
		expect(asked).toEqual(["fonts/Barlow.ttf"]);
	});

	it("is refused where nothing loads fonts", async () => {
		expect(await refusals(text)).toMatchObject([
			{ code: "font-not-loaded", where: { path: ["lettering", "font"], line: 11 } },
		]);
	});

	it.each([
		["a font cut off", async () => new Uint8Array(readFileSync(FONT)).slice(0, 9000)],
		["no font", async () => new TextEncoder().encode("no font at all")],
		["nothing", async () => new Uint8Array()],
		["a failure", async () => Promise.reject(new Error("the cable is out"))],
	])("is refused where its file holds %s", async (_, broken) => {
		const [first] = await refusals(text, { load: broken });
		expect(first).toMatchObject({ code: "font-unusable", facts: { file: "fonts/Barlow.ttf" } });
		expect(String(first!.facts.reason).length).toBeGreaterThan(5);
		expect(String(first!.facts.reason)).not.toMatch(/the font "/u);
	});

	it("is refused where the font lacks signs that camber writes itself", async () => {
		const ring = async () => new Uint8Array(cubicFont());
		expect(await refusals(text, { load: ring })).toMatchObject([
			{ code: "font-lacks-signs", facts: { missing: expect.arrayContaining(["A", "space", "±"]) } },
		]);
	});

	it("is refused where name or date hold signs that it lacks, both at once", async () => {
		const odd = withBlock("date: 三月").replace("Test neck", "Neck 漢");
		expect((await refusals(odd)).map(({ where }) => where.path)).toEqual([["job"], ["date"]]);
	});
});

describe("OWN_SIGNS", () => {
	it("hold every sign that parts, notes, claims and cautions are written with", async () => {
		const texts: string[] = [];
		for (const name of readdirSync("examples").filter((n) => n.endsWith(".yaml"))) {
			const { tools, cautions } = await made(readFileSync(`examples/${name}`, "utf8"), {
				formats: [],
			});
			for (const part of tools.flatMap(({ parts }) => parts)) {
				texts.push(part.title, part.workingEdge, ...part.notes, ...cautions);
				texts.push(...part.claims.map((c) => (c.kind === "label" ? c.text : c.feature)));
			}
		}
		expect(texts.length).toBeGreaterThan(500);
		const foreign = new Set([...texts.join("")].filter((sign) => !OWN_SIGNS.includes(sign)));
		expect([...foreign]).toEqual([]);
	});

	it("are all in the lettering that camber brings along", async () => {
		expect(await refusals(jobText("Test neck", "Test neck 1"))).toEqual([]);
		expect(OWN_SIGNS).toHaveLength(97);
	});
});
