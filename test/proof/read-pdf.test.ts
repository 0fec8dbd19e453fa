import { degrees, PDFDocument, PDFName, PDFNumber, PDFOperator } from "@cantoo/pdf-lib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	circle,
	distanceTo,
	line,
	open,
	type Path,
	pointAt,
	segments,
	vertex,
} from "../../src/geometry/index.js";
import { readPdf } from "../../src/proof/index.js";
import { bulgeOfCubic } from "../../src/proof/pdf-curve.js";
import { writePdf } from "../../src/writers/index.js";
import { PENS } from "../support/drawings.js";

/** Millimetres of a unit. */
const POINT = 25.4 / 72;

/** A PDF of one page of 200 x 300 points with this content. */
async function pdf(content: string, change: (file: PDFDocument) => void = () => {}) {
	const file = await PDFDocument.create({ updateMetadata: false });
	const { node } = file.addPage([200, 300]);
	node.set(PDFName.of("Contents"), file.context.register(file.context.flateStream(content)));
	change(file);
	return readPdf(await file.save({ useObjectStreams: false }));
}

const ends = ({ points }: Path) => [points[0]!, points.at(-1)!].flatMap(({ x, y }) => [x, y]);
const near = (values: readonly number[]) => values.map((v) => expect.closeTo(v, 5));

