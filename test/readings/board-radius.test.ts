import { describe, expect, it } from "vitest";
import { problemText } from "../../src/problem/index.js";
import { coneFit } from "../../src/readings/board-forms.js";
import { chiSquareTail } from "../../src/readings/chi-square.js";
import {
	type BoardRadius,
	fitBoard,
	type RadiusStation,
	separation,
	usualRadiiNotes,
} from "../../src/readings/index.js";
import { dropOf, found, readRadius, STEPS } from "../support/radius-readings.js";
import { normal, seeded } from "../support/seeded.js";

const SEED = 22;
const LAST = 466;

/** A bar of 50 mm read to 0.01 mm; radii in mm, infinite for flat, errors of dial readings in mm. */
function station(x: number, radius: number, error = 0): RadiusStation {
	const dial = (Number.isFinite(radius) ? dropOf(radius, 25) : 0) + error;
	const estimate = readRadius({ ...STEPS, chordResolution: 1e-6, kind: "bar", chord: 50, dial });
	return { x, name: `x ${x}`, estimate };
}

const XS = [0, LAST / 2, LAST];
const STEP_SD = 0.01 / Math.sqrt(12);

function board(radiusAt: (x: number) => number, xs = XS): BoardRadius {
	return found(fitBoard(xs.map((x) => station(x, radiusAt(x)))));
}

/** Boards read with Gaussian errors of the step's own sd. */
function simulated(count: number, radiusAt: (x: number) => number, xs = XS, sd = STEP_SD) {
	const next = seeded(SEED);
	return Array.from({ length: count }, () =>
		found(fitBoard(xs.map((x) => station(x, radiusAt(x), sd * normal(next))))),
	);
}

function share(boards: readonly BoardRadius[], holds: (b: BoardRadius) => boolean): number {
	return boards.filter(holds).length / boards.length;
}

const codes = ({ notes }: BoardRadius) => notes.map((n) => n.code);
const cone = (x: number) => 254 + ((406.4 - 254) * x) / LAST;

