import { describe, expect, it } from "vitest";
import type { Path } from "../../src/geometry/index.js";
import { type DxfFlavour, writeDxf } from "../../src/writers/index.js";
import { wantedEntities } from "../support/audit-dxf-contents.js";
import { isCircle, pathFault } from "../support/compare-paths.js";
import { expectedOf, handDrawing, PENS } from "../support/drawings.js";
import { type ParsedEntity, parseElsewhere } from "../support/third-party-dxf.js";

/** Time that the parser has for one file, ms: it needs some tens. */
const LIMIT = 20_000;
const SHEET = handDrawing();
const EXPECTED = expectedOf(SHEET);

function pathOf({
	type,
	vertices = [],
	shape,
	center,
	radius,
	startAngle,
	endAngle,
}: ParsedEntity): Path {
	if (type === "ARC" && center && radius && startAngle !== undefined && endAngle !== undefined) {
		const sweep = (endAngle - startAngle + 4 * Math.PI) % (2 * Math.PI);
		const at = (angle: number, bulge: number) => ({
			x: center.x + radius * Math.cos(angle),
			y: center.y + radius * Math.sin(angle),
			bulge,
		});
		return { closed: false, points: [at(startAngle, Math.tan(sweep / 4)), at(endAngle, 0)] };
	}
	const points = vertices.map(({ x, y, bulge }) => ({ x, y, bulge: bulge ?? 0 }));
	return { points, closed: shape ?? false };
}

describe("a general-purpose DXF parser", () => {
	it.each(["r2000", "r12", "loose"] satisfies DxfFlavour[])(
		"sees the drawing, %s",
		async (flavour) => {
			const parsed = await parseElsewhere(writeDxf(SHEET, PENS, flavour), LIMIT);
			const wanted = wantedEntities(EXPECTED, flavour);
			const paths = parsed.entities.filter((e) => e.type !== "TEXT");
			expect(paths.map((e) => `${e.type} ${e.layer}`)).toEqual(
				wanted.map((w) => `${w.type} ${w.layer}`),
			);
			for (const [i, entity] of paths.entries()) {
				const { path } = wanted[i]!;
				if (!isCircle(path)) expect(pathFault(path, pathOf(entity), 1e-8)).toBeNull();
			}
			const circles = paths.filter((e) => e.type === "CIRCLE");
			expect(circles.map((e) => e.radius)).toEqual([3, 3, 3]);
			expect(circles[0]!.center).toMatchObject({ x: 10.5, y: 12.25 });
			const texts = parsed.entities.filter((e) => e.type === "TEXT");
			expect(texts.map((e) => [e.text, e.textHeight, e.layer])).toEqual([
				["56 mm", 2.5, "REFERENCE"],
				["R 254", 3.5, "REFERENCE"],
			]);
		},
	);

	it.each(["r2000", "r12", "loose"] satisfies DxfFlavour[])(
		"sees header and layers, %s",
		async (flavour) => {
			const { header, tables } = await parseElsewhere(writeDxf(SHEET, PENS, flavour), LIMIT);
			expect(header).toMatchObject({
				$ACADVER: flavour === "r2000" ? "AC1015" : "AC1009",
				$INSUNITS: 4,
				$MEASUREMENT: 1,
			});
			expect(Object.keys(tables.layer.layers)).toEqual([
				"0",
				"REFERENCE",
				"SCORE",
				"ENGRAVE",
				"CUT",
			]);
		},
	);

	it("is stopped where it waits for ever: SEQEND lost", async () => {
		const text = writeDxf(SHEET, PENS, "r12").replace(/0\r\nSEQEND\r\n8\r\n[A-Z]+\r\n/g, "");
		await expect(parseElsewhere(text, 1500)).rejects.toThrow(/no answer within 1500 ms/);
	});
});
