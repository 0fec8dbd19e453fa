import type { PathsD } from "clipper2-ts";
import { describe, expect, it } from "vitest";
import { compensated } from "../../src/cutting/compensate.js";
import type { Tabs } from "../../src/cutting/index.js";
import { type TabCut, withTabs } from "../../src/cutting/tabs.js";
import type { Part, SizeClaim } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	distanceTo,
	line,
	type Path,
	pathLength,
	pointAt,
	rectangle,
	reversed,
	segmentLength,
	segments,
	vertex,
} from "../../src/geometry/index.js";
import { writeDxf, writeSvg } from "../../src/writers/index.js";
import { auditDxf } from "../support/audit-dxf.js";
import { auditSvg } from "../support/audit-svg.js";
import { sweptBy } from "../support/cut-with-beam.js";
import { expectedOf, PENS, partOf } from "../support/drawings.js";
import { jobWith, madeParts } from "../support/made-parts.js";
import { sheetFor } from "../support/sheets.js";

const LASER: TabCut = { kind: "laser", kerf: 0.2, tolerance: 0.05 };
const MILL: TabCut = { kind: "mill", kerf: 0, tolerance: 0.05 };
const SECOND = { scale: "640 mm", frets: 20 };
const FOUR: Tabs = { count: 4, width: 1.5 };

function plate(outline: Path, working: readonly Path[] = [], hole?: Path): Part {
	const marks = [
		...(hole ? [{ operation: "cut" as const, path: hole, feature: "hole" }] : []),
		{ operation: "cut" as const, path: outline, feature: "outline" },
	];
	return { ...partOf("plate", marks), working };
}

function tabbed(part: Part, tabs: Tabs, cut: TabCut): Part {
	const beam = compensated(part, cut.kerf);
	if (!beam.ok) throw new Error(JSON.stringify(beam.problems));
	const result = withTabs(beam.part, tabs, cut);
	if ("code" in result) throw new Error(JSON.stringify(result));
	return result;
}

const pathsOf = (part: Part, operation: string) =>
	part.marks.filter((m) => m.operation === operation).map((m) => m.path);

const tabClaims = (part: Part) =>
	part.claims.filter((c): c is SizeClaim => c.kind === "width" && c.series === "tab width");

/** Middles of tabs, in the order of their claims. */
const middles = (part: Part) =>
	tabClaims(part).map(({ at: [a, b] }) => ({ x: (a!.x + b!.x) / 2, y: (a!.y + b!.y) / 2 }));

/** The narrowest bridge between two ends of swept cuts: the least distance of their outlines. */
function bridges(swept: PathsD): number[] {
	return swept.map((own, i) => {
		const others = swept.filter((_, k) => k !== i || swept.length === 1);
		let least = Number.POSITIVE_INFINITY;
		for (const p of own) {
			for (const other of others) {
				for (const [k, a] of other.entries()) {
					const b = other[(k + 1) % other.length]!;
					least = Math.min(least, distanceTo({ kind: "line", start: a, end: b }, p));
				}
			}
		}
		return least;
	});
}