describe("fitBoard", () => {
	it("finds the cone of three stations, and its radius anywhere between and beyond", () => {
		const fit = board(cone);
		expect(fit.form).toBe("cone");
		for (const x of [0, 100, 300, LAST, 500]) {
			expect(fit.radiusAt(x)!.value).toBeCloseTo(cone(x), 5);
		}
		expect(fit.at.map((s) => s.radius!.value)).toEqual(XS.map((x) => fit.radiusAt(x)!.value));
		expect(Math.max(...fit.at.map((s) => Math.abs(s.residual)))).toBeLessThan(1e-5);
		expect(fit.comparisons.map((c) => [c.to, c.test, c.wins])).toEqual([
			["cylinder", "chi-square", true],
			["cone", "chi-square", true],
		]);
	});

	it("finds the same cone from stations in any order, measured from elsewhere", () => {
		const turned = [LAST, 0, LAST / 2].map((x) => station(x + 50, cone(x)));
		expect(found(fitBoard(turned)).radiusAt(150)!.value).toBeCloseTo(cone(100), 5);
	});

	it("takes two stations of a cone, and says that a third would check it", () => {
		const fit = board(cone, [0, LAST]);
		expect(fit.form).toBe("cone");
		expect(fit.radiusAt(LAST / 2)!.value).toBeCloseTo(cone(LAST / 2), 5);
		expect(codes(fit)).toContain("two-stations");
	});

	it("has a cone's radius with the standard error of propagation at its ends", () => {
		const fit = board(cone, [0, LAST]);
		const own = station(0, cone(0)).estimate;
		expect(fit.radiusAt(0)!.standard / own.radius!.standard).toBeCloseTo(1, 6);
		expect(fit.radiusAt(0)!.low).toBeCloseTo(own.radius!.low, 6);
		expect(fit.radiusAt(-LAST)!.standard).toBeGreaterThan(2 * own.radius!.standard);
	});

	it("has no radius past a cone's tip", () => {
		expect(board(cone).radiusAt(-1000)).toBeNull();
	});

	it("finds a cylinder and says what cone would go unseen", () => {
		const fit = board(() => 254);
		expect(fit.form).toBe("cylinder");
		expect(fit.radiusAt(0)).toEqual(fit.radiusAt(LAST));
		expect(fit.radiusAt(0)!.value).toBeCloseTo(254, 9);
		const { least, most } = fit.notes.find((n) => n.code === "cone-unseen")!.facts;
		// By hand: R differs between the ends by 0 ± 1.96·√2·sd(R).
		const sd = station(0, 254).estimate.radius!.standard;
		expect(most).toBeCloseTo(1.959964 * Math.SQRT2 * sd, 3);
		expect(least).toBeCloseTo(-Number(most), 3);
	});

	it("finds a flat board flat, with the radius that would read the same", () => {
		const fit = board(() => Number.POSITIVE_INFINITY);
		expect(fit.form).toBe("flat");
		expect(fit.radiusAt(0)).toBeNull();
		expect(fit.at.every((s) => s.radius === null && s.residual === 0)).toBe(true);
		const { least } = fit.notes.find((n) => n.code === "flat-within")!.facts;
		// Three dials of 0: 1.96 standard errors of 8h/c², over √3.
		expect(least).toBeCloseTo(2500 / 8 / ((1.959964 * STEP_SD) / Math.sqrt(3)), -1);
	});

	it("takes one station for a cylinder or flat, and says so", () => {
		const round = board(() => 254, [100]);
		expect([round.form, ...codes(round)]).toEqual(["cylinder", "one-station", "usual-radius"]);
		expect(round.radiusAt(400)!.value).toBeCloseTo(254, 9);
		const flat = board(() => Number.POSITIVE_INFINITY, [100]);
		expect([flat.form, ...codes(flat)]).toEqual(["flat", "one-station", "flat-within"]);
	});

	it("says that a cone which narrows from the nut on is doubtful", () => {
		expect(codes(board((x) => cone(LAST - x)))).toContain("cone-narrows");
		expect(codes(board(cone))).not.toContain("cone-narrows");
	});

	it("names the worst station and widens the interval where no form fits", () => {
		const fit = found(fitBoard([254, 254, 230, 254].map((r, i) => station(i * 150, r))));
		const scattered = fit.notes.find((n) => n.code === "stations-scatter")!;
		expect(scattered.facts.worst).toBe("x 300");
		expect(fit.comparisons.map((c) => c.test)).toEqual(["F", "F"]);
		expect(fit.form).toBe("cylinder");
		expect(fit.radiusAt(0)!.standard).toBeGreaterThan(
			3 * board(() => 254, [0, 150, 300, 450]).radiusAt(0)!.standard,
		);
	});

	it("is never flat where each station alone is cambered, however they differ", () => {
		const fit = found(fitBoard([254, 355, 254].map((r, i) => station(i * 150, r))));
		expect(fit.form).toBe("cylinder");
		expect(codes(fit)).toContain("stations-scatter");
	});

	it("leaves cylinder or cone open where three stations grow unevenly", () => {
		const fit = found(fitBoard([254, 406, 355].map((r, i) => station(i * 150, r))));
		expect(codes(fit)).toContain("form-undecided");
	});

	it("finds no cone where the board goes flat at one end, and says that a cylinder does not fit", () => {
		const fit = found(fitBoard([station(0, 254), station(LAST, Number.POSITIVE_INFINITY)]));
		expect(fit.form).toBe("cylinder");
		expect(codes(fit)).toContain("stations-scatter");
	});

	it("takes a dial of one step below 0 for a flat board, and asks to zero the gauge again", () => {
		const fit = found(fitBoard([station(0, Number.POSITIVE_INFINITY, -0.01)]));
		expect(fit.form).toBe("flat");
		expect(codes(fit)).toContain("flat-leans-hollow");
	});

	it("refuses no stations, two in one place, and a hollow board", () => {
		expect(fitBoard([])).toMatchObject([{ code: "no-radius-readings" }]);
		expect(fitBoard([station(0, 254), station(0, 260)])).toMatchObject([
			{ code: "stations-coincide", where: { path: ["radius", 1, "at"] } },
		]);
		// Each dial alone may be 0; the four together are not.
		const slight = [0, 1, 2, 3].map((x) => station(x, Number.POSITIVE_INFINITY, -0.008));
		expect(fitBoard(slight)).toMatchObject([{ code: "board-hollow" }]);
	});
});

describe("fitBoard on simulated readings", () => {
	it("finds a false cone in at most 1.5 % of cylinders", () => {
		const three = share(
			simulated(2000, () => 254),
			(b) => b.form === "cone",
		);
		const two = share(
			simulated(2000, () => 304.8, [0, LAST]),
			(b) => b.form === "cone",
		);
		for (const found of [three, two]) {
			expect(found).toBeLessThanOrEqual(0.015);
			expect(found).toBeGreaterThan(0.003);
		}
	});

	it("finds camber in at most 1.5 % of flat boards", () => {
		const next = seeded(SEED);
		let other = 0;
		for (let i = 0; i < 2000; i++) {
			const fit = fitBoard(
				XS.map((x) => station(x, Number.POSITIVE_INFINITY, STEP_SD * normal(next))),
			);
			if (Array.isArray(fit) || fit.form !== "flat") other++;
		}
		expect(other / 2000).toBeLessThanOrEqual(0.015);
		expect(other / 2000).toBeGreaterThan(0.001);
	});

	it("finds cones from 10 to 16 in or says that it cannot decide, their radius within the interval in 95 %", () => {
		const boards = simulated(2000, cone);
		const cones = share(boards, (b) => b.form === "cone");
		expect(cones).toBeGreaterThan(0.99);
		// In the rest one of three stations is out by 2.6 standard errors, and F on one degree decides nothing.
		expect(share(boards, (b) => codes(b).includes("form-undecided"))).toBeCloseTo(1 - cones, 12);
		for (const x of [0, 350, LAST]) {
			const held = share(boards, (b) => {
				const { low, high } = b.radiusAt(x)!;
				return low <= cone(x) && cone(x) <= high;
			});
			expect(held).toBeGreaterThan(0.93);
			expect(held).toBeLessThan(0.97);
		}
	});

	it("holds a cylinder's radius within the interval in 95 %", () => {
		const held = share(
			simulated(2000, () => 254),
			(b) => {
				const { low, high } = b.radiusAt(0)!;
				return low <= 254 && 254 <= high;
			},
		);
		expect(held).toBeGreaterThan(0.93);
		expect(held).toBeLessThan(0.97);
	});

	it("takes scatter of four times the steps' own for cones in under 5 %, not in half", () => {
		const rough = simulated(1000, () => 254, [0, 90, 180, 270, 360, 450], 4 * STEP_SD);
		expect(share(rough, (b) => b.form === "cone")).toBeLessThan(0.05);
		const naive = share(rough, (b) => b.form === "cone" || codes(b).includes("form-undecided"));
		expect(naive).toBeGreaterThan(0.4);
	});
});

