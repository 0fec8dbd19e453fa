import { describe, expect, it } from "vitest";
import type { Part } from "../../src/drawing/index.js";
import {
	type PrintedFile,
	type PromisedPrint,
	type Proven,
	Prover,
} from "../../src/proof/index.js";
import { jobWith, LETTERS, madeParts } from "../support/made-parts.js";
import {
	PAPER_DAMAGES,
	provenDamage,
	SEAMS,
	STRIP,
	slotNear,
	spanOf,
} from "../support/paper-faults.js";
import { drafted, type Plan, pdfOf, svgsOf } from "../support/prints.js";

const STRINGS = { strings: { count: 6, "at-nut": 35.5, "at-saddle": 52 } };
const MADE = { x: 0.9961, y: 1.002 } as const;
const { parts } = madeParts(
	jobWith(STRINGS, ["notched-straightedge", "radius-gauge", "kerf-coupon"]),
);

async function printed(part: Part, plan: Plan): Promise<Proven> {
	const draft = drafted(part, plan);
	const files = [{ name: "a.pdf", bytes: await pdfOf(draft) }];
	const [found] = await new Prover(LETTERS).provePrint(files, draft.promised);
	return found!;
}

/** Even seams of so many pages. */
function even(part: Part, pages: number): number[] {
	const [from, to] = spanOf(part);
	return Array.from({ length: pages - 1 }, (_, i) => from + ((to - from) * (i + 1)) / pages);
}

describe("provePrint", () => {
	it.each([
		["a strip over three pages", STRIP, { seams: SEAMS }],
		["a strip corrected for its printer", STRIP, { seams: SEAMS, made: MADE }],
		[
			"a bar turned by a quarter",
			parts[0]!,
			{ seams: even(parts[0]!, 3), turn: Math.PI / 2, made: MADE },
		],
		["a gauge on one page", parts[1]!, { seams: [] }],
		["a gauge in two, its arc and its hole cut by the seam", parts[1]!, { seams: [0], made: MADE }],
		["a gauge in four", parts[1]!, { seams: [3.1], rows: [13.9], made: MADE }],
		["a bar in six", parts[0]!, { seams: even(parts[0]!, 3), rows: [20.3], turn: -Math.PI / 2 }],
		["a coupon in two", parts.at(-1)!, { seams: even(parts.at(-1)!, 2) }],
	] as const)("finds nothing wrong with %s", async (_, part, plan) => {
		const { findings, measured } = await printed(part, plan);
		expect(findings).toEqual([]);
		expect(measured.map(({ claim }) => claim)).toEqual(part.claims);
		for (const { claim, deviation, tolerance } of measured) {
			// An arc's height tells how true it is; its radius differs by many times that.
			const most = claim.kind === "radius" ? tolerance : 0.0001;
			expect(Math.abs(deviation), claim.id).toBeLessThan(most);
		}
	});

	it("finds nothing wrong where a seam runs along a slot or through corners", async () => {
		const seams = [slotNear(150), slotNear(310)];
		const { findings, measured } = await printed(STRIP, { seams });
		expect(measured).toHaveLength(STRIP.claims.length);
		expect(findings).toEqual([]);
	});

	it.each(PAPER_DAMAGES)("tells %s by what it is, and nothing else", async (_, damage, codes) => {
		const { findings } = await provenDamage(damage);
		expect([...new Set(findings.map(({ code }) => code))].sort()).toEqual(codes);
	});

	it("says by how much a page is scaled, in each direction", async () => {
		const [, damage] = PAPER_DAMAGES.find(([title]) => title === "not corrected at all")!;
		const { findings, measured } = await provenDamage(damage);
		expect(measured).toEqual([]);
		expect(findings.slice(0, 2).map(({ facts }) => facts)).toEqual([
			{ page: 1, axis: "across", factor: expect.closeTo(MADE.x, 7) },
			{ page: 1, axis: "along", factor: expect.closeTo(MADE.y, 7) },
		]);
		expect(findings).toHaveLength(6);
	});

	it("measures an SVG for each page as it does a PDF", async () => {
		const draft = drafted(STRIP, { seams: SEAMS, made: MADE });
		const { pages } = draft.promised.files[0]!;
		const files = svgsOf(draft);
		const promised: PromisedPrint = {
			made: MADE,
			files: pages.map((page, i) => ({ name: files[i]!.name, format: "svg", pages: [page] })),
		};
		const found = await new Prover(LETTERS).provePrint(files, promised);
		expect(found.flatMap(({ findings }) => findings)).toEqual([]);
		expect(found.map(({ measured }) => measured.length)).toEqual([STRIP.claims.length, 0, 0]);
		const [one, two, three] = files as [PrintedFile, PrintedFile, PrintedFile];
		const exchanged = await new Prover(LETTERS).provePrint(
			[one, { ...two, bytes: three.bytes }, { ...three, bytes: two.bytes }],
			promised,
		);
		const codes = exchanged.map(({ findings }) => findings.map(({ code }) => code));
		expect(codes[0]).toEqual([]);
		expect(codes[1]).toContain("page-order");
		expect(codes[2]).toContain("page-order");
	});

	it("names a promised file that is not there", async () => {
		const { promised } = drafted(STRIP, { seams: SEAMS });
		const [found] = await new Prover(LETTERS).provePrint([], promised);
		expect(found!.findings.map(({ code }) => code)).toEqual(["drawing-missing"]);
	});
});
