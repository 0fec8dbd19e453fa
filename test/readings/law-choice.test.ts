import { describe, expect, it } from "vitest";
import { TWELVE } from "../../src/neck/index.js";
import { fitScale } from "../../src/readings/index.js";
import {
	EIGHTEEN_SHARE,
	percent,
	RATIO_SHARE,
	readBoard,
	sound,
	TWELVE_SHARE,
	TWO_RATIOS_SHARE,
	UNIFORM,
} from "../support/boards.js";
import { seeded } from "../support/seeded.js";

const TOLD = { law: TWELVE, resolution: 0.1, nut: "true" } as const;

describe("the law of the frets", () => {
	it.each([
		["told", TWELVE_SHARE, 2000],
		["rule-of-18", EIGHTEEN_SHARE, 2000],
		["ratio", RATIO_SHARE, 2000],
		["two-ratios", TWO_RATIOS_SHARE, 500],
	] as const)("is found on 95 %% of boards that follow it: %s", (kind, share, boards) => {
		for (const nut of ["true", "unknown"] as const) {
			const next = seeded(5);
			const found = percent(
				boards / 2,
				() => sound(fitScale(readBoard(next, share, UNIFORM), { ...TOLD, nut })).kind === kind,
			);
			console.log(`${kind} found, nut ${nut}: ${found} % of ${boards / 2}`);
			expect(found).toBeGreaterThanOrEqual(95);
		}
	});
});