describe("coneFit", () => {
	it("is not improved by any small change of its ends", () => {
		const read = [0, 150, 300, 466].map((x, i) => {
			const curvature = (1 / cone(x)) * (1 + [0.01, -0.02, 0.015, -0.005][i]!);
			return { x, curvature, sd: 1e-5 * (1 + i) };
		});
		const fit = coneFit(read, 300)!;
		const [p, q] = [1 / fit.at(0)!.value, 1 / fit.at(466)!.value];
		const chi2 = (a: number, b: number) =>
			read.reduce((s, { x, curvature, sd }) => {
				const radius = a + ((b - a) * x) / 466;
				return s + ((curvature - 1 / radius) / sd) ** 2;
			}, 0);
		expect(fit.chi2).toBeCloseTo(chi2(p, q), 9);
		for (const [a, b] of [
			[0.1, 0],
			[-0.1, 0],
			[0, 0.1],
			[0, -0.1],
			[0.1, -0.1],
			[-0.1, 0.1],
		] as const) {
			expect(chi2(p + a, q + b)).toBeGreaterThan(fit.chi2);
		}
	});
});

describe("usual radii", () => {
	it("of 10 and 12 in are told apart over 50 mm by steps of 0.18 mm", () => {
		const { difference, resolution } = separation(254, 304.8, 50);
		expect(difference).toBeCloseTo(dropOf(254, 25) - dropOf(304.8, 25), 12);
		// Twice the reach of 1.96·r/√12 is the difference.
		expect((2 * 1.959964 * resolution) / Math.sqrt(12)).toBeCloseTo(difference, 6);
		expect(resolution).toBeCloseTo(0.1824, 3);
	});

	it("are told apart in fact by readings to that step, and no longer by twice it", () => {
		const { resolution } = separation(254, 304.8, 50);
		const read = (radius: number, step: number) =>
			readRadius({
				...STEPS,
				resolution: step,
				chordResolution: 1e-6,
				kind: "bar",
				chord: 50,
				dial: dropOf(radius, 25),
			}).radius!;
		expect(read(254, resolution * 0.99).high).toBeLessThan(read(304.8, resolution * 0.99).low);
		expect(usualRadiiNotes(read(254, 2.1 * resolution), 50, [])).toMatchObject([
			{ code: "usual-radii-untold" },
		]);
	});

	it("are information: the radius stays as it was read", () => {
		const fit = board(() => 254.5);
		expect(fit.radiusAt(0)!.value).toBeCloseTo(254.5, 6);
		const said = fit.notes.find((n) => n.code === "usual-radius")!;
		expect(problemText(said)).toMatch(/only 10 in .* -0.5 mm from 254.5 mm/u);
	});
});

/** Table of chi-square, from memory: 3.841 and 6.635 on 1, 9.210 on 2, 11.345 on 3, 18.307 on 10. */
describe("chiSquareTail", () => {
	it.each([
		[3.841, 1, 0.05],
		[6.635, 1, 0.01],
		[0.455, 1, 0.5],
		[9.21, 2, 0.01],
		[11.345, 3, 0.01],
		[18.307, 10, 0.05],
	])("of %d on %d is %d", (x, df, tail) => {
		expect(chiSquareTail(x, df) / tail).toBeCloseTo(1, 2);
	});

	it("is e^(−x/2) on two degrees, on both sides of where its expansions meet", () => {
		for (const x of [0.01, 1, 3.9, 4.1, 30]) {
			expect(chiSquareTail(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 12);
		}
		expect(chiSquareTail(0, 3)).toBe(1);
		expect(() => chiSquareTail(-1, 3)).toThrow(RangeError);
	});
});
