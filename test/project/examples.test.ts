import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { around, extents, pathLength, signedArea } from "../../src/geometry/index.js";
import type { MakeOptions } from "../../src/make.js";
import { problemText } from "../../src/problem/index.js";
import { TOOLS } from "../../src/tools/index.js";
import { expectedOf } from "../support/drawings.js";
import { EXAMPLES, madeExample } from "../support/examples.js";
import { auditDxf, readDxf } from "../support/read-dxf.js";
import { auditSvg, readSvg } from "../support/read-svg.js";

/** `GOLDEN=write npm test -- examples` renews the facts; look at the pictures before you commit. */
const RENEW = process.env.GOLDEN === "write";
/** Rounded, without negative zero. */
function rounded(value: number, digits: number): number {
	return Number(value.toFixed(digits)) + 0;
}

/** Facts of a drawing as its written SVG holds them: to a micrometre. */
function factsOf(svg: string) {
	const groups = readSvg(svg).groups.filter((g) => g.attributes.id !== "reference");
	return groups.map((group) => {
		const paths = group.paths.map((p) => p.path);
		const box = around(paths.map(extents));
		const round = (value: number) => rounded(value, 3);
		return {
			operation: group.attributes.id,
			paths: paths.length,
			length: round(paths.reduce((sum, p) => sum + pathLength(p), 0)),
			area: round(paths.filter((p) => p.closed).reduce((sum, p) => sum + signedArea(p), 0)),
			extents: [box.minX, box.minY, box.maxX, box.maxY].map(round),
		};
	});
}

/** As for a machine, the same for all of these tests. */
const CUT: MakeOptions = { formats: ["svg", "dxf"] };

/** A stroke of an engraved 8 crosses itself; nothing else may. */
function isFault({ rule, detail }: { rule: string; detail: string }): boolean {
	return rule !== "self-crossing" || !/label|ENGRAVE/u.test(detail);
}

describe.each(EXAMPLES)("example %s", (job) => {
	it("keeps its golden facts: lengths, areas, extents and every promised size", async () => {
		const { files, tools } = await madeExample(job, CUT);
		const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
		const facts = {
			drawings: Object.fromEntries(
				files.filter((f) => f.format === "svg").map((f) => [f.name, factsOf(text(f.bytes))]),
			),
			claims: Object.fromEntries(
				tools.flatMap(({ parts }) =>
					parts.map((part) => [
						part.name,
						Object.fromEntries(part.claims.map((c) => [c.id, rounded(c.nominal, 6)])),
					]),
				),
			),
		};
		const file = join("test/golden", `${job}.json`);
		if (RENEW || !existsSync(file)) {
			expect(RENEW, `${file} is missing: GOLDEN=write makes it`).toBe(true);
			mkdirSync("test/golden", { recursive: true });
			writeFileSync(file, `${JSON.stringify(facts, null, "\t")}\n`);
		}
		expect(facts).toEqual(JSON.parse(readFileSync(file, "utf8")));
	});

	it("makes the full kit: every tool, or the reason why not for this neck", async () => {
		const { tools, skipped } = await madeExample(job, CUT);
		const ids = [...tools, ...skipped].map(({ wanted }) => wanted.tool.id);
		expect([...new Set(ids)].sort()).toEqual(TOOLS.map(({ id }) => id).sort());
		expect(tools.length).toBeGreaterThan(skipped.length);
		for (const { reasons } of skipped) {
			expect(reasons.map(problemText).join("").length).toBeGreaterThan(40);
		}
	});

	it("writes files in which an audit finds nothing", async () => {
		const { files, drawings } = await madeExample(job, CUT);
		for (const { sheet } of drawings) {
			const drawn = expectedOf(sheet);
			for (const { name, format, bytes } of files.filter((f) => f.sheet === sheet.name)) {
				const text = new TextDecoder().decode(bytes);
				const findings = format === "svg" ? auditSvg(text, drawn) : auditDxf(text, "r2000", drawn);
				expect(findings.filter(isFault), name).toEqual([]);
			}
		}
	});

	it("says the same in SVG and DXF, entity by entity", async () => {
		const { files } = await madeExample(job, CUT);
		const svgs = files.filter((f) => f.format === "svg");
		expect(svgs.length).toBeGreaterThan(0);
		for (const svg of svgs) {
			const dxf = files.find((f) => f.name === svg.name.replace(/svg$/u, "dxf"))!;
			const fromSvg = readSvg(new TextDecoder().decode(svg.bytes)).groups;
			const fromDxf = readDxf(new TextDecoder().decode(dxf.bytes)).entities;
			for (const group of fromSvg) {
				const layer = String(group.attributes.id).toUpperCase();
				const paths = fromDxf.filter((e) => e.layer === layer && e.path);
				expect(paths.length, `${dxf.name} ${layer}`).toBe(group.paths.length);
				const total = (list: readonly { path: Parameters<typeof pathLength>[0] }[]) =>
					list.reduce((sum, { path }) => sum + pathLength(path), 0);
				const lengths = [total(group.paths), total(paths as never)];
				expect(Math.abs(lengths[0]! - lengths[1]!), `${dxf.name} ${layer}`).toBeLessThan(0.01);
			}
		}
	});
});

describe("templates-out", () => {
	it("holds the baritone's whole output, byte by byte", async () => {
		const { files } = await madeExample("heron-baritone", { proof: true, report: true });
		const folder = "templates-out/heron-baritone";
		const present = readdirSync(folder).sort();
		expect(present).toEqual(files.map((f) => f.name).sort());
		for (const { name, bytes } of files) {
			const committed = readFileSync(join(folder, name));
			expect(committed.equals(bytes), `${name} differs: run npm run demo, look, commit`).toBe(true);
		}
	});
});
