import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { build } from "esbuild";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { Mark, Sheet } from "../../src/drawing/index.js";
import {
	circle,
	distance,
	distanceTo,
	line,
	type Path,
	type Point,
	rectangle,
	segments,
	vertex,
} from "../../src/geometry/index.js";
import { writePdf } from "../../src/writers/index.js";
import { expectedOf, handDrawing, otherDrawing, PENS } from "../support/drawings.js";
import {
	asPage,
	contentsOf,
	onCurve,
	openPdf,
	readPdf,
	type Step,
	stepsIn,
	textOf,
} from "../support/pdf-pages.js";

/** A page of the given size with paths of one operation. */
function page(
	[maxX, maxY]: readonly [number, number],
	paths: readonly Path[],
	operation: Mark["operation"] = "cut",
): Sheet {
	const marks = paths.map((path, i) => ({ operation, path, feature: `thing ${i}` }));
	const size = { minX: 0, minY: 0, maxX, maxY };
	return { name: "page-1", title: "Page 1", size, placed: [], marks, notes: [] };
}

const A4 = [210, 297] as const;
const HAND = asPage(handDrawing());

/** The ends of a path's steps, in order. */
function endsOf(steps: readonly Step[]): Point[] {
	return steps.flatMap(({ points }) => points.slice(-1));
}

/** How far what is drawn leaves a path, and each of its vertices what is drawn, mm. */
function apart(steps: readonly Step[], path: Path): number {
	const wanted = segments(path);
	const ends = endsOf(steps);
	let most = 0;
	for (const vertex of path.points) {
		most = Math.max(most, Math.min(...ends.map((end) => distance(end, vertex))));
	}
	let from = ends[0]!;
	for (const { points } of steps) {
		for (let i = 1; i <= 20 && points.length > 0; i++) {
			const p = onCurve([from, ...points], i / 20);
			most = Math.max(most, Math.min(...wanted.map((segment) => distanceTo(segment, p))));
		}
		from = points.at(-1) ?? from;
	}
	return most;
}

