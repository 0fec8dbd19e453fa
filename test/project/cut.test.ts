import { describe, expect, it } from "vitest";
import { kerfIn } from "../../src/cutting/index.js";
import type { Part, Placed } from "../../src/drawing/index.js";
import { moved, type Path, type Point } from "../../src/geometry/index.js";
import { type Made, make } from "../../src/make.js";
import { deviations, leftNear, pathsWithin, polygonsOf } from "../support/cut-with-beam.js";
import { madeExample } from "../support/examples.js";
import { making } from "../support/job-text.js";
import { readSvg } from "../support/read-svg.js";

/** What a cut part may be off by, mm. */
const SLACK = 0.002;

type MadeJob = Extract<Made, { ok: true }>;

/** One part as a written SVG shows it and as it should come out, both on the machine's bed. */
interface Shown {
	readonly name: string;
	readonly part: Part;
	readonly kerf: number;
	readonly written: readonly Path[];
	readonly nominal: readonly Path[];
}

/** Every part on every written drawing, the machine's stretch undone. */
function shownParts({ drawings, files, job, tools }: MadeJob): Shown[] {
	const { machine } = job.bench;
	const parts = tools.flatMap((t) => t.parts);
	return drawings.flatMap(({ sheet, placed }) => {
		const file = files.find((f) => f.sheet === sheet.name && f.format === "svg")!;
		const { groups } = readSvg(new TextDecoder().decode(file.bytes));
		const cut = groups.find((g) => g.attributes.id === "cut")!.paths;
		const asMade = cut.map(({ part, path }) => ({ part, path: grown(path, machine.stretch) }));
		return placed.map(({ part, move }: Placed): Shown => {
			const nominal = parts.find((p) => p.name === part.name)!;
			const contours = nominal.marks.filter((m) => m.operation === "cut");
			return {
				name: `${part.name} on ${file.name}`,
				part: nominal,
				kerf: kerfIn(machine, part.stock)!,
				written: pathsWithin(asMade, nominal, move),
				nominal: contours.map((m) => moved(m.path, move)),
			};
		});
	});
}

/** A path as a machine of that stretch makes it: of its arcs, chords. */
function grown(path: Path, { x, y }: Point): Path {
	if (x === 1 && y === 1) return path;
	const [chords] = polygonsOf([path]);
	return {
		closed: path.closed,
		points: chords!.map((p) => ({ x: p.x * x, y: p.y * y, bulge: 0 })),
	};
}

/** Area of the bridge that a tab leaves across the cut: its sides are the round ends of two cuts. */
function bridgeArea(width: number, kerf: number): number {
	const r = kerf / 2;
	const a = r - SLACK;
	const rounds = 2 * (a * Math.sqrt(r * r - a * a) + r * r * Math.asin(a / r));
	return 2 * a * (width + kerf) - rounds;
}

describe.each([
	"heron-baritone",
	"kestrel-eight",
	"plover-bass",
	"siskin-nineteen",
	"wren-mandolin",
])("a beam swept along every written drawing and sheet of %s", (example) => {
	it("leaves the nominal parts to within 2 µm, fillets in inside corners and tabs apart", async () => {
		const made = await madeExample(example, { formats: ["svg"], dimensions: false });
		expect(made.drawings.some(({ laid }) => laid)).toBe(true);
		const { tabs } = made.job.bench.machine;
		const shown = shownParts(made).filter(({ part }) => !part.nominal);
		expect(shown.length).toBeGreaterThan(5);
		for (const { name, kerf, written, nominal } of shown) {
			const found = deviations(leftNear(written, nominal, kerf, SLACK), nominal, kerf, SLACK);
			expect(found.missing, name).toBe(0);
			const bridges = tabs ? tabs.count * bridgeArea(tabs.width, kerf) : 0;
			expect(Math.abs(found.over - bridges), name).toBeLessThanOrEqual(bridges * 0.01);
		}
	});
});

describe("the same check", () => {
	it("sees a sheet that was not compensated, and one that the machine's stretch was not taken from", async () => {
		const job = (machine: string) =>
			make(
				making("radius-gauge").replace("make:", `machine: {bed: 300 x 200 mm, ${machine}}\nmake:`),
				{
					formats: ["svg"],
					dimensions: false,
					proof: false,
				},
			);
		const [plain, straight] = [await job("kerf: 0"), await job("kerf: 0.16 mm")];
		const stretched = await job("kerf: 0.16 mm, stretch: {x: 1.001}");
		if (!plain.ok || !straight.ok || !stretched.ok) throw new Error("refused");
		const off = (made: MadeJob, of: MadeJob) => {
			const { written } = shownParts(made)[1]!;
			const { nominal } = shownParts(of)[1]!;
			return deviations(leftNear(written, nominal, 0.16, SLACK), nominal, 0.16, SLACK);
		};
		expect(off(straight, straight)).toEqual({ over: 0, missing: 0 });
		expect(off(plain, plain).missing).toBeGreaterThan(1);
		const { drawings, ...rest } = stretched;
		const unaware = { ...rest, drawings, job: straight.job } as MadeJob;
		expect(off(unaware, straight).missing).toBeGreaterThan(0.1);
	});
});

describe("a part that is meant to be nominal", () => {
	it("is written at nominal size, whatever the kerf", async () => {
		const shown = shownParts(await madeExample("heron-baritone", { formats: ["svg"] }));
		const coupons = shown.filter(({ part }) => part.nominal);
		expect(coupons).toHaveLength(2);
		for (const { written, nominal } of coupons) {
			const ends = (paths: readonly Path[]) => paths.flatMap((p) => p.points);
			expect(ends(written)).toHaveLength(ends(nominal).length);
			for (const a of ends(nominal)) {
				const far = ends(written).map((b) => Math.hypot(a.x - b.x, a.y - b.y));
				expect(Math.min(...far)).toBeLessThan(1e-6);
			}
		}
	});
});

describe("a beam too wide for a part", () => {
	it("is refused by the slot's name, and nothing is made", async () => {
		const text = making("slot-strip: {slots: tang}").replace(
			"make:",
			"machine: {kerf: 0.6 mm}\nmake:",
		);
		const made = await make(text);
		const problems = made.ok ? [] : made.problems;
		expect(problems.map((p) => p.code)).toEqual(["narrower-than-kerf"]);
		const slots = Array.from({ length: 22 }, (_, i) => `slot ${i + 1}`);
		expect(problems[0]!.facts).toMatchObject({ feature: slots, kerf: 0.6 });
		expect(problems[0]!.facts.size).toBeCloseTo(0.53, 9);
	});
});
