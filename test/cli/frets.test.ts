import { beforeAll, describe, expect, it } from "vitest";
import { JOB, jobText, withNeck } from "../support/job-text.js";
import { camber, jobFile } from "../support/run-camber.js";
import { snapshot } from "../support/temp-folder.js";

const FANNED = jobText("scale: 648 mm", "scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}");
const BOUND = withNeck("binding: 1.5 mm\n  zero-fret: true");

/** Columns that a neck may be without. */
const OPTIONAL = [
	"bass string mm",
	"treble string mm",
	"slant deg",
	"fret length mm",
	"slot length mm",
];

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

/**
 * The records of a text by RFC 4180, section 2: fields between separators, quotes around those
 * that hold one, doubled within; CRLF after every record.
 *
 * @throws Error on anything else
 */
function csvRecords(text: string, separator: string): string[][] {
	const plain = `[^"\\r\\n${separator}]*`;
	const field = new RegExp(`(?:"((?:[^"]|"")*)"|(${plain}))(${separator}|\\r\\n)`, "uy");
	const records: string[][] = [[]];
	while (field.lastIndex < text.length) {
		const at = field.lastIndex;
		const found = field.exec(text);
		if (!found) throw new Error(`no field of a record at ${at}: ${text.slice(at, at + 20)}`);
		records.at(-1)!.push(found[1]?.replaceAll('""', '"') ?? found[2]!);
		if (found[3] === "\r\n") records.push([]);
	}
	if (records.pop()!.length > 0) throw new Error("the last record does not end");
	return records;
}

/** Rows by their heads: as many cells in each. */
function readCsv(text: string, separator = ","): Record<string, string>[] {
	const [names, ...rows] = csvRecords(text, separator);
	return rows.map((cells) => {
		expect(cells).toHaveLength(names!.length);
		return Object.fromEntries(names!.map((name, i) => [name, cells[i]!]));
	});
}

/** A cell as the number that a spreadsheet takes it for: a decimal, or a whole and a fraction. */
function spreadsheetNumber(cell: string): number {
	const mixed = /^(-?)(\d+) (\d+)\/(\d+)$/u.exec(cell);
	if (!mixed) return /^-?\d+(?:\.\d+)?$/u.test(cell) ? Number(cell) : Number.NaN;
	const [, sign, whole, top, bottom] = mixed;
	return (Number(whole) + Number(top) / Number(bottom)) * (sign === "-" ? -1 : 1);
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
				if (value !== null && (cell[name] !== undefined || !OPTIONAL.includes(name)))
					expect(Math.abs(Number(cell[name]) - value)).toBeLessThanOrEqual(
						0.5 * 10 ** -digits + 1e-9,
					);
			};
			expect(cell.fret).toBe(String(row.fret));
			close("from nut mm", row.fromNut);
			close("gap mm", row.gap);
			close("width mm", row.width);
			close("bass string mm", row.bass);
			close("treble string mm", row.treble);
			close("fret length mm", row.fretLength);
			close("slot length mm", row.slotLength);
			close("slant deg", (row.slant * 180) / Math.PI);
			close("inch", row.fromNut / 25.4, 4);
			if (row.radius === null) expect(cell["radius mm"]).toBe("flat");
			else close("radius mm", row.radius);
		});
		const [head, ...lines] = readTable(plain!.out);
		expect(head).toEqual(Object.keys(cells[0]!).map((name) => name.replace(/ mm$/u, "")));
		const shown = (cell: string) => cell.replace(/^0 (?=\d+\/)/u, "");
		expect(lines).toEqual(cells.map((cell) => Object.values(cell).map(shown)));
		expect(snapshot(folder)).toEqual(before);
	});

	it("has the columns that the neck asks for", async () => {
		const heads = async (text: string) =>
			Object.keys(readCsv((await camber(["frets", jobFile(text).file, "--csv"])).out)[0]!);
		const plain = [
			"fret",
			"from nut mm",
			"inch",
			"1/64 in",
			"off by mm",
			"gap mm",
			"width mm",
			"radius mm",
			"radius in",
		];
		expect(await heads(JOB)).toEqual(plain);
		expect(await heads(FANNED)).toEqual(
			expect.arrayContaining(["bass string mm", "treble string mm", "slant deg", "fret length mm"]),
		);
		expect(await heads(BOUND)).toEqual(
			expect.arrayContaining(["fret length mm", "slot length mm"]),
		);
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
			const text = cell["1/64 in"]!;
			expect(64 % Number(text.split("/")[1] ?? 1)).toBe(0);
			const mm = spreadsheetNumber(text) * 25.4;
			expect(mm - Number(cell["from nut mm"])).toBeCloseTo(Number(cell["off by mm"]), 2);
			expect(Math.abs(Number(cell["off by mm"]))).toBeLessThanOrEqual(25.4 / 128 + 0.001);
		}
	});

	it("has no cell that a spreadsheet takes for a date or a text instead of a number", async () => {
		// A mandolin's gaps are short enough for frets below an inch: 3/4 alone would be a date.
		const { out } = await camber(["frets", jobFile(jobText("648 mm", "330 mm")).file, "--csv"]);
		const cells = readCsv(out);
		expect(cells[0]!["1/64 in"]).toBe("0 47/64");
		for (const cell of cells) {
			for (const [name, text] of Object.entries(cell)) {
				expect(spreadsheetNumber(text), `${name}: ${text}`).not.toBeNaN();
			}
		}
	});

	it("has commas for decimals and semicolons between where that is asked for", async () => {
		const { file } = jobFile(FANNED);
		const plain = await camber(["frets", file, "--csv"]);
		for (const flags of [["--csv", "--decimal-comma"], ["--decimal-comma"]]) {
			const { code, out, err } = await camber(["frets", file, ...flags]);
			expect({ code, err }).toEqual({ code: 0, err: "" });
			expect(out).not.toContain(".");
			const cells = readCsv(out, ";").map((cell) =>
				Object.fromEntries(
					Object.entries(cell).map(([name, text]) => [name, text.replace(",", ".")]),
				),
			);
			expect(cells).toEqual(readCsv(plain.out));
		}
	});

	it.each([
		["--json", "--csv"],
		["--json", "--decimal-comma"],
		["--decimal-comma", "--json"],
		["--csv", "--json", "--decimal-comma"],
	])("refuses %s with %s", async (...flags) => {
		const { code, out, err } = await camber(["frets", jobFile(JOB).file, ...flags]);
		expect([code, out]).toEqual([2, ""]);
		expect(err).toContain("cannot be used with");
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