describe("a page", () => {
	// A4, A3: ISO 216. Letter, Tabloid: ANSI/ASME Y14.1, sizes A and B. Legal: 8 1/2 x 14 in, common
	// practice, no source. A point is 1/72 in: ISO 32000-1, 8.3.2.3.
	it.each([
		["A4", 210, 297, 595.275591, 841.889764],
		["A3", 297, 420, 841.889764, 1190.551181],
		["Letter", 8.5 * 25.4, 11 * 25.4, 612, 792],
		["Legal", 8.5 * 25.4, 14 * 25.4, 612, 1008],
		["Tabloid", 11 * 25.4, 17 * 25.4, 792, 1224],
	])("of size %s is as large as the standard says", async (_name, width, height, x, y) => {
		const corners = rectangle(0, 0, width, height);
		const bytes = await writePdf([page([width, height], [corners])], PENS, "Sizes");
		expect(textOf(bytes)).toContain(`/MediaBox [ 0 0 ${x} ${y} ]`);
		const [read] = await readPdf(bytes);
		expect(read!.view).toEqual([0, 0, x, y]);
		const [, corner] = read!.paths[0]!.steps.slice(1);
		expect(corner!.points[0]!.x * read!.scale).toBeCloseTo(x, 2);
		expect(corner!.points[0]!.y * read!.scale).toBeCloseTo(y, 2);
		expect(read!.scale).toBeCloseTo(72 / 25.4, 12);
	});

	it("holds one path for every mark at its place, in the order of work, by tag, colour and pen", async () => {
		const [read] = await readPdf(await writePdf([HAND], PENS, "Hand"));
		const { marks } = expectedOf(HAND);
		expect(marks.length).toBeGreaterThan(20);
		expect(read!.paths.map((p) => p.tag)).toEqual(marks.map((m) => m.operation));
		for (const [i, { operation, path }] of marks.entries()) {
			const { colour, width, steps } = read!.paths[i]!;
			expect([colour, width]).toEqual([PENS[operation].colour, PENS[operation].width]);
			// A viewer keeps 32 bits of a number.
			expect(apart(steps, path)).toBeLessThan(1e-4 + 2e-5);
			expect(distance(endsOf(steps)[0]!, path.points[0]!)).toBeLessThan(1e-4);
			expect(steps.at(-1)!.kind === "close").toBe(path.closed);
		}
	});

	it("keeps vertices within 1e-6 mm, and curves within 1e-4 mm of their arcs", async () => {
		const [content] = contentsOf(await writePdf([HAND], PENS, "Hand"));
		const paths = stepsIn(content!);
		const { marks } = expectedOf(HAND);
		expect(paths).toHaveLength(marks.length);
		for (const [i, { path }] of marks.entries()) {
			const ends = endsOf(paths[i]!);
			expect(apart(paths[i]!, path)).toBeLessThan(1e-4 + 1e-6);
			for (const vertex of path.points) {
				expect(Math.min(...ends.map((end) => distance(end, vertex)))).toBeLessThan(1e-6);
			}
		}
	});

	it("opens and closes what it marks, once for every operation that it uses", async () => {
		const pages = await readPdf(await writePdf([HAND, asPage(otherDrawing())], PENS, "Two"));
		const [hand, other] = pages.map(({ operators }) => operators);
		for (const name of ["beginMarkedContent", "endMarkedContent", "setStrokeRGBColor"]) {
			expect(hand!.filter((o) => o === name)).toHaveLength(4);
			expect(other!.filter((o) => o === name)).toHaveLength(1);
		}
		expect(new Set([...hand!, ...other!])).toEqual(
			new Set([
				"save",
				"transform",
				"setLineCap",
				"setLineJoin",
				"beginMarkedContent",
				"setStrokeRGBColor",
				"setLineWidth",
				"constructPath",
				"endMarkedContent",
				"restore",
			]),
		);
	});

	it("is written in millimetres, digit by digit", async () => {
		const paths = [
			rectangle(10, 20.5, 30, 50),
			line({ x: 1 / 3, y: 5 }, { x: 7, y: 5 }),
			{ closed: false, points: [vertex(100.3, 100, Math.tan(Math.PI / 8)), vertex(100, 100.3)] },
		];
		const [content] = contentsOf(await writePdf([page(A4, paths, "score")], PENS, "Digits"));
		expect(content!.split("\n")).toEqual([
			...["q", "2.834645669291 0 0 2.834645669291 0 0 cm", "0 J", "1 j"],
			...["/score BMC", "0.180392 0.490196 0.196078 RG", "0.1 w"],
			...["10 20.5 m", "30 20.5 l", "30 50 l", "10 50 l", "h", "S"],
			...["0.333333 5 m", "7 5 l", "S"],
			...["100.3 100 m", "100.3 100.165685 100.165685 100.3 100 100.3 c", "S"],
			...["EMC", "Q", ""],
		]);
	});

	it("has neither exponents nor negative zeros", async () => {
		const tiny = line({ x: 1e-7, y: -1e-7 }, { x: 5e-6, y: -4e-7 });
		const [content] = contentsOf(await writePdf([page(A4, [tiny])], PENS, "Tiny"));
		expect(content).toContain("\n0 0 m\n0.000005 0 l\n");
		const tokens = [await writePdf([HAND], PENS, "Hand")].flatMap(contentsOf).join("").split(/\s+/);
		const odd = tokens.filter((t) => !/^(?:-?\d+(?:\.\d{1,12})?|[a-zA-Z]+|\/[a-z]+|)$/u.test(t));
		expect(odd).toEqual([]);
		expect(tokens).not.toContain("-0");
	});

	it("may be blank", async () => {
		const [blank] = await readPdf(await writePdf([page(A4, [])], PENS, "Blank"));
		expect(blank!.paths).toEqual([]);
	});
});

describe("the file", () => {
	it("says its title and who wrote it, on one line, and asks not to be scaled", async () => {
		const document = await openPdf(await writePdf([HAND], PENS, "Säge (1/2) \\\n“fine”"));
		const { info } = await document.getMetadata();
		expect(info).toMatchObject({ Title: "Säge (1/2) \\ “fine”", Creator: "camber" });
		expect(await document.getViewerPreferences()).toEqual({ PrintScaling: "None" });
	});

	it("has no fonts, dates, identifier or form", async () => {
		const text = textOf(await writePdf([HAND], PENS, "Hand"));
		expect(text).toContain("/Resources <<\n>>");
		expect(text).not.toMatch(/\/(?:Font|XObject|CreationDate|ModDate|ID|Producer|AcroForm)\b/u);
	});
});

describe("the same pages", () => {
	afterEach(() => {
		vi.useRealTimers();
		vi.resetModules();
	});

	it("are the same bytes at another time, whatever was written before", async () => {
		const first = await writePdf([HAND], PENS, "Hand");
		const other = await writePdf([asPage(otherDrawing())], PENS, "Other");
		expect(textOf(other)).not.toBe(textOf(first));
		vi.useFakeTimers({ now: new Date("2031-02-03T04:05:06Z"), toFake: ["Date"] });
		vi.resetModules();
		const fresh = await import("../../src/writers/index.js");
		expect(fresh.writePdf).not.toBe(writePdf);
		expect(textOf(await fresh.writePdf([HAND], PENS, "Hand"))).toBe(textOf(first));
	});

	it("are the same bytes in another process", async () => {
		const contents = `
			import { writePdf } from "./src/writers/index.js";
			import { handDrawing, PENS } from "./test/support/drawings.js";
			import { asPage } from "./test/support/pdf-pages.js";
			const bytes = await writePdf([asPage(handDrawing())], PENS, "Hand");
			console.log(Buffer.from(bytes).toString("base64"));`;
		const { outputFiles } = await build({
			stdin: { contents, resolveDir: process.cwd() },
			bundle: true,
			packages: "external",
			format: "esm",
			write: false,
		});
		const args = ["--input-type=module", "-e", outputFiles[0]!.text];
		const { stdout } = await promisify(execFile)(process.execPath, args);
		const here = await writePdf([HAND], PENS, "Hand");
		expect(stdout.trim()).toBe(Buffer.from(here).toString("base64"));
	});
});

