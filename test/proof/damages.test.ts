import { beforeAll, describe, expect, it } from "vitest";
import type { Pens, Sheet } from "../../src/drawing/index.js";
import { type Made, make } from "../../src/make.js";
import { type Promised, Prover, promisedOf } from "../../src/proof/index.js";
import { type DxfFlavour, writeDxf, writeSvg } from "../../src/writers/index.js";
import { DAMAGES, type Damage, exploded, movedAsAWhole } from "../support/damages.js";
import { making } from "../support/job-text.js";
import { LETTERS } from "../support/made-parts.js";

type MadeJob = Extract<Made, { ok: true }>;

/** A job of every tool on a bed, and the same held by tabs. */
const TEXT = making("slot-strip", "notched-straightedge", "radius-gauge", "kerf-coupon").replace(
	"wire:",
	"  markers: [3, 5, 7]\nwire:",
);
const MACHINE = "machine: {kerf: 0.16 mm, bed: 600 x 400 mm}";
const TABS = "machine: {kerf: 0.16 mm, tabs: {count: 2, width: 1.5 mm}}";

interface Subject {
	readonly made: MadeJob;
	readonly promised: Promised;
}

async function subject(machine: string): Promise<Subject> {
	const made = await make(TEXT.replace("make:", `${machine}\nmake:`), { dimensions: false });
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	const promised = promisedOf(new TextDecoder().decode(made.files.at(-1)!.bytes), "manifest.json");
	if ("code" in promised) throw new Error(JSON.stringify(promised));
	return { made, promised };
}

const NAMES: Readonly<Record<Damage["to"], string>> = {
	bar: "notched-straightedge",
	held: "notched-straightedge",
	gauge: "radius-gauge-concave",
	strip: "slot-strip",
	coupon: "kerf-coupon",
	bed: "sheet-1",
};

type Kind = "svg" | DxfFlavour;
const bytesOf = (sheet: Sheet, pens: Pens, kind: Kind) =>
	new TextEncoder().encode(kind === "svg" ? writeSvg(sheet, pens) : writeDxf(sheet, pens, kind));

let plain: Subject;
let held: Subject;
beforeAll(async () => {
	plain = await subject(MACHINE);
	held = await subject(TABS);
});

/** What is found in a sheet's file after a change. */
async function foundIn(to: Damage["to"], kind: Kind, change: (sheet: Sheet) => Sheet) {
	const { made, promised } = to === "held" ? held : plain;
	const drawing = made.drawings.find(({ sheet }) => sheet.name.endsWith(NAMES[to]))!;
	const format = kind === "svg" ? "svg" : "dxf";
	const file = promised.files.find((f) => f.name === `${drawing.sheet.name}.${format}`)!;
	const bytes = bytesOf(change(drawing.sheet), made.job.bench.machine.pens, kind);
	return (await new Prover(LETTERS).prove(bytes, file)).findings;
}

describe.each(["svg", "r2000", "r12", "loose"] as const)("a good %s file", (kind) => {
	it.each(Object.keys(NAMES) as Damage["to"][])("of %s has no finding", async (to) => {
		expect(await foundIn(to, kind, (sheet) => sheet)).toEqual([]);
	});
});

describe.each(["svg", "r2000"] as const)("a damaged %s file", (kind) => {
	it.each(DAMAGES)("is found out: $title", async ({ to, change, finds }) => {
		const codes = (await foundIn(to, kind, change)).map((f) => f.code);
		expect(codes.length).toBeGreaterThan(0);
		for (const code of finds.slice(0, 1)) expect(codes).toContain(code);
	});
});

describe("a prover that knows a good SVG", () => {
	it.each(DAMAGES.filter(({ to }) => to === "gauge"))(
		"still finds out the damaged DXF: $title",
		async ({ to, change, finds }) => {
			const { made, promised } = plain;
			const { pens } = made.job.bench.machine;
			const { sheet } = made.drawings.find((d) => d.sheet.name.endsWith(NAMES[to]))!;
			const [svg, dxf] = promised.files.filter((f) => f.name.startsWith(`${sheet.name}.`));
			const prover = new Prover(LETTERS);
			expect((await prover.prove(bytesOf(sheet, pens, "svg"), svg!)).findings).toEqual([]);
			const spoilt = await prover.prove(bytesOf(change(sheet), pens, "r2000"), dxf!);
			expect(spoilt.findings.map((f) => f.code)).toContain(finds[0]);
			const good = await prover.prove(bytesOf(sheet, pens, "r2000"), dxf!);
			expect(good.findings).toEqual([]);
		},
	);
});

describe.each(["svg", "r2000"] as const)("a %s file that was edited without harm", (kind) => {
	it("is measured where it lies after it was moved as a whole, and says so", async () => {
		for (const to of ["bar", "gauge", "strip"] as const) {
			const findings = await foundIn(to, kind, movedAsAWhole);
			expect(findings.map((f) => [f.code, f.severity])).toEqual([["moved-as-a-whole", "warning"]]);
			expect(findings[0]!.facts.x).toBeCloseTo(100, 4);
			expect(findings[0]!.facts.turn).toBeCloseTo((0.3 * 180) / Math.PI, 4);
		}
	});

	it("is joined again after its outline was exploded, and says so", async () => {
		const findings = await foundIn("gauge", kind, exploded);
		expect(findings.map((f) => [f.code, f.severity])).toEqual([["pieces-joined", "warning"]]);
	});
});