describe("tabs for a laser", () => {
	it("are gaps as much longer than the tab as the cut is wide, in open paths", () => {
		const part = tabbed(plate(rectangle(0, 0, 100, 50)), FOUR, LASER);
		const paths = pathsOf(part, "cut");
		expect(paths).toHaveLength(4);
		expect(paths.every((p) => !p.closed)).toBe(true);
		const whole = 300 + Math.PI * 0.2;
		expect(paths.reduce((sum, p) => sum + pathLength(p), 0)).toBeCloseTo(whole - 4 * 1.7, 6);
		for (const [i, path] of paths.entries()) {
			const [end, next] = [path.points.at(-1)!, paths[(i + 1) % 4]!.points[0]!];
			expect(Math.hypot(end.x - next.x, end.y - next.y)).toBeCloseTo(1.7, 9);
		}
	});

	it.each([
		["a plate", rectangle(0, 0, 60, 40)],
		["a disc", circle({ x: 0, y: 0 }, 20)],
		[
			"a plate with a hollow side",
			closed(vertex(0, 0), vertex(60, 0), vertex(60, 30, -0.2), vertex(0, 30)),
		],
	])("are as wide as asked for when a beam is swept along the paths: %s", (_, outline) => {
		for (const kerf of [0.1, 0.3]) {
			const part = tabbed(plate(outline), { count: 3, width: 1.2 }, { ...LASER, kerf });
			const swept = sweptBy(pathsOf(part, "cut"), kerf);
			expect(swept).toHaveLength(3);
			for (const width of bridges(swept)) expect(Math.abs(width - 1.2)).toBeLessThan(0.002);
		}
	});

	it("are claimed on the finished contour, where the stub stands", () => {
		const nominal = rectangle(0, 0, 60, 40);
		const claims = tabClaims(tabbed(plate(nominal), FOUR, LASER));
		expect(claims.map((c) => c.id)).toEqual(["tab-1", "tab-2", "tab-3", "tab-4"]);
		for (const { at, nominal: width, operation } of claims) {
			const [a, b] = at;
			expect(Math.hypot(a!.x - b!.x, a!.y - b!.y)).toBeCloseTo(1.5, 9);
			expect(width).toBe(1.5);
			expect(operation).toBe("cut");
			for (const p of at) {
				expect(Math.min(...segments(nominal).map((s) => distanceTo(s, p)))).toBeLessThan(1e-9);
			}
		}
	});

	it("leave holes whole, and a part that is meant to be nominal as it is", () => {
		const part = tabbed(
			plate(rectangle(0, 0, 60, 40), [], reversed(circle({ x: 30, y: 20 }, 15))),
			FOUR,
			LASER,
		);
		expect(pathsOf(part, "cut").filter((p) => p.closed)).toHaveLength(1);
		const nominal: Part = { ...plate(rectangle(0, 0, 60, 40)), nominal: true };
		expect(withTabs(nominal, FOUR, LASER)).toBe(nominal);
	});

	it("say how they are dressed, one or several", () => {
		const said = (count: number) =>
			tabbed(plate(rectangle(0, 0, 60, 40)), { count, width: 1.5 }, LASER).notes.at(-1);
		expect(said(4)).toBe(
			"Held by 4 tabs 1.5 mm wide on the outline; cut them through and dress the stubs.",
		);
		expect(said(1)).toBe(
			"Held by 1 tab 1.5 mm wide on the outline; cut it through and dress the stub.",
		);
	});
});

describe("tabs for a mill", () => {
	it("are open marks of their own along a contour that stays whole", () => {
		const outline = rectangle(0, 0, 60, 40);
		const part = tabbed(plate(outline), FOUR, MILL);
		expect(pathsOf(part, "cut")).toEqual([outline]);
		const marks = pathsOf(part, "tab");
		expect(marks).toHaveLength(4);
		for (const path of marks) {
			expect(path.closed).toBe(false);
			expect(pathLength(path)).toBeCloseTo(1.5, 9);
			for (const p of path.points) {
				expect(Math.min(...segments(outline).map((s) => distanceTo(s, p)))).toBeLessThan(1e-9);
			}
		}
		expect(part.marks.filter((m) => m.operation === "tab").map((m) => m.feature)).toEqual([
			"tab 1",
			"tab 2",
			"tab 3",
			"tab 4",
		]);
	});
});

