import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bar, barCodes, labelClaims, notchesFrom, SIX_STRINGS } from "../../support/bars.js";
import { madeParts } from "../../support/made-parts.js";
import { RUNS, randomJob } from "../../support/random-neck.js";

describe("a straightedge along a string", () => {
	it("has its notches at ℓ·u(n) of the outer strings, on any neck", () => {
		const lines = fc.constantFrom("bass" as const, "treble" as const);
		let seen = 0;
		fc.assert(
			fc.property(randomJob({ leastGap: 10, strings: true }), lines, ({ job, drawn }, along) => {
				const settings = { along, "least-land": "0.1 mm", "hanging-hole": "none" };
				const make = [{ "notched-straightedge": settings }];
				const { parts } = madeParts({ ...job, make });
				const taper = (drawn.strings!.atSaddle - drawn.strings!.atNut) / 2;
				const size = drawn.fanned ? drawn.scale[along] : Math.hypot(drawn.scale.bass, taper);
				const found = parts.flatMap((part) => notchesFrom(part));
				const off = found.map((n, i) => Math.abs(n.centre - size * drawn.share(i + 1)));
				expect(found.length).toBe(parts.length * drawn.frets);
				expect(Math.max(0, ...off)).toBeLessThan(1e-9);
				seen += parts.length;
			}),
			RUNS,
		);
		expect(seen).toBeGreaterThan(30);
	});

	it("widens its notches by the slant: crown/cos φ + thickness·tan φ", () => {
		const neck = {
			scale: { bass: 711.2, treble: 660.4, "square-fret": 7 },
			strings: { count: 8, "at-nut": 46, "at-saddle": 73 },
			width: { nut: 54, "last-fret": 72 },
		};
		const part = bar(neck, { along: "bass" });
		// The fret's own direction and the string's, from the points on both outer strings.
		const taper = (73 - 46) / 2;
		const runs = [711.2, 660.4].map((l) => Math.sqrt(l * l - taper * taper));
		const lead = ((runs[1]! - runs[0]!) * (1 - 2 ** (-7 / 12))) / 2;
		const string = { x: runs[0]!, y: -taper };
		for (const [i, notch] of notchesFrom(part).entries()) {
			const u = 1 - 2 ** (-(i + 1) / 12);
			const dx = -2 * lead + (runs[1]! - runs[0]!) * u;
			const dy = 46 + (73 - 46) * u;
			const sine = Math.abs(dx * string.x + dy * string.y) / (Math.hypot(dx, dy) * 711.2);
			const slant = Math.asin(sine);
			const clearance = 0.75;
			const wanted = 2.7 / Math.cos(slant) + 3 * Math.tan(slant) + 2 * clearance;
			expect(notch.width).toBeCloseTo(wanted, 9);
		}
	});

	it("tells which line it is for, so that two bars cannot be mixed up", () => {
		const part = bar({ strings: SIX_STRINGS }, { along: "bass" });
		expect(part.title).toBe("Notched straightedge, bass string");
		expect(labelClaims(part)[0]!.text).toBe("Plain neck   25 1/2 in, bass string   22 frets");
		expect(bar({ strings: SIX_STRINGS }, { along: 2 }).title).toBe(
			"Notched straightedge, string 2",
		);
	});

	it("counts strings from the treble side, 1 up", () => {
		const centres = (along: unknown) =>
			notchesFrom(bar({ strings: SIX_STRINGS }, { along })).map((n) => n.centre);
		expect(centres(1)).toEqual(centres("treble"));
		expect(centres(6)).toEqual(centres("bass"));
		expect(centres(3)).not.toEqual(centres(1));
	});

	it("refuses strings that the neck does not have", () => {
		for (const along of [0, 7, 2.5, -1])
			expect(barCodes({ strings: SIX_STRINGS }, { along })).toEqual(["no-such-string"]);
		expect(barCodes({}, { along: "bass" })).toEqual(["no-such-string"]);
	});
});
