import { Resvg } from "@resvg/resvg-js";
import { XMLValidator } from "fast-xml-parser";
import { beforeAll, describe, expect, it } from "vitest";
import type { SizeClaim } from "../../src/drawing/index.js";
import { type MakeOptions, make } from "../../src/make.js";
import type { Proven } from "../../src/proof/index.js";
import { type ReportFacts, reportHtml } from "../../src/report/index.js";
import { CAUTION_LAST } from "../../src/shop/index.js";
import { JOB, making } from "../support/job-text.js";

const BED =
	"machine: {bed: 600 x 400 mm, speeds: {cut: 12 mm/s, score: 80 mm/s, travel: 300 mm/s}}";
const FANNED = making("slot-strip").replace(
	"scale: 648 mm",
	"scale: {bass: 27 in, treble: 25.5 in, square-fret: 7}",
);

async function factsOf(text: string, options: MakeOptions = {}): Promise<ReportFacts> {
	const made = await make(text, options);
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	return made;
}

/** Cells of the rows that bear a claim, by part and claim. */
function rowsOf(html: string): Map<string, { readonly cells: string[]; readonly off: boolean }> {
	const rows = html.matchAll(/<tr id="([^"]+)"( class="off")?>(.*?)<\/tr>/gu);
	return new Map(
		[...rows].map(([, id, off, row]) => [
			id!,
			{ cells: [...row!.matchAll(/<td>(.*?)<\/td>/gu)].map((m) => m[1]!), off: Boolean(off) },
		]),
	);
}

function sizesOf(facts: ReportFacts): { readonly id: string; readonly claim: SizeClaim }[] {
	return facts.tools.flatMap(({ parts }) =>
		parts.flatMap(({ name, claims }) =>
			claims.flatMap((claim) =>
				claim.kind === "label" ? [] : [{ id: `${name}.${claim.id}`, claim }],
			),
		),
	);
}

/** Sections by their headings, in their order. */
function sectionsOf(html: string): { readonly title: string; readonly text: string }[] {
	const all = html.matchAll(/<section[^>]*>\n<h2>(.*?)<\/h2>([\s\S]*?)<\/section>/gu);
	return [...all].map(([, title, text]) => ({ title: title!, text: text! }));
}

function sectionOf(html: string, title: string): string {
	const found = sectionsOf(html).filter((s) => s.title === title);
	expect(found).toHaveLength(1);
	return found[0]!.text;
}

function svgsOf(html: string): string[] {
	return [...html.matchAll(/<svg[\s\S]*?<\/svg>/gu)].map(([svg]) => svg);
}

/** What was measured, with one figure of one file changed. */
function changed(facts: ReportFacts, file: number, claim: string, deviation: number): Proven[] {
	return facts.proven.map((proven, i) => ({
		...proven,
		measured: proven.measured.map((m) =>
			i === file && m.claim.id === claim
				? { ...m, value: m.claim.nominal + deviation, deviation }
				: m,
		),
	}));
}

/** What a claim's row calls it: a length up the part is its height. */
function kindOf(claim: { readonly kind: string; readonly axis?: string }): string {
	return claim.kind === "length" && claim.axis === "y" ? "height" : claim.kind;
}