describe("readPdf", () => {
	it("reads lines in millimetres from the page's lower left corner", async () => {
		const { pages, findings } = await pdf("/score BMC 72 36 m 144 36 l S EMC");
		expect(findings).toEqual([]);
		const [page] = pages;
		expect(page).toMatchObject({ format: "pdf", texts: [], findings: [] });
		expect(page!.page).toEqual({ minX: 0, minY: 0, maxX: 200 * POINT, maxY: 300 * POINT });
		expect(page!.strokes).toEqual([
			{
				operation: "score",
				layer: "score",
				path: line({ x: 25.4, y: 12.7 }, { x: 50.8, y: 12.7 }),
			},
		]);
	});

	it("follows transforms, what is saved and restored, and marked content in marked content", async () => {
		const content = [
			"q 2 0 0 2 10 20 cm /cut BMC 0 0 m 1 0 l S",
			"q 0 1 -1 0 0 0 cm /Span BMC 1 0 m 3 0 l S EMC Q",
			"/score BMC 0 0 m 0 5 l S EMC EMC Q",
			"0 0 m 72 0 l S",
		].join("\n");
		const { pages } = await pdf(content);
		const read = pages[0]!.strokes.map(({ operation, path }) => [operation, ends(path)]);
		expect(read).toEqual([
			["cut", near([10, 20, 12, 20].map((v) => v * POINT))],
			["cut", near([10, 22, 10, 26].map((v) => v * POINT))],
			["score", near([10, 20, 10, 30].map((v) => v * POINT))],
			[null, near([0, 0, 72, 0].map((v) => v * POINT))],
		]);
	});

	it("closes paths with h, with s and around rectangles", async () => {
		const { pages } = await pdf(
			"0 0 m 9 0 l 9 9 l h S 0 0 m 9 0 l 9 9 l s 1 2 3 4 re S 0 0 m 9 0 l S",
		);
		expect(pages[0]!.strokes.map(({ path }) => [path.closed, path.points.length])).toEqual([
			[true, 3],
			[true, 3],
			[true, 4],
			[false, 2],
		]);
	});

	it("takes the page's own box and its unit", async () => {
		const { pages } = await pdf("110 220 m 120 220 l S", (file) => {
			const page = file.getPage(0);
			page.setMediaBox(100, 200, 50, 60);
			page.node.set(PDFName.of("UserUnit"), PDFNumber.of(2));
		});
		expect(pages[0]!.page!.maxX).toBeCloseTo(100 * POINT, 9);
		expect(pages[0]!.page!.maxY).toBeCloseTo(120 * POINT, 9);
		expect(ends(pages[0]!.strokes[0]!.path)).toEqual(near([20, 40, 40, 40].map((v) => v * POINT)));
	});

	it("takes written arcs back for arcs, within 2e-5 mm on A4", async () => {
		const size = { minX: 0, minY: 0, maxX: 210, maxY: 297 };
		const paths = [
			circle({ x: 90, y: 200 }, 4),
			open(vertex(20, 250, 0.03), vertex(180, 240, -0.4), vertex(100, 20, 0.9), vertex(150, 60)),
			line({ x: 1, y: 2 }, { x: 209, y: 290 }),
		];
		const marks = paths.map((path) => ({ operation: "cut", path, feature: "a" }) as const);
		const sheet = { name: "a", title: "a", size, placed: [], marks, notes: [] };
		const { pages, findings } = await readPdf(await writePdf([sheet], PENS, "a"));
		expect(findings).toEqual([]);
		const read = pages[0]!.strokes.map(({ path }) => path);
		expect(read.map(({ closed }) => closed)).toEqual([true, false, false]);
		expect(read[2]!.points.every(({ bulge }) => bulge === 0)).toBe(true);
		read.forEach((path, i) => {
			const due = segments(paths[i]!);
			for (const s of segments(path)) {
				expect(s.kind).toBe(i === 2 ? "line" : "arc");
				for (const u of [0, 0.2, 0.5, 0.7, 1]) {
					const off = Math.min(...due.map((d) => distanceTo(d, pointAt(s, u))));
					// A Bézier is off by up to 1e-4 mm from its arc, as it is written.
					expect(off).toBeLessThan(u === 0 || u === 1 ? 1.2e-4 : 1.5e-4);
				}
			}
		});
	});

	it("draws other curves as lines, and says so", async () => {
		const { pages, findings } = await pdf("/cut BMC 10 10 m 50 10 10 50 90 90 c S EMC");
		expect(findings.map(({ code }) => code)).toEqual(["curve"]);
		expect(pages[0]!.strokes[0]!.path.points.length).toBeGreaterThan(20);
		expect(ends(pages[0]!.strokes[0]!.path)).toEqual(near([10, 10, 90, 90].map((v) => v * POINT)));
	});

	it.each([
		["a filled area", "/cut BMC 0 0 m 9 0 l 9 9 l f EMC", "error"],
		["what a clip path hides", "0 0 50 50 re W n", "error"],
		["a filled area", "/reference BMC 0 0 m 9 0 l 9 9 l f EMC", "warning"],
		["a picture", "q 9 0 0 9 0 0 cm BI /W 1 /H 1 /CS /G /BPC 8 ID a EI Q", "error"],
	])("does not read %s: %s", async (what, content, severity) => {
		const { pages, findings } = await pdf(content);
		expect(pages[0]!.strokes).toEqual([]);
		expect(findings).toMatchObject([
			{ code: "not-read", severity, facts: { kind: `${what} on page 1` } },
		]);
	});

	it("does not read text", async () => {
		const { findings } = await pdf("", (file) => file.getPage(0).drawText("slots"));
		expect(findings).toMatchObject([{ code: "not-read", facts: { kind: "text on page 1" } }]);
	});

	it("reads what other programs put into forms", async () => {
		const { pages, findings } = await pdf("", (file) => {
			const form = file.context.flateStream("/cut BMC 0 0 m 10 0 l S EMC", {
				Type: "XObject",
				Subtype: "Form",
				BBox: [0, 0, 100, 100],
				Matrix: [1, 0, 0, 1, 5, 7],
			});
			const page = file.getPage(0);
			page.node.delete(PDFName.of("Contents"));
			const name = page.node.newXObject("Form", file.context.register(form));
			page.pushOperators(PDFOperator.of("Do" as never, [name]));
		});
		expect(pages[0]!.strokes.map(({ path }) => ends(path))).toEqual([
			near([5, 7, 15, 7].map((v) => v * POINT)),
		]);
		expect(findings).toEqual([]);
	});

	it("says that a page is turned", async () => {
		const { findings } = await pdf("", (file) => file.getPage(0).setRotation(degrees(90)));
		expect(findings).toMatchObject([{ code: "page-turned", facts: { page: 1, degrees: 90 } }]);
	});

	it("refuses files and pages that are too large", async () => {
		const large = await readPdf(new Uint8Array(8 * 1024 * 1024 + 1));
		expect(large.findings).toMatchObject([{ code: "drawing-too-large", facts: { of: "bytes" } }]);
		const many = await pdf("", (file) => {
			for (let i = 0; i < 500; i++) file.addPage([9, 9]);
		});
		expect(many.findings).toMatchObject([{ code: "drawing-too-large", facts: { of: "pages" } }]);
		const heaped = await pdf("0 0 m 1 0 l S\n".repeat(100_001));
		expect(heaped.findings).toMatchObject([{ facts: { of: "operators on a page" } }]);
		expect(heaped.pages[0]!.strokes).toEqual([]);
	});

	it.each([
		["nothing", new Uint8Array()],
		["no PDF", new TextEncoder().encode("plain text")],
		["a beginning alone", new TextEncoder().encode("%PDF-1.7\n1 0 obj\n<<")],
	])("says that %s cannot be read", async (_, bytes) => {
		const { pages, findings } = await readPdf(bytes);
		expect(pages).toEqual([]);
		expect(findings.map(({ code }) => code)).toEqual(["unreadable"]);
	});

	it("never throws, whatever the bytes", async () => {
		const file = await PDFDocument.create({ updateMetadata: false });
		const { node } = file.addPage([200, 300]);
		const content = "q 2 0 0 2 0 0 cm /cut BMC 0 0 m 9 0 l 9 9 5 5 1 1 c h S EMC Q";
		node.set(PDFName.of("Contents"), file.context.register(file.context.stream(content)));
		const whole = await file.save({ useObjectStreams: false });
		const at = fc.integer({ min: 0, max: whole.length - 1 });
		const changes = fc.array(fc.tuple(at, fc.integer({ min: 0, max: 255 })), { maxLength: 12 });
		await fc.assert(
			fc.asyncProperty(changes, async (list) => {
				const bytes = whole.slice();
				for (const [i, value] of list) bytes[i] = value;
				const { pages, findings } = await readPdf(bytes);
				if (pages.length === 0) expect(findings).not.toEqual([]);
				for (const { strokes } of pages) {
					const points = strokes.flatMap(({ path }) => path.points);
					expect(points.flatMap(({ x, y }) => [x, y]).every(Number.isFinite)).toBe(true);
				}
			}),
			{ seed: 22, numRuns: 60 },
		);
	});

	it("leaves the bytes that it was given as they are", async () => {
		const file = await PDFDocument.create({ updateMetadata: false });
		file.addPage([9, 9]);
		const bytes = await file.save({ useObjectStreams: false });
		const before = bytes.slice();
		await readPdf(bytes);
		expect(bytes).toEqual(before);
	});
});

