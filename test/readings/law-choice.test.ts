import { describe, expect, it } from "vitest";
import { TWELVE } from "../../src/neck/index.js";
import { fitScale } from "../../src/readings/index.js";
import {
	EIGHTEEN_SHARE,
	percent,
	readBoard,
	sound,
	TWELVE_SHARE,
	UNIFORM,
} from "../support/boards.js";
import { seeded } from "../support/seeded.js";

const TOLD = { law: TWELVE, resolution: 0.1, nut: "true" } as const;

describe("a fixed law of the frets", () => {
	it.each([
		{ kind: "told", share: TWELVE_SHARE, boards: 2000 },
		{ kind: "rule-of-18", share: EIGHTEEN_SHARE, boards: 2000 },
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
