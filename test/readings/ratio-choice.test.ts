import { describe, expect, it } from "vitest";
import { TWELVE } from "../../src/neck/index.js";
import { fitScale } from "../../src/readings/index.js";
import {
	percent,
	RATIO_SHARE,
	readBoard,
	sound,
	TWO_RATIOS_SHARE,
	UNIFORM,
} from "../support/boards.js";
import { seeded } from "../support/seeded.js";

const TOLD = { law: TWELVE, resolution: 0.1, nut: "true" } as const;

describe("a law of one ratio or two", () => {
	it.each([
		{ kind: "ratio", share: RATIO_SHARE, boards: 2000 },
		// Each join tried costs a fit: fewer boards.
		{ kind: "two-ratios", share: TWO_RATIOS_SHARE, boards: 200 },
	])("is found on 95 of 100 boards that follow it: $kind", ({ kind, share, boards }) => {
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