describe("bulgeOfCubic", () => {
	const at = (x: number, y: number) => ({ x, y });

	it("knows a straight cubic, and one that runs past its end", () => {
		expect(bulgeOfCubic([at(0, 0), at(1, 1), at(2, 2), at(3, 3)])).toBe(0);
		expect(bulgeOfCubic([at(0, 0), at(9, 9), at(9, 9), at(3, 3)])).toBeNull();
	});

	it("knows no arc in an ellipse, an S and a loop", () => {
		expect(bulgeOfCubic([at(10, 0), at(10, 2.7), at(5.5, 5), at(0, 5)])).toBeNull();
		expect(bulgeOfCubic([at(0, 0), at(5, 5), at(5, -5), at(10, 0)])).toBeNull();
		expect(bulgeOfCubic([at(0, 0), at(30, 20), at(-20, 20), at(10, 0)])).toBeNull();
	});

	it("gives back the arc of any cubic that is drawn for one", () => {
		const sweep = fc.double({ min: 0.001, max: Math.PI / 6, noNaN: true });
		const radius = fc.double({ min: 0.5, max: 500, noNaN: true });
		fc.assert(
			fc.property(sweep, radius, fc.boolean(), (s, r, back) => {
				const turn = back ? -s : s;
				const k = (4 / 3) * Math.tan(turn / 4) * r;
				const [c, n] = [Math.cos(turn), Math.sin(turn)];
				const cubic = [
					at(r, 0),
					at(r, k),
					at(r * c + k * n, r * n - k * c),
					at(r * c, r * n),
				] as const;
				const bulge = bulgeOfCubic(cubic)!;
				const sagitta = (bulge * 2 * r * Math.sin(s / 2)) / 2;
				const due = (Math.tan(turn / 4) * 2 * r * Math.sin(s / 2)) / 2;
				expect(Math.abs(sagitta - due)).toBeLessThan(2e-6);
			}),
			{ seed: 21, numRuns: 300 },
		);
	});
});