describe("a viewer of another maker at 254 dpi, 10 pixels to the millimetre", () => {
	it("draws a line at x = 100 mm and its end at y = 200 mm within 0.1 mm", async () => {
		const { createCanvas } = await import("@napi-rs/canvas");
		const pens = { ...PENS, reference: { colour: "#000000", width: 0.2 } };
		const up = line({ x: 100, y: 50 }, { x: 100, y: 200 });
		const bytes = await writePdf([page(A4, [up], "reference")], pens, "Line");
		const first = await (await openPdf(bytes)).getPage(1);
		const viewport = first.getViewport({ scale: 254 / 72 });
		const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
		expect([canvas.width, canvas.height]).toEqual([2100, 2970]);
		const context = canvas.getContext("2d");
		// biome-ignore lint/suspicious/noExplicitAny: the types know the canvas of a browser alone
		await first.render({ canvas: null, canvasContext: context as any, viewport }).promise;
		/** Middle and width of what is dark in a row or column, in mm. */
		const dark = (x: number, y: number, w: number, h: number) => {
			const { data } = context.getImageData(x, y, w, h);
			let [sum, moment] = [0, 0];
			for (let i = 0; i < w * h; i++) {
				const share = 1 - data[4 * i]! / 255;
				sum += share;
				moment += share * (i + 0.5);
			}
			return { middle: moment / sum / 10, width: sum / 10 };
		};
		for (const row of [1000, 1700, 2400]) {
			const { middle, width } = dark(0, row, 2100, 1);
			expect(Math.abs(middle - 100)).toBeLessThan(0.1);
			expect(Math.abs(width - 0.2)).toBeLessThan(0.1);
		}
		const column = dark(1000, 0, 1, 2970);
		expect(Math.abs(column.width - 150)).toBeLessThan(0.1);
		expect(Math.abs(297 - column.middle - 125)).toBeLessThan(0.1);
	});
});

describe("refused are", () => {
	const good = page(A4, [circle({ x: 50, y: 50 }, 10)]);
	const note = { text: "56 mm", at: { x: 9, y: 9 }, height: 2.5, turn: 0, width: 9 };
	const of = (...points: Path["points"]) => page(A4, [{ points, closed: true }]);

	it.each<readonly [string, readonly Sheet[], RegExp]>([
		["no pages", [], /needs a page/],
		["notes", [{ ...good, notes: [note] }], /page-1: .*texts as paths.*56 mm/],
		[
			"a page that starts elsewhere",
			[{ ...good, size: { ...good.size, minX: -1 } }],
			/page-1 does not start at 0, 0/,
		],
		["a page of more than 14 400 points", [page([210, 5080.1], [])], /no size.*5080.1 mm/],
		["a page of less than 3 points", [page([1, 297], [])], /no size for a page of PDF: 1 mm/],
		["a page without size", [page([Number.NaN, 297], [])], /not a finite number/],
		["NaN", [of(vertex(Number.NaN, 0), vertex(1, 0), vertex(0, 1))], /not finite/],
		["an infinite bulge", [of(vertex(0, 0, Number.POSITIVE_INFINITY), vertex(1, 0))], /not finite/],
		["a repeated vertex", [of(vertex(0, 0), vertex(0, 0), vertex(0, 1))], /no length/],
		["what lies outside the page", [good, of(vertex(0, 0), vertex(210.1, 0))], /outside the sheet/],
	])("%s", async (_what, pages, message) => {
		const refused = writePdf(pages, PENS, "No");
		await expect(refused).rejects.toThrow(RangeError);
		await expect(refused).rejects.toThrow(message);
	});

	it("colours that are not #rrggbb and pens without width, while the largest page is not", async () => {
		for (const pen of [
			{ colour: "red", width: 0.1 },
			{ colour: "#000000", width: 0 },
		]) {
			await expect(writePdf([good], { ...PENS, cut: pen }, "No")).rejects.toThrow(RangeError);
		}
		const [read] = await readPdf(await writePdf([page([5080, 210], [])], PENS, "Roll"));
		expect(read!.view).toEqual([0, 0, 14400, 595.275591]);
	});
});
