import { describe, expect, it } from "vitest";
import { nearest } from "../../src/job/index.js";

const tools = ["notched-straightedge", "radius-gauge", "slot-strip"];

describe("nearest", () => {
	it.each([
		["radius-gage", tools, "radius-gauge"],
		["Radius-Gauge", tools, "radius-gauge"],
		["slotstrip", tools, "slot-strip"],
		["notched-straigthedge", tools, "notched-straightedge"],
		["straightedge", tools, ""],
		["inches", ["mm", "cm", "m", "in"], "in"],
		["gauge-w", ["gauge-height", "gauge-width"], "gauge-width"],
		["lft", ["left", "right"], "left"],
		["pdf", ["svg", "dxf"], ""],
		["x", ["at", "mm"], ""],
		["", ["at"], ""],
		["at", [], ""],
	])("takes %j of %j for %j", (given, known, meant) => {
		expect(nearest(given, known)).toBe(meant);
	});

	it("takes the nearer of two", () => {
		expect(nearest("crown-heigth", ["crown-width", "crown-height"])).toBe("crown-height");
	});

	it("knows no name near a word without end", () => {
		expect(nearest("a".repeat(1_000_000), tools)).toBe("");
	});
});
