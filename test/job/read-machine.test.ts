import { describe, expect, it } from "vitest";
import { kerfIn } from "../../src/cutting/index.js";
import { readJob, readMachine } from "../../src/job/index.js";
import { placeText } from "../../src/problem/index.js";
import { withBlock } from "../support/job-text.js";

const SHOP = `format: 1
machine:
  kind: laser
  tolerance: 0.04 mm
  bed: 600 x 400 mm
  margin: 8 mm
  kerf:
    acrylic 3 mm: 0.16 mm
    Plywood 1/8 in: 0.21 mm
  speeds: {cut: 12 mm/s, score: 4800 mm/min, travel: 300 mm/s}
  stretch: {x: 1.0008}
  tabs: {count: 4, width: 1.5 mm}
  pens: {cut: {colour: "#AA0000"}}
`;

/** The machine of the ordinary job with these keys of its own, over the shop's file. */
function machine(keys: string, text = SHOP) {
	const read = readJob(withBlock(`machine: {${keys}}`), { machine: { name: "shop.yaml", text } });
	if (!read.ok) throw new Error(JSON.stringify(read.problems));
	return read.job.bench.machine;
}

function problems(keys: string, text = SHOP) {
	const read = readJob(withBlock(`machine: {${keys}}`), { machine: { name: "shop.yaml", text } });
	return read.ok ? [] : read.problems;
}

describe("a machine's own file", () => {
	it("describes the machine of a job that says nothing of it", () => {
		expect(machine("")).toMatchObject({
			kind: "laser",
			tolerance: 0.04,
			cutter: null,
			bed: { size: { x: 600, y: 400 }, margin: 8, spacing: 2 },
			speeds: { cut: 12, score: 80, engrave: 80, travel: 300 },
			stretch: { x: 1.0008, y: 1 },
			tabs: { count: 4, width: 1.5 },
			pens: { cut: { colour: "#aa0000", width: 0.25 }, score: { colour: "#b5530d" } },
		});
	});

	it("gives every sheet its own kerf, by material and thickness", () => {
		const kerf = (material: string, thickness: number) =>
			kerfIn(machine(""), { material, thickness });
		expect(kerf("acrylic", 3)).toBe(0.16);
		expect(kerf("plywood", 3.175)).toBe(0.21);
		expect(kerf("acrylic", 4)).toBeNull();
		expect(kerf("plywood", 3)).toBeNull();
	});

	it("yields to the job, key by key, in maps and lists entry by entry", () => {
		const own = machine(
			"tolerance: 0.1 mm, kerf: {acrylic 3 mm: 0.2 mm}, speeds: {cut: 9, score: 9, travel: 9}, stretch: {y: 0.9996}, pens: {cut: {width: 0.1}}",
		);
		expect(own.tolerance).toBe(0.1);
		expect(kerfIn(own, { material: "acrylic", thickness: 3 })).toBe(0.2);
		expect(kerfIn(own, { material: "plywood", thickness: 3.175 })).toBe(0.21);
		expect(own.speeds).toEqual({ cut: 9, score: 9, engrave: 9, travel: 9 });
		expect(own.stretch).toEqual({ x: 1.0008, y: 0.9996 });
		expect(own.pens.cut).toEqual({ colour: "#aa0000", width: 0.1 });
		expect(kerfIn(machine("kerf: 0"), { material: "acrylic", thickness: 3 })).toBe(0);
	});

	it("has numbers without unit in its own unit, whatever the job's is", () => {
		const inches = "format: 1\nunits: in\nmachine: {bed: 24 x 16, margin: 0.25}\n";
		const { bed } = machine("kerf: 0.2", inches);
		expect(bed?.size.x).toBeCloseTo(609.6, 9);
		expect(bed?.size.y).toBeCloseTo(406.4, 9);
		expect(bed?.margin).toBeCloseTo(6.35, 9);
	});

	it("is told with its own name, line and column where it is wrong", () => {
		const wrong = SHOP.replace("0.16 mm", "16 mm").replace("600 x 400 mm", "0 x 400 mm");
		const found = problems("", `${wrong}  colour: red\n`);
		expect(found.map(({ code }) => code)).toEqual(["length-range", "length-range", "unknown-key"]);
		expect(placeText(found[1]!, "neck.yaml")).toBe("shop.yaml:5:8: machine.bed");
		expect(placeText(found[2]!, "neck.yaml")).toBe("shop.yaml:14:3: machine.colour");
	});

	it("is told where what it says does not go with the job, and the job where it is at fault", () => {
		const [kerf] = problems("kind: mill");
		expect(kerf).toMatchObject({ code: "kerf", where: { file: "shop.yaml", line: 8 } });
		const [margin] = problems("margin: 200 mm");
		expect(margin).toMatchObject({ code: "margin-leaves-nothing" });
		expect(margin!.where.file).toBeUndefined();
		expect(margin!.where.line).toBeGreaterThan(9);
	});

	it("is refused as a whole where it is no machine's", () => {
		const codes = (text: string) => {
			const read = readMachine({ name: "shop.yaml", text });
			return read.ok ? [] : read.problems.map(({ code }) => code);
		};
		expect(codes("")).toEqual(["empty-job"]);
		expect(codes("- a\n")).toEqual(["not-a-job"]);
		expect(codes("format: 1\njob: Heron\n")).toEqual(["missing", "unknown-key"]);
		expect(codes("format: 2\nmachine: {}\n")).toEqual(["not-one-of"]);
	});
});
