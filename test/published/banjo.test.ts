import { expect, it } from "vitest";
import { TWELVE } from "../../src/neck/index.js";
import { fitScale } from "../../src/readings/scale-fit.js";

// C. W. MacCord, "Spacing the frets on a banjo neck", Scientific American Supplement 794 (21 March 1891): 26 in,
// each space 1/18 of what remains. The inches are worked from that rule; 1.4444, 2.8086, 4.0971 … 12.9055 are as printed.
it("finds the rule of 18 and 26 in on the banjo neck of 1891, whatever is told", () => {
	let rest = 26;
	const readings = Array.from({ length: 12 }, (_, i) => {
		rest -= rest / 18;
		return { fret: i + 1, at: Math.round((26 - rest) * 1e4) / 1e4 };
	});
	expect([0, 1, 2, 11].map((i) => readings[i]!.at)).toEqual([1.4444, 2.8086, 4.0971, 12.9055]);
	const mm = readings.map(({ fret, at }) => ({ fret, at: at * 25.4 }));
	for (const nut of ["true", "unknown"] as const) {
		const fit = fitScale(mm, { law: TWELVE, resolution: 0.0001 * 25.4, nut });
		if (Array.isArray(fit)) throw new Error(JSON.stringify(fit));
		expect(fit.kind).toBe("rule-of-18");
		expect(fit.offset).toBeNull();
		expect(Math.abs(fit.scale.value / 25.4 - 26)).toBeLessThan(1e-4);
		expect(fit.notes.map((n) => n.code)).toContain("law-not-told");
	}
});

// V. Galilei, Dialogo (1581), as worked in J. Kepler, Harmonices mundi (1619) III ch. VIII, ed. Frisch vol. V: remaining
// string of 100000 in whole parts; the rows quoted are the first three and the last two, the last one truncated.
it("finds the rule of 18 in Galilei's figures of 1581", () => {
	const left: [number, number][] = [
		[1, 94444],
		[2, 89198],
		[3, 84242],
		[11, 53326],
		[12, 50363],
	];
	const readings = left.map(([fret, rest]) => ({ fret, at: (100000 - rest) / 100 }));
	const fit = fitScale(readings, { law: TWELVE, resolution: 0.01, nut: "true" });
	if (Array.isArray(fit)) throw new Error(JSON.stringify(fit));
	expect(fit.kind).toBe("rule-of-18");
	expect(Math.abs(fit.scale.value - 1000)).toBeLessThan(0.01);
});
