import { describe, expect, it } from "vitest";
import { toolKeys } from "../../src/job/keys.js";
import { TOOLS } from "../../src/tools/index.js";
import { camber } from "../support/run-camber.js";

describe("camber tools", () => {
	it("tells every tool's purpose, every setting with its limits and defaults, and what all take", async () => {
		const { code, out, err } = await camber(["tools"]);
		expect([code, err]).toEqual([0, ""]);
		const text = out.replace(/\s+/gu, " ");
		for (const tool of TOOLS) {
			expect(out).toMatch(new RegExp(`^${tool.id}$`, "mu"));
			expect(text).toContain(tool.purpose);
			for (const { path, text: what, range, initial } of toolKeys(tool)) {
				expect(text).toContain(`${path[0]}: ${what}; ${range}`);
				if (initial !== "") expect(text).toContain(`default: ${initial}`);
			}
		}
		const common = out.slice(out.indexOf("Every tool also takes"));
		expect(common).toMatch(/^ {4}name: /mu);
		expect(common).toMatch(/^ {4}stock: .*\{material: /mu);
	});

	it("keeps to a hundred columns", async () => {
		for (const line of (await camber(["tools"])).out.split("\n")) {
			expect(line.length, line).toBeLessThanOrEqual(100);
		}
	});

	it("lists the same to machines", async () => {
		const { code, out } = await camber(["tools", "--json"]);
		expect(code).toBe(0);
		const list = JSON.parse(out) as { id: string; purpose: string; settings: object[] }[];
		expect(list.map(({ id }) => id)).toEqual(TOOLS.map(({ id }) => id));
		list.forEach(({ settings }, i) => {
			expect(settings).toEqual(toolKeys(TOOLS[i]!));
		});
	});
});
