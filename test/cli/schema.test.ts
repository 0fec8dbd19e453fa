import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020, type ValidateFunction } from "ajv/dist/2020.js";
import { beforeAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { starterJob } from "../../src/cli/starter.js";
import { JOB, jobText, making, withBlock, withNeck } from "../support/job-text.js";
import { camber } from "../support/run-camber.js";

// Checked with ajv, a general validator of JSON Schema, draft 2020-12.
describe("camber schema", () => {
	let schema: Record<string, unknown>;
	let ajv: Ajv2020;
	let isJob: ValidateFunction;

	beforeAll(async () => {
		const { code, out } = await camber(["schema"]);
		expect(code).toBe(0);
		schema = JSON.parse(out);
		ajv = new Ajv2020({ strict: false, allErrors: true });
		isJob = ajv.compile(schema);
	});

	it("is a schema of draft 2020-12", () => {
		expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
		expect(ajv.validateSchema(schema), JSON.stringify(ajv.errors)).toBe(true);
	});

	it("takes every example and the starter", () => {
		const names = readdirSync("examples").filter((name) => name.endsWith(".yaml"));
		expect(names.length).toBeGreaterThan(4);
		const texts = names.map((name) => readFileSync(`examples/${name}`, "utf8"));
		for (const text of [...texts, starterJob("My neck", "s.json"), JOB]) {
			expect(isJob(parse(text)), JSON.stringify(isJob.errors?.slice(0, 3))).toBe(true);
		}
	});

	it.each([
		["an unknown key", withNeck("nutshift: 1")],
		["an unknown block", withBlock("shops: {}")],
		["an unknown setting", making("radius-gauge: {fases: [convex]}")],
		["an unknown tool", making("radius-gage")],
		["no tools", jobText(/make:[\s\S]*/u, "make: []\n")],
		["no neck", jobText(/neck:[\s\S]*?\nwire/u, "wire")],
		["no frets", jobText("frets: 22", "frets: 0")],
		["half a fret", jobText("frets: 22", "frets: 1.5")],
		["too many frets", jobText("frets: 22", "frets: 151")],
		["frets in words", jobText("frets: 22", "frets: twenty")],
		["a list for a length", jobText("648 mm", "[648]")],
		["a truth for a length", jobText("648 mm", "true")],
		["nothing for a length", jobText("648 mm", "")],
		["an incomplete fan", jobText("648 mm", "{bass: 27 in, treble: 25 in}")],
		["another form", jobText("format: 1", "format: 2")],
		["unknown units", jobText("format: 1", "format: 1\nunits: inches")],
		["an unknown material", jobText("acrylic", "pvc")],
		["an unknown machine", withBlock("machine: {kind: lazer}")],
		["a triple marker", withNeck("markers: [{12: triple}]")],
		["two tools in one entry", making("{radius-gauge: {}, slot-strip: {}}")],
		["a face that is none", making("radius-gauge: {faces: [hollow]}")],
		["faces without any", making("radius-gauge: {faces: []}")],
		["a list at the top", "- a"],
	])("refuses %s", (_, text) => expect(isJob(parse(text))).toBe(false));

	it("says of every key what it is", () => {
		const undescribed: string[] = [];
		const walk = (node: Record<string, unknown>, at: string) => {
			const properties = (node.properties ?? {}) as Record<string, Record<string, unknown>>;
			for (const [key, inner] of Object.entries(properties)) {
				const isBlock = inner.properties !== undefined;
				if (!isBlock && typeof inner.description !== "string") undescribed.push(`${at}${key}`);
				walk(inner, `${at}${key}.`);
			}
		};
		walk(schema, "");
		expect(undescribed).toEqual([]);
	});
});