/** What is done to a written file's text, as an editor, a transfer or a mischief would do it. */
interface Slip {
	readonly title: string;
	readonly change: (text: string) => string;
	readonly finds: string;
}

const SVG_SLIPS: readonly Slip[] = [
	{
		title: "a size in inches",
		change: (t) => t.replace(/width="([\d.]+)mm"/u, 'width="$1in"'),
		finds: "svg-size",
	},
	{
		title: "no unit",
		change: (t) => t.replace(/width="([\d.]+)mm" height="([\d.]+)mm"/u, 'width="$1" height="$2"'),
		finds: "svg-size",
	},
	{
		title: "another view box",
		change: (t) =>
			t.replace(/viewBox="(\S+ \S+) (\S+) /u, (_, at, w) => `viewBox="${at} ${Number(w) * 2} `),
		finds: "svg-size",
	},
	{
		title: "a coordinate that is no number",
		change: (t) => t.replace(/ L -?\d+\.\d+/u, " L NaN"),
		finds: "not-a-number",
	},
	{ title: "cut off", change: (t) => t.slice(0, t.length / 2), finds: "truncated" },
	{
		title: "a renamed group",
		change: (t) => t.replaceAll('"cut"', '"layer1"'),
		finds: "layer-unknown",
	},
	{
		title: "a text to be cut",
		change: (t) => t.replace('<g id="cut"', '<text x="1" y="1">7</text><g id="cut"'),
		finds: "text-lost",
	},
	{
		title: "a scaled group",
		change: (t) => t.replace('<g id="cut"', '<g id="cut" transform="scale(1.01)"'),
		finds: "not-rigid",
	},
	{
		title: "nothing drawn",
		change: (t) => t.replace(/<g[\s\S]*<\/g>/u, ""),
		finds: "nothing-drawn",
	},
	{ title: "no drawing at all", change: () => "PK\u0003\u0004\u0000\u0000", finds: "unreadable" },
];

const group = (code: number, value: string) => `${code}\r\n${value}\r\n`;

const DXF_SLIPS: readonly Slip[] = [
	{
		title: "in inches",
		change: (t) => t.replace("$INSUNITS\r\n70\r\n4", "$INSUNITS\r\n70\r\n1"),
		finds: "dxf-inch",
	},
	{
		title: "without a unit",
		change: (t) => t.replace("$INSUNITS\r\n70\r\n4", "$INSUNITS\r\n70\r\n0"),
		finds: "dxf-no-unit",
	},
	{
		title: "with a coordinate that is no number",
		change: (t) => t.replace(/(LWPOLYLINE[\s\S]*?\r\n10\r\n)-?[\d.]+/u, "$1nan"),
		finds: "not-a-number",
	},
	{
		title: "with a turned bulge",
		change: (t) => t.replace(/(\r\n42\r\n)-?(0\.\d+)/u, "$1-0.414213562373095"),
		finds: "outline-differs",
	},
	{
		title: "with an opened contour",
		change: (t) =>
			t.replace(
				/(LWPOLYLINE(?:(?!LWPOLYLINE)[\s\S])*?8\r\nCUT(?:(?!LWPOLYLINE)[\s\S])*?\r\n70\r\n)1/u,
				"$10",
			),
		finds: "contour-open",
	},
	{
		title: "with a wrong count of vertices",
		change: (t) => t.replace(/\r\n90\r\n\d+\r\n70/u, "\r\n90\r\n3\r\n70"),
		finds: "dxf-count",
	},
	{ title: "cut off", change: (t) => t.slice(0, t.length / 2), finds: "truncated" },
	{
		title: "with a renamed layer",
		change: (t) => t.replaceAll(group(8, "CUT"), group(8, "LAYER1")),
		finds: "layer-unknown",
	},
	{
		title: "with an entity that a label brought in",
		change: (t) =>
			t.replace(
				"ENDSEC\r\n0\r\nSECTION\r\n2\r\nOBJECTS",
				`LINE\r\n${group(8, "CUT")}${group(10, "1.0")}${group(20, "1.0")}${group(11, "9.0")}${group(21, "9.0")}0\r\nENDSEC\r\n0\r\nSECTION\r\n2\r\nOBJECTS`,
			),
		finds: "count-differs",
	},
	{
		title: "with a curve of another kind",
		change: (t) => t.replace("LWPOLYLINE", "SPLINE"),
		finds: "not-read",
	},
	{ title: "that is no drawing", change: () => "\u0000\u0001\u0002", finds: "unreadable" },
];

/** What is found in the gauge's good file after a change of its text. */
async function foundAfter(kind: Kind, change: (text: string) => string) {
	const { made, promised } = plain;
	const { sheet } = made.drawings.find((d) => d.sheet.name.endsWith(NAMES.gauge))!;
	const file = promised.files.find(
		(f) => f.name === `${sheet.name}.${kind === "svg" ? "svg" : "dxf"}`,
	)!;
	const text = new TextDecoder().decode(bytesOf(sheet, made.job.bench.machine.pens, kind));
	const changed = change(text);
	expect(changed).not.toBe(text);
	const proven = await new Prover(LETTERS).prove(new TextEncoder().encode(changed), file);
	return proven.findings.map((f) => f.code);
}

describe("a spoilt text", () => {
	it.each(SVG_SLIPS)("of an SVG is found out: $title", async ({ change, finds }) => {
		expect(await foundAfter("svg", change)).toContain(finds);
	});

	it.each(DXF_SLIPS)("of a DXF is found out: $title", async ({ change, finds }) => {
		expect(await foundAfter("r2000", change)).toContain(finds);
	});
});