describe("reportHtml", () => {
	let facts: ReportFacts;
	let html: string;
	let fanned: ReportFacts;
	beforeAll(async () => {
		facts = await factsOf(`${JOB}${BED}\n`);
		html = reportHtml(facts);
		fanned = await factsOf(FANNED);
	}, 60_000);

	it("is a well-formed page in which no two things bear one id", () => {
		for (const page of [html, reportHtml(fanned)]) {
			expect(page).toMatch(/^<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8"\/>/u);
			expect(XMLValidator.validate(page)).toBe(true);
			const ids = [...page.matchAll(/ id="([^"]*)"/gu)].map(([, id]) => id);
			expect(ids.length).toBeGreaterThan(50);
			expect(new Set(ids).size).toBe(ids.length);
		}
	});

	it("runs nothing and asks for nothing: no script, no handler, no address but its own parts", () => {
		expect(html).not.toMatch(
			/<script|<link|<img|<iframe|<object|\son\w+=|url\(|@import|javascript:/iu,
		);
		const elsewhere = html.replaceAll('xmlns="http://www.w3.org/2000/svg"', "");
		expect(elsewhere).not.toMatch(/https?:|\bsrc=/iu);
		const links = [...html.matchAll(/href="([^"]*)"/gu)].map(([, link]) => link!);
		expect(links).toHaveLength(3);
		for (const link of links) expect(html).toContain(`id="${link.slice(1)}"`);
	});

	it("gives the same text for the same job made anew", async () => {
		expect(reportHtml(facts)).toBe(html);
		expect(reportHtml(await factsOf(`${JOB}${BED}\n`))).toBe(html);
	});

	it("has a section for every part, with its picture, stock, edge and notes", () => {
		for (const part of facts.tools.flatMap(({ parts }) => parts)) {
			const text = sectionOf(html, part.title);
			expect(svgsOf(text)).toHaveLength(1);
			for (const fact of [part.name, "acrylic 3 mm", part.workingEdge]) {
				expect(text).toContain(`<dd>${fact}</dd>`);
			}
			for (const note of part.notes) {
				expect(text).toContain(`<li>${note.replaceAll("'", "&apos;")}</li>`);
			}
		}
	});

	it("has every size that is promised, in mm and inch, as measured, and off by no more", () => {
		const rows = rowsOf(html);
		const sizes = sizesOf(facts);
		expect([...rows.keys()].sort()).toEqual(sizes.map(({ id }) => id).sort());
		for (const { id, claim } of sizes) {
			const { cells, off } = rows.get(id)!;
			const [feature, kind, nominal, inch, bench, measured, deviation] = cells;
			expect([feature, kind, off]).toEqual([claim.feature, kindOf(claim), false]);
			expect(Number(nominal)).toBeCloseTo(claim.nominal, 4);
			expect(Number(inch) * 25.4).toBeCloseTo(claim.nominal, 2);
			expect(Number(bench)).toBe(claim.bench);
			expect(Math.abs(Number(measured) - claim.nominal)).toBeLessThanOrEqual(0.00105);
			expect(Math.abs(Number(deviation))).toBeLessThanOrEqual(0.00105);
		}
	});

	it("tells angles in degrees, their tolerance by their ends", () => {
		const page = reportHtml(fanned);
		const rows = rowsOf(page);
		const angles = sizesOf(fanned).filter(({ claim }) => claim.kind === "angle");
		expect(angles).toHaveLength(22);
		for (const { id, claim } of angles) {
			const [, , nominal, inch, , measured] = rows.get(id)!.cells;
			expect(nominal).toMatch(/^-?\d+\.\d{4}°$/u);
			expect(inch).toBe("");
			const radians = (Number.parseFloat(measured!) * Math.PI) / 180;
			expect(radians).toBeCloseTo(claim.nominal, 4);
		}
		expect(page).toContain("An angle&apos;s ± is that of the ends");
		expect(html).not.toContain("An angle&apos;s ±");
	});

	it("tells of each part how many labels are as drawn", () => {
		for (const { title, claims } of facts.tools.flatMap(({ parts }) => parts)) {
			const labels = claims.filter(({ kind }) => kind === "label").length;
			expect(labels).toBeGreaterThan(0);
			expect(sectionOf(html, title)).toContain(
				`<p>${labels} label${labels === 1 ? "" : "s"} as drawn</p>`,
			);
		}
	});

	it("has in one line what was measured: every claim in every file", () => {
		const claims = facts.proven.reduce((sum, { measured }) => sum + measured.length, 0);
		const line =
			/<p>(\d+) claims measured in (\d+) files, largest deviation ([\d.]+|under 0.0001)/u;
		const [, said, files, largest] = line.exec(sectionOf(html, "Proof"))!;
		expect([Number(said), Number(files)]).toEqual([claims, facts.files.length - 1]);
		expect(Number.parseFloat(largest!.replace("under", ""))).toBeLessThan(0.001);
		expect(sectionOf(html, "Proof")).toContain("nothing found wrong");
	});

	it("shows of several files the one that keeps a claim worst", () => {
		const off = rowsOf(reportHtml({ ...facts, proven: changed(facts, 1, "notch-7-width", 0.5) }));
		const { cells, off: isOff } = off.get("notched-straightedge.notch-7-width")!;
		expect(isOff).toBe(true);
		expect(cells.slice(-1)).toEqual(["0.5000 (off)"]);
		expect([...off.values()].filter((row) => row.off)).toHaveLength(1);
		const proven = changed(facts, 0, "notch-7-width", Number.NaN);
		const lost = rowsOf(reportHtml({ ...facts, proven }));
		expect(lost.get("notched-straightedge.notch-7-width")).toMatchObject({ off: true });
		expect(lost.get("notched-straightedge.notch-7-width")!.cells.at(-2)).toBe("not found");
	});

	it("shows labels that are wrong or were not compared", () => {
		const [label] = facts.tools[1]!.parts[0]!.claims.filter(({ kind }) => kind === "label");
		const lost = reportHtml({ ...facts, proven: changed(facts, 2, label!.id, Number.NaN) });
		expect(lost).toMatch(/<p>\d+ labels? as drawn, 1 wrong or missing<\/p>/u);
		const proven = facts.proven.map((p) => ({
			...p,
			measured: p.measured.map((m) =>
				m.claim.kind === "label"
					? { ...m, deviation: Number.NaN, value: Number.NaN, remark: { kind: "font-not-given" } }
					: m,
			),
		}));
		expect(reportHtml({ ...facts, proven })).toMatch(
			/<p>0 labels as drawn, \d+ not compared<\/p>/u,
		);
	});

	it("lists what else was found, by its file", () => {
		const note = {
			code: "file-changed",
			severity: "note" as const,
			where: { path: [] },
			facts: { file: "a.svg" },
		};
		const [first, ...rest] = facts.proven;
		const proven = [{ ...first!, findings: [note] }, ...rest];
		const text = sectionOf(reportHtml({ ...facts, proven }), "Proof");
		expect(text).toContain("; 1 note.");
		expect(text).toContain(`<li>note 141, ${first!.file}: a.svg is no longer as camber wrote it.`);
	});

	it("says plainly that nothing was measured, and shows no figures of it", async () => {
		const bare = await factsOf(making("notched-straightedge", "radius-gauge"), { proof: false });
		const page = reportHtml(bare);
		expect(sectionOf(page, "Proof")).toContain("Nothing was measured");
		expect(page).not.toMatch(/as drawn|<th>measured|<th>deviation/u);
		expect(page).toMatch(/<p>\d+ labels, not measured\.<\/p>/u);
		expect(rowsOf(page).size).toBe(sizesOf(bare).length);
	});

	it("keeps a hostile name of the job as the text that it is", async () => {
		const name = `</title><script>alert("x")</script> & 'y' <!-- https:`;
		const text = making("radius-gauge").replace("Test neck", JSON.stringify(name));
		const page = reportHtml(await factsOf(`${text}date: "<b>1 & 2</b>"\n`));
		const escaped =
			"&lt;/title&gt;&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &apos;y&apos; &lt;!-- https:";
		expect(page).toContain(`<h1>${escaped}</h1>`);
		expect(page).toContain(`<title>${escaped}: report</title>`);
		expect(page).toContain("<p>&lt;b&gt;1 &amp; 2&lt;/b&gt;</p>");
		expect(page).not.toMatch(/<script|<b>|<!--/u);
		expect(XMLValidator.validate(page)).toBe(true);
	});

	it("tells the machine as the job gives it", async () => {
		const mill = making("radius-gauge").replace(
			"make:",
			"machine: {kind: mill, cutter: 3 mm, tolerance: 0.07, tabs: {count: 2, width: 4}, stretch: {x: 1.0008}}\nmake:",
		);
		const text = sectionOf(reportHtml(await factsOf(mill)), "Machine");
		const facts = [...text.matchAll(/<dt>(.*?)<\/dt>\n<dd>(.*?)<\/dd>/gu)].map((m) => [m[1], m[2]]);
		expect(facts).toEqual([
			["kind", "mill"],
			["tolerance", "±0.07 mm"],
			["kerf", "none: nominal contours"],
			["cutter", "3 mm"],
			["tabs", "2, each 4 mm"],
			["stretch", expect.stringContaining("1.0008 of 1 along x and 1 along y")],
		]);
		const listed = making("radius-gauge").replace(
			"make:",
			"machine: {kerf: {acrylic 3 mm: 0.16 mm, mdf 3 mm: 0.2 mm}}\nmake:",
		);
		const page = reportHtml(await factsOf(listed));
		expect(page).toContain("<dd>acrylic 3 mm: 0.16 mm, mdf 3 mm: 0.2 mm</dd>");
		expect(page).toContain("<dd>moved 0.08 mm into the waste, for a cut 0.16 mm wide;");
	});

	it("tells of each sheet its stock, share, work and parts", () => {
		const text = sectionOf(html, "Sheet 1 of 1");
		expect(text).toContain("<dd>acrylic 3 mm</dd>");
		expect(text).toMatch(/<dd>\d+(\.\d)? % of the bed<\/dd>/u);
		expect(text).toMatch(
			/<dd>cut [\d.]+ m, score [\d.]+ m, .*travel [\d.]+ m; about \d+ min \d+ s<\/dd>/u,
		);
		expect(svgsOf(text)).toHaveLength(1);
		expect(reportHtml(fanned)).not.toContain("<h2>Sheet");
	});

	it("has the neck's fret table: fret 12 at half the scale", () => {
		const rows = [...sectionOf(html, "Frets").matchAll(/<tr><td>(.*?)<\/td><\/tr>/gu)].map((m) =>
			m[1]!.split("</td><td>"),
		);
		expect(rows).toHaveLength(22);
		expect(rows[11]!.slice(0, 4)).toEqual(["12", "324.000", "12.7559", "12 3/4"]);
		expect(rows[21]!.slice(-3)).toEqual(["56.000", "304.800", "12"]);
	});

	it("has no fret table where no tool asked for a neck", async () => {
		const titles = sectionsOf(reportHtml(await factsOf(making("kerf-coupon")))).map((s) => s.title);
		expect(titles).toContain("Files");
		expect(titles).not.toContain("Frets");
	});

	it("ends with the cautions, the standing one last, and promises no one safety", () => {
		const last = sectionsOf(html).at(-1)!;
		expect(last.title).toBe("Cautions");
		const cautions = [...last.text.matchAll(/<li>(.*?)<\/li>/gu)].map(([, text]) => text);
		expect(cautions).toHaveLength(facts.cautions.length);
		expect(cautions.at(-1)).toBe(CAUTION_LAST.replaceAll("'", "&apos;"));
		expect(html).not.toMatch(/\bsafe\b/iu);
	});
});

describe("the pictures of a report", () => {
	it("draw every path that the files draw on their layers of work, to the last digit", async () => {
		const facts = await factsOf(making("notched-straightedge", "slot-strip"), { proof: false });
		const pictures = svgsOf(reportHtml(facts));
		const files = facts.files.filter(({ format }) => format === "svg");
		expect(pictures).toHaveLength(files.length);
		files.forEach(({ bytes }, i) => {
			const written = worked(new TextDecoder().decode(bytes), "id");
			expect(written.flat().length).toBeGreaterThan(100);
			expect(worked(pictures[i]!, "class")).toEqual(written);
		});
	});

	it("show dimensions but no title block, never larger than life, and a renderer reads them", async () => {
		const facts = await factsOf(making("radius-gauge"), { formats: ["dxf"], proof: false });
		const [picture] = svgsOf(reportHtml(facts));
		expect(picture).toContain(">28.000 (1.1024 in)</text>");
		expect(picture).not.toMatch(/SCALE 1:1|Cautions/u);
		const [, most] = /max-width:([\d.]+)mm/u.exec(picture!)!;
		const { minX, maxX } = facts.drawings[0]!.sheet.size;
		expect(Number(most)).toBeCloseTo(maxX - minX, 1);
		const image = new Resvg(picture!, { fitTo: { mode: "width", value: 300 } }).render();
		expect(image.height).toBeLessThan(image.width);
		const ink = image.pixels.filter((value, i) => i % 4 === 3 && value > 0).length;
		expect(ink).toBeGreaterThan(500);
	});
});

/** Numbers of every path, by the layers of work. */
function worked(svg: string, name: "id" | "class"): number[][] {
	return ["score", "engrave", "cut"].map((layer) => {
		const group = new RegExp(`<g [^>]*?${name}="${layer}"[\\s\\S]*?</g>`, "u").exec(svg)?.[0] ?? "";
		const paths = [...group.matchAll(/ d="([^"]*)"/gu)].map(([, d]) => d!);
		return paths.flatMap((d) => (d.match(/-?\d+(\.\d+)?/gu) ?? []).map(Number));
	});
}
