import { beforeAll, describe, expect, it } from "vitest";
import { JOB, jobText, withNeck } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";
import { snapshot } from "../support/temp-folder.js";

const FANNED = jobText("scale: 648 mm", "scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}");
const BOUND = withNeck("binding: 1.5 mm\n  zero-fret: true");

interface Row {
	readonly fret: number;
	readonly fromNut: number;
	readonly gap: number;
	readonly bass: number | null;
	readonly treble: number | null;
	readonly width: number;
	readonly radius: number | null;
	readonly fretLength: number;
	readonly slotLength: number;
	readonly slant: number;
}

/** A table of RFC 4180: records end in CRLF, none of the cells here needs quotes. */
function readCsv(text: string): Record<string, string>[] {
	expect(text).not.toMatch(/"|[^\r]\n|\r[^\n]/u);
	expect(text.endsWith("\r\n")).toBe(true);
	const [head, ...rows] = text.slice(0, -2).split("\r\n");
	const names = head!.split(",");
	return rows.map((row) => {
		const cells = row.split(",");
		expect(cells).toHaveLength(names.length);
		return Object.fromEntries(names.map((name, i) => [name, cells[i]!]));
	});
}

/** The table as people read it: columns begin where their heads do, at two spaces or more. */
function readTable(text: string): string[][] {
	const [, head, ...rows] = text.trimEnd().split("\n");
	return [head!, ...rows].map((line) => line.trim().split(/ {2,}/u));
}

describe("camber frets", () => {
	it.each([
		["one scale", JOB, 22, 1],
		["two scales", FANNED, 22, 1],
		["a bound board with a zero fret", BOUND, 23, 0],
		["a flat board", jobText("radius: 12 in", "radius: flat"), 22, 1],
	])("says the same to people, spreadsheets and machines: %s", async (_, text, size, first) => {
		const { file, folder } = jobFile(text);
		const before = snapshot(folder);
		const [plain, csv, json] = await Promise.all(
			[[], ["--csv"], ["--json"]].map((flags) => camber(["frets", file, ...flags])),
		);
		for (const ran of [plain, csv, json]) expect(ran).toMatchObject({ code: 0, err: "" });
		const rows = JSON.parse(json!.out).frets as Row[];
		const cells = readCsv(csv!.out);
		expect(rows).toHaveLength(size);
		expect(cells).toHaveLength(size);
		expect(rows[0]!.fret).toBe(first);
		rows.forEach((row, i) => {
			const cell = cells[i]!;
			const close = (name: string, value: number | null, digits = 3) => {
				if (value !== null && cell[name] !== undefined)
					expect(Math.abs(Number(cell[name]) - value)).toBeLessThanOrEqual(
						0.5 * 10 ** -digits + 1e-9,
					);
			};
			expect(cell.fret).toBe(String(row.fret));
			close("from nut", row.fromNut);
			close("gap", row.gap);
			close("width", row.width);
			close("bass string", row.bass);
			close("treble string", row.treble);
			close("fret length", row.fretLength);
			close("slot length", row.slotLength);
			close("slant deg", (row.slant * 180) / Math.PI);
			close("inch", row.fromNut / 25.4, 4);
			if (row.radius === null) expect(cell.radius).toBe("flat");
			else close("radius", row.radius);
		});
		const [head, ...lines] = readTable(plain!.out);
		expect(head).toEqual(Object.keys(cells[0]!));
		expect(lines).toEqual(cells.map((cell) => Object.values(cell)));
		expect(snapshot(folder)).toEqual(before);
	});

	it("has the columns that the neck asks for", async () => {
		const heads = async (text: string) =>
			Object.keys(readCsv((await camber(["frets", jobFile(text).file, "--csv"])).out)[0]!);
		const plain = [
			"fret",
			"from nut",
			"inch",
			"1/64 in",
			"off by",
			"gap",
			"width",
			"radius",
			"radius in",
		];
		expect(await heads(JOB)).toEqual(plain);
		expect(await heads(FANNED)).toEqual(
			expect.arrayContaining(["bass string", "treble string", "slant deg", "fret length"]),
		);
		expect(await heads(BOUND)).toEqual(expect.arrayContaining(["fret length", "slot length"]));
	});

	describe("of a neck with one scale", () => {
		let rows: Row[];
		beforeAll(async () => {
			// Hooks have no file of their own; the job is read from the examples.
			const { out } = await camber(["frets", "examples/heron-baritone.yaml", "--json"]);
			rows = JSON.parse(out).frets;
		});

		it("has fret 12 at half the scale and fret 7 where 2^(-7/12) says", () => {
			const scale = 26.1875 * 25.4;
			expect(rows[11]!.fromNut).toBeCloseTo(scale / 2, 8);
			expect(rows[6]!.fromNut).toBeCloseTo(scale * (1 - 2 ** (-7 / 12)), 8);
		});

		it("has gaps that add up to the distance from the nut", () => {
			rows.forEach((row, i) => {
				const sum = rows.slice(0, i + 1).reduce((total, { gap }) => total + gap, 0);
				expect(sum).toBeCloseTo(row.fromNut, 7);
			});
		});
	});

	it("is off by what the sixty-fourths are off", async () => {
		const cells = readCsv((await camber(["frets", jobFile(JOB).file, "--csv"])).out);
		for (const cell of cells) {
			const [whole, fraction] = cell["1/64 in"]!.includes(" ")
				? cell["1/64 in"]!.split(" ")
				: cell["1/64 in"]!.includes("/")
					? ["0", cell["1/64 in"]!]
					: [cell["1/64 in"]!, "0/1"];
			const [top, bottom] = fraction!.split("/").map(Number);
			expect(64 % bottom!).toBe(0);
			const mm = (Number(whole) + top! / bottom!) * 25.4;
			expect(mm - Number(cell["from nut"])).toBeCloseTo(Number(cell["off by"]), 2);
			expect(Math.abs(Number(cell["off by"]))).toBeLessThanOrEqual(25.4 / 128 + 0.001);
		}
	});

	it("refuses a bad job with its place", async () => {
		const { file } = jobFile(jobText("frets: 22", "frets: 0"));
		const { code, out, err } = await camber(["frets", file]);
		expect([code, out]).toEqual([2, ""]);
		expect(err).toContain(`${file}:5:10: neck.frets`);
	});

	it("lets an unusual scale pass when asked to", async () => {
		const { file } = jobFile(jobText("648 mm", "2100 mm"));
		expect((await camber(["frets", file])).code).toBe(2);
		expect((await camber(["frets", file, "--allow-unusual"])).code).toBe(0);
	});
});

describe("camber check", () => {
	it("says what would be made and writes nothing", async () => {
		const { file, folder } = jobFile(JOB);
		const before = snapshot(folder);
		const { code, out, err } = await camber(["check", file]);
		expect([code, err]).toEqual([0, ""]);
		expect(out).toContain("It would make 3 parts");
		expect(out).toContain("Cautions");
		expect(snapshot(folder)).toEqual(before);
	});

	it("says all problems of a bad job", async () => {
		const { file } = jobFile(jobText("frets: 22", "frets: 0\n  nutshift: 1"));
		const { code, out, err } = await camber(["check", file]);
		expect([code, out]).toEqual([2, ""]);
		expect(err).toContain("neck.frets");
		expect(err).toContain("neck.nutshift");
		expect(err).toContain("2 errors");
	});

	it("says the first forty of a thousand problems and how many more there are", async () => {
		const keys = Array.from({ length: 1000 }, (_, i) => `  k${i}: 1`).join("\n");
		const { file } = jobFile(jobText("neck:", `neck:\n${keys}`));
		const { err } = await camber(["check", file]);
		expect(err.match(/^error:/gmu)).toHaveLength(40);
		expect(err).toContain("And 960 more.");
		expect(err).toContain("1000 errors");
	});
});