describe("places of tabs", () => {
	it("are spread evenly around a disc, but for the joints of its two arcs", () => {
		const part = tabbed(plate(circle({ x: 0, y: 0 }, 40)), { count: 5, width: 2 }, MILL);
		const angles = middles(part).map(({ x, y }) => Math.atan2(y, x));
		const turned = angles.map((a, i) => {
			const next = angles[(i + 1) % angles.length]!;
			return (next - a + 4 * Math.PI) % (2 * Math.PI);
		});
		for (const turn of turned) expect(Math.abs(turn - (2 * Math.PI) / 5) * 40).toBeLessThan(3);
	});

	it("are as far apart as a plate with a working edge allows: none on it, its ends used", () => {
		const part = tabbed(
			plate(rectangle(0, 0, 100, 20), [line({ x: 0, y: 0 }, { x: 100, y: 0 })]),
			{ count: 2, width: 2 },
			MILL,
		);
		// The free contour runs up one end, along the top and down the other: 16 + 100 + 16 mm. The
		// two farthest apart stand on the ends, or next to them.
		const [a, b] = middles(part);
		expect(Math.abs(a!.x - b!.x)).toBeGreaterThan(95);
		for (const { y } of [a!, b!]) expect(y).toBeGreaterThan(4);
	});

	it("are the same every time", () => {
		const make = () => tabbed(plate(rectangle(0, 0, 90, 20)), FOUR, LASER);
		expect(make()).toEqual(make());
	});

	it("are refused with the number that fits", () => {
		// On a side of 12 mm there is room for middles from 2 to 10 mm, 4 mm apart: three of them.
		const small = plate(rectangle(0, 0, 12, 3));
		const result = withTabs(small, { count: 20, width: 2 }, MILL);
		expect(result).toMatchObject({
			code: "no-room-for-tabs",
			facts: { part: "plate", count: 20, width: 2, fits: 6 },
		});
		const none = withTabs(small, { count: 1, width: 11 }, MILL);
		expect(none).toMatchObject({ code: "no-room-for-tabs", facts: { fits: 0 } });
		expect(withTabs(small, { count: 6, width: 2 }, MILL)).not.toHaveProperty("code");
	});

	it("are not to be had on a bar that works on both long edges and both ends", () => {
		const { parts } = madeParts(
			jobWith({}, [{ "notched-straightedge": { "second-edge": SECOND } }]),
		);
		const facts = { part: "notched-straightedge", count: 1, width: 1.5, fits: 0 };
		expect(withTabs(parts[0]!, { count: 1, width: 1.5 }, MILL)).toMatchObject({ facts });
	});

	it("keep off corners, notches and working edges on every tool's parts", () => {
		const tools = [
			"notched-straightedge",
			{ "notched-straightedge": { name: "two", "nut-end": "cleared", "second-edge": SECOND } },
			{ "notched-straightedge": { name: "cleared", "nut-end": "cleared", "depth-clearance": 5 } },
			{ "radius-gauge": { at: ["nut", "last-fret"] } },
			"slot-strip",
			{ "slot-strip": { name: "cut-strip", slots: "tang" } },
		];
		const { parts } = madeParts(jobWith({}, tools));
		expect(parts).toHaveLength(7);
		for (const cut of [LASER, { ...LASER, kerf: 0 }, MILL]) {
			for (const part of parts) {
				const held = tabbed(part, { count: 3, width: 1.5 }, cut);
				const claims = tabClaims(held);
				expect(claims).toHaveLength(3);
				const outline = segments(part.marks.at(-1)!.path);
				const corners = outline.map((s) => s.start);
				const working = part.working.flatMap(segments);
				const points = claims.flatMap(({ at }) =>
					Array.from({ length: 201 }, (_, k) =>
						pointAt({ kind: "line", start: at[0]!, end: at[1]! }, k / 200),
					),
				);
				const toWorking = points.flatMap((p) => working.map((s) => distanceTo(s, p)));
				const near = toWorking.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
				// Scored slots are no edges: such a strip alone has none.
				expect(near < 200 || part.name === "slot-strip").toBe(true);
				expect(near).toBeGreaterThanOrEqual(3);
				const toCorner = points.flatMap((p) =>
					corners.map((c) => Math.hypot(c.x - p.x, c.y - p.y)),
				);
				// A millimetre along the contour: on an arc a hair less across.
				expect(toCorner.reduce((a, b) => Math.min(a, b))).toBeGreaterThan(0.999);
			}
		}
	});
});

describe("files of parts with tabs", () => {
	it.each([
		["laser", LASER],
		["mill", MILL],
	] as const)("hold them in every format: %s", (_, cut) => {
		const { parts } = madeParts(jobWith({}, ["notched-straightedge", "radius-gauge"]));
		for (const part of parts) {
			const held = tabbed(part, FOUR, cut);
			// Strokes of letters cross themselves; that is no matter of tabs.
			const bare = { ...held, marks: held.marks.filter((m) => m.operation !== "engrave") };
			const sheet = sheetFor(bare);
			const expected = expectedOf(sheet);
			const svg = writeSvg(sheet, PENS);
			expect(auditSvg(svg, expected)).toEqual([]);
			expect(svg.includes('<g id="tab"')).toBe(cut.kind === "mill");
			for (const flavour of ["r2000", "r12", "loose"] as const) {
				const dxf = writeDxf(sheet, PENS, flavour);
				expect(auditDxf(dxf, flavour, expected)).toEqual([]);
				expect(/\r\n8\r\nTAB\r\n/u.test(dxf)).toBe(cut.kind === "mill");
			}
			if (cut.kind === "laser") {
				expect(auditSvg(svg).some((f) => f.rule === "open-contour")).toBe(true);
			}
		}
	});

	it("have shorter cuts by just the gaps", () => {
		const part = plate(rectangle(0, 0, 60, 40));
		const size = (p: Part) =>
			pathsOf(p, "cut")
				.flatMap(segments)
				.reduce((sum, s) => sum + segmentLength(s), 0);
		const beam = compensated(part, 0.2);
		expect(size(beam.ok ? beam.part : part) - size(tabbed(part, FOUR, LASER))).toBeCloseTo(
			4 * 1.7,
			9,
		);
	});
});
