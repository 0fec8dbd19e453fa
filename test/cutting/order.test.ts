import { describe, expect, it } from "vitest";
import { inOrder } from "../../src/cutting/order.js";
import { workOf } from "../../src/cutting/work.js";
import type { Mark, Operation, Part, Placed, Sheet } from "../../src/drawing/index.js";
import {
	circle,
	closed,
	line,
	type Path,
	type Point,
	pathLength,
	rectangle,
	reversed,
	signedArea,
	vertex,
} from "../../src/geometry/index.js";
import { jobWith, madeParts } from "../support/made-parts.js";

const HOME: Point = { x: 0, y: 0 };

/** Numbers from 0 to 1 that a seed fixes (a linear congruential generator). */
function numbers(seed: number): (low: number, high: number) => number {
	let state = seed >>> 0;
	const next = () => {
		state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
		return state / 2 ** 32;
	};
	for (let i = 0; i < 8; i++) next();
	return (low, high) => low + (high - low) * next();
}

function mark(operation: Operation, path: Path, feature: string): Mark {
	return { operation, path, feature };
}

function partOf(name: string, marks: readonly Mark[], more: Partial<Part> = {}): Part {
	return {
		name,
		tool: "test",
		title: name,
		stock: { material: "acrylic", thickness: 3 },
		marks,
		workingEdge: "none",
		working: [],
		claims: [],
		notes: [],
		...more,
	};
}

function sheetOf(placed: readonly Placed[]): Sheet {
	const size = { minX: 0, minY: 0, maxX: 600, maxY: 400 };
	return { name: "sheet", title: "Sheet", size, placed, marks: [], notes: [] };
}

const STAY = { x: 0, y: 0, turn: 0, mirror: false };

/** A part of 60 × 40 mm: an outline, and inner cuts in a 3 × 2 raster. */
function randomPart(name: string, inner: number, random: ReturnType<typeof numbers>): Part {
	const [w, h] = [random(45, 60), random(30, 40)];
	const cuts = [mark("cut", rectangle(0, 0, w, h), "outline")];
	for (let i = 0; i < inner; i++) {
		const [x, y] = [(w / 6) * (1 + 2 * (i % 3)), (h / 4) * (1 + 2 * Math.floor(i / 3))];
		const kind = random(0, 3);
		const [a, b] = [random(1, 5), random(1, 5)];
		const path =
			kind < 1
				? reversed(circle({ x, y }, a))
				: kind < 2
					? reversed(rectangle(x - a, y - b, x + a, y + b))
					: line({ x: x - a, y: y - b }, { x: x + a, y: y + b });
		cuts.splice(Math.floor(random(0, cuts.length + 1)), 0, mark("cut", path, `inner ${i}`));
	}
	// A working lower edge leaves the outline its upper corners alone.
	const working = random(0, 1) < 0.5 ? [line({ x: 0, y: 0 }, { x: w, y: 0 })] : [];
	return partOf(name, cuts, { working });
}

function randomSheet(seed: number, parts: number, most: number): Sheet {
	const random = numbers(seed);
	const cells = Array.from({ length: 25 }, (_, i) => i);
	let left = most;
	const placed = Array.from({ length: parts }, (_, i): Placed => {
		const inner = Math.min(Math.floor(random(0, 4)), left - (parts - i));
		left -= inner + 1;
		const [cell] = cells.splice(Math.floor(random(0, cells.length)), 1);
		const x = 100 + (cell! % 5) * 90 + random(0, 20);
		const y = 100 + Math.floor(cell! / 5) * 90 + random(0, 20);
		const move = { x, y, turn: random(0, 7), mirror: random(0, 1) < 0.3 };
		return { part: randomPart(`part ${i}`, inner, random), move };
	});
	return sheetOf(placed);
}

/** A point set on the sheet as `Move` is defined: mirrored, turned, shifted. */
function onSheet({ x, y }: Point, { move }: Placed): Point {
	const up = move.mirror ? -y : y;
	const [c, s] = [Math.cos(move.turn), Math.sin(move.turn)];
	return { x: c * x - s * up + move.x, y: s * x + c * up + move.y };
}

function apart(a: Point, b: Point): number {
	return Math.hypot(a.x - b.x, a.y - b.y);
}

function ends({ points, closed }: Path): [Point, Point] {
	return [points[0]!, closed ? points[0]! : points.at(-1)!];
}

/** The head's ways between the cuts of a sheet in the order of the file, mm. */
function cutTravel(sheet: Sheet, head: Point = HOME): number {
	let at = head;
	let sum = 0;
	for (const placed of sheet.placed) {
		for (const { operation, path } of placed.part.marks) {
			if (operation !== "cut") continue;
			const [from, to] = ends(path).map((p) => onSheet(p, placed));
			sum += apart(at, from!);
			at = to!;
		}
	}
	return sum;
}

/** Where the head stands before the first cut. */
function cutStart(sheet: Sheet): Point {
	const drawn = ["score", "engrave"].flatMap((operation) =>
		sheet.placed.flatMap((placed) =>
			placed.part.marks
				.filter((m) => m.operation === operation)
				.map(({ path }) => onSheet(ends(path)[1], placed)),
		),
	);
	return drawn.at(-1) ?? HOME;
}

/** A cut with the places at which it may begin, each with the place where it then ends. */
interface Stop {
	readonly part: number;
	readonly isOutline: boolean;
	readonly ways: readonly (readonly [Point, Point])[];
}

function stopsOf(sheet: Sheet): Stop[] {
	return sheet.placed.flatMap((placed, part) =>
		placed.part.marks
			.filter(({ operation }) => operation === "cut")
			.map(({ path, feature }): Stop => {
				const isOutline = feature === "outline";
				const fit = path.points.filter((p) => !isOutline || !placed.part.working[0] || p.y > 20);
				const [a, b] = ends(path).map((p) => onSheet(p, placed));
				return {
					part,
					isOutline,
					ways: path.closed
						? fit.map((p) => [onSheet(p, placed), onSheet(p, placed)] as const)
						: [[a!, b!] as const, [b!, a!] as const],
				};
			}),
	);
}

/**
 * The least travel through all cuts of a sheet, by the way from each set of cuts still to do, cut
 * made last and place there: a part once begun is finished, and its outline comes last.
 *
 * @param order - of parts; free without it
 */
function leastTravel(sheet: Sheet, head: Point = HOME, order?: readonly number[]): number {
	const stops = stopsOf(sheet);
	const full = 2 ** stops.length - 1;
	const known = new Map<number, number>();
	const isLeft = (done: number, i: number) => (done & (1 << i)) === 0;
	const onward = (done: number, at: Point, part: number | null): number => {
		if (done === full) return 0;
		const isBegun = stops.some((s, i) => s.part === part && isLeft(done, i));
		const due = order?.find((p) => stops.some((s, i) => s.part === p && isLeft(done, i)));
		let best = Number.POSITIVE_INFINITY;
		stops.forEach((stop, i) => {
			if (!isLeft(done, i) || (isBegun && stop.part !== part)) return;
			if (due !== undefined && stop.part !== due) return;
			const others = stops.some((s, k) => k !== i && s.part === stop.part && isLeft(done, k));
			if (stop.isOutline && others) return;
			stop.ways.forEach(([from, to], w) => {
				const key = ((done | (1 << i)) * 16 + i) * 16 + w;
				const rest = known.get(key) ?? onward(done | (1 << i), to, stop.part);
				known.set(key, rest);
				best = Math.min(best, apart(at, from) + rest);
			});
		});
		return best;
	};
	return onward(0, head, null);
}

function permutations(n: number): number[][] {
	if (n === 0) return [[]];
	return permutations(n - 1).flatMap((order) =>
		Array.from({ length: n }, (_, at) => order.toSpliced(at, 0, n - 1)),
	);
}

/** The least travel of the cuts over all orders of parts, each begun where a text's end is. */
function leastAfterText(sheet: Sheet): number {
	const orders = permutations(sheet.placed.length);
	return Math.min(
		...orders.flatMap((order) => {
			const last = sheet.placed[order.at(-1)!]!;
			const stroke = last.part.marks.findLast(({ operation }) => operation === "engrave")!;
			return ends(stroke.path).map((p) => leastTravel(sheet, onSheet(p, last), order));
		}),
	);
}

/** What a path has however it is begun or turned: closed ones keep their direction. */
function shapeOf({ operation, feature, path }: Mark): string {
	const area = path.closed ? signedArea(path) : 0;
	const [a, b] = ends(path)
		.map(({ x, y }) => `${x} ${y}`)
		.sort();
	const at = path.closed ? "" : `${a} ${b}`;
	const size = `${area.toFixed(6)} ${pathLength(path).toFixed(6)}`;
	return [operation, feature, path.closed, size, at].join("|");
}

/** Faults of an ordered sheet against the one it was made of. */
function faultsOf(sheet: Sheet, ordered: Sheet): string[] {
	const faults: string[] = [];
	const names = (s: Sheet) => s.placed.map(({ part }) => part.name).sort();
	if (names(sheet).join() !== names(ordered).join()) faults.push("other parts");
	for (const { part, move } of ordered.placed) {
		const before = sheet.placed.find((p) => p.part.name === part.name)!;
		if (before.move !== move) faults.push(`${part.name} was moved`);
		const shapes = (p: Part) => p.marks.map(shapeOf).sort();
		if (shapes(before.part).join("\n") !== shapes(part).join("\n")) {
			faults.push(`${part.name} has other marks`);
		}
		const cuts = part.marks.filter(({ operation }) => operation === "cut");
		const last = cuts.at(-1)?.feature;
		if (last !== "outline") faults.push(`${part.name} ends with ${last}`);
	}
	return faults;
}

describe("the order of work", () => {
	it("has the least travel there is on sheets of up to twelve contours", {
		timeout: 60_000,
	}, () => {
		const ratios: number[] = [];
		for (let seed = 0; seed < 120; seed++) {
			const parts = 1 + (seed % 5);
			const sheet = randomSheet(seed, parts, 12);
			const ordered = inOrder(sheet);
			expect(faultsOf(sheet, ordered)).toEqual([]);
			ratios.push(cutTravel(ordered) / leastTravel(sheet));
			expect(cutTravel(ordered)).toBeCloseTo(workOf(ordered, null).travel, 6);
		}
		expect(Math.min(...ratios)).toBeGreaterThan(1 - 1e-9);
		expect(Math.max(...ratios)).toBeLessThan(1 + 1e-9);
	});

	it("has it for one part of eleven holes and for twelve parts", { timeout: 60_000 }, () => {
		const random = numbers(7);
		const holes = Array.from({ length: 11 }, (_, i) => {
			const [x, y] = [random(5, 95), 5 + 8 * i];
			return mark("cut", reversed(rectangle(x, y, x + 3, y + 3)), `hole ${i}`);
		});
		const outline = mark("cut", rectangle(0, 0, 100, 100), "outline");
		const plate = sheetOf([{ part: partOf("plate", [outline, ...holes]), move: STAY }]);
		const plates = Array.from({ length: 12 }, (_, i): Placed => {
			const move = { ...STAY, x: random(0, 500), y: random(0, 300) };
			return { part: partOf(`${i}`, [mark("cut", rectangle(0, 0, 30, 30), "outline")]), move };
		});
		for (const sheet of [plate, sheetOf(plates)]) {
			const ordered = inOrder(sheet);
			expect(faultsOf(sheet, ordered)).toEqual([]);
			expect(cutTravel(ordered)).toBeCloseTo(leastTravel(sheet), 6);
		}
	});

	it("has nearly the least travel from where the engraving ends", { timeout: 60_000 }, () => {
		const ratios: number[] = [];
		for (let seed = 200; seed < 230; seed++) {
			const bare = randomSheet(seed, 1 + (seed % 5), 10);
			const sheet = sheetOf(
				bare.placed.map(({ part, move }) => {
					const letter = (x: number) => line({ x, y: 9 }, { x: x + 1, y: 11 });
					const marks = [5, 7, 9].map((x) => mark("engrave", letter(x), "label a"));
					return { part: { ...part, marks: [...part.marks, ...marks] }, move };
				}),
			);
			const ordered = inOrder(sheet);
			expect(faultsOf(sheet, ordered)).toEqual([]);
			// The text may end at the other end of its last stroke, 2.3 mm away at most.
			ratios.push((cutTravel(ordered, cutStart(ordered)) - 2.3) / leastAfterText(sheet));
		}
		expect(Math.max(...ratios)).toBeLessThan(1.1);
	});

	it("travels far less than the order of the file on larger sheets", () => {
		const figures: number[] = [];
		for (let seed = 0; seed < 8; seed++) {
			const sheet = randomSheet(seed + 500, 14 + seed, 100);
			const ordered = inOrder(sheet);
			expect(faultsOf(sheet, ordered)).toEqual([]);
			figures.push(cutTravel(ordered) / cutTravel(sheet));
		}
		for (const count of [40, 80, 119]) {
			const random = numbers(count);
			const holes = Array.from({ length: count }, (_, i) => {
				const at = { x: 6 + 18 * (i % 12), y: 6 + 12 * Math.floor(i / 12) + random(0, 3) };
				return mark("cut", reversed(circle(at, 2)), `hole ${i}`);
			}).sort(() => random(-1, 1));
			const outline = mark("cut", rectangle(0, 0, 220, 130), "outline");
			const sheet = sheetOf([{ part: partOf("plate", [outline, ...holes]), move: STAY }]);
			const ordered = inOrder(sheet);
			expect(faultsOf(sheet, ordered)).toEqual([]);
			expect(cutTravel(ordered)).toBeLessThan(0.2 * cutTravel(sheet));
		}
		expect(Math.max(...figures)).toBeLessThan(0.5);
	});

	it("is none where there is nothing to do", () => {
		const empty = sheetOf([{ part: partOf("empty", []), move: STAY }]);
		expect(inOrder(empty)).toEqual(empty);
		const idle = mark("reference", line({ x: 0, y: 0 }, { x: 9, y: 0 }), "ruler");
		const drawn = sheetOf([{ part: partOf("drawn", [idle]), move: STAY }]);
		expect(inOrder(drawn)).toEqual(drawn);
	});

	it("is the same every time", () => {
		const sheet = randomSheet(77, 18, 80);
		expect(JSON.stringify(inOrder(sheet))).toBe(JSON.stringify(inOrder(sheet)));
	});
});

describe("a part's cuts", () => {
	const outline = mark("cut", rectangle(0, 0, 100, 60), "outline");
	const cutsOf = (marks: readonly Mark[], more: Partial<Part> = {}) =>
		inOrder(sheetOf([{ part: partOf("plate", marks, more), move: STAY }]))
			.placed[0]!.part.marks.filter(({ operation }) => operation === "cut")
			.map(({ feature }) => feature);

	it("go from the innermost to the outermost, near or not", () => {
		const island = mark("cut", rectangle(40, 20, 60, 40), "island");
		const window = mark("cut", reversed(rectangle(1, 1, 99, 59)), "window");
		const eye = mark("cut", reversed(circle({ x: 50, y: 30 }, 4)), "eye");
		expect(cutsOf([outline, window, island, eye])).toEqual(["eye", "island", "window", "outline"]);
		expect(cutsOf([eye, island, window, outline])).toEqual(["eye", "island", "window", "outline"]);
	});

	it("are open ones before the outline, also where they reach past it", () => {
		const slit = mark("cut", line({ x: 90, y: 58 }, { x: 90, y: 70 }), "slit");
		expect(cutsOf([outline, slit])).toEqual(["slit", "outline"]);
	});

	it("leave an outline that tabs hold to the last", () => {
		const pieces = [
			[vertex(30, 0), vertex(100, 0), vertex(100, 60), vertex(70, 60)],
			[vertex(66, 60), vertex(0, 60), vertex(0, 0), vertex(26, 0)],
		].map((points) => mark("cut", { points, closed: false }, "outline"));
		const hole = mark("cut", reversed(circle({ x: 80, y: 50 }, 3)), "hole");
		const slot = mark("cut", line({ x: 80, y: 20 }, { x: 80, y: 40 }), "slot 7");
		const order = cutsOf([...pieces, hole, slot]);
		expect(order.slice(2)).toEqual(["outline", "outline"]);
	});

	it("keep their order in a part that is meant to be nominal", () => {
		const cross = [0, 30, 10, 20].map((x) =>
			mark("cut", line({ x, y: -1 }, { x, y: 21 }), `line ${x}`),
		);
		const frame = mark("cut", line({ x: 0, y: 0 }, { x: 30, y: 0 }), "frame");
		const plate = mark("cut", rectangle(-10, -10, 50, 50), "outline");
		const marks = [...cross, frame, plate];
		const part = partOf("coupon", marks, { nominal: true });
		const [done] = inOrder(sheetOf([{ part, move: STAY }])).placed;
		const cuts = done!.part.marks;
		expect(cuts.map(({ feature }) => feature)).toEqual(marks.map(({ feature }) => feature));
		expect(cuts.at(-1)!.path).toBe(plate.path);
		// Up one line, down the next: each begins where the one before ended.
		expect(cuts.slice(0, 4).map(({ path }) => path.points[0]!.y)).toEqual([-1, 21, -1, 21]);
	});
});

describe("scores and texts", () => {
	const stroke = (feature: string, x: number, y: number) =>
		mark("engrave", line({ x, y }, { x: x + 1, y }), feature);

	it("keep each text's strokes together in reading order", () => {
		const texts = ["label b", "label a"].flatMap((feature, row) =>
			[0, 3, 6, 9].map((x) => stroke(feature, 20 + x, 10 + row)),
		);
		const marks = texts.toSorted((a, b) => a.path.points[0]!.x - b.path.points[0]!.x);
		const part = partOf("plate", [...marks, mark("cut", rectangle(0, 0, 60, 30), "outline")]);
		const [done] = inOrder(sheetOf([{ part, move: STAY }])).placed;
		const engraved = done!.part.marks.filter(({ operation }) => operation === "engrave");
		const features = engraved.map(({ feature }) => feature);
		expect(features).toEqual([...Array(4).fill("label b"), ...Array(4).fill("label a")]);
		const columns = engraved.map(({ path }) => Math.floor((path.points[0]!.x - 20) / 3));
		expect(columns.map((x) => Math.max(0, x))).toEqual([0, 1, 2, 3, 0, 1, 2, 3]);
	});

	it("keep closed ones as they begin", () => {
		const rings = Array.from({ length: 30 }, (_, i) =>
			mark("score", circle({ x: 5 + ((i * 7) % 30) * 6, y: 15 }, 1), `ring ${i}`),
		);
		const marks = [...rings, mark("cut", rectangle(0, 0, 200, 30), "outline")];
		const sheet = sheetOf([{ part: partOf("plate", marks), move: STAY }]);
		const done = inOrder(sheet).placed[0]!.part.marks.slice(0, 30);
		expect(done.map(({ path }) => path.points[0]!.x)).toEqual(
			rings.map(({ path }) => path.points[0]!.x).sort((a, b) => a - b),
		);
	});

	it("leave what is not travelled in its order", () => {
		const idle = [5, 1, 3].map((x) => mark("reference", line({ x, y: 0 }, { x, y: 9 }), `at ${x}`));
		const tabs = [9, 2].map((x) => mark("tab", line({ x, y: 0 }, { x: x + 1, y: 0 }), `tab ${x}`));
		const outline = mark("cut", rectangle(0, 0, 60, 30), "outline");
		const marks = [idle[0]!, tabs[0]!, outline, idle[1]!, tabs[1]!, idle[2]!];
		const [done] = inOrder(sheetOf([{ part: partOf("plate", marks), move: STAY }])).placed;
		const others = done!.part.marks.filter(({ operation }) => operation !== "cut");
		expect(others).toEqual(marks.filter((m) => m !== outline));
	});

	it("of a slot strip travel less than in the order of the file", () => {
		const strip = madeParts(
			jobWith({ strings: { count: 6, "at-nut": 35, "at-saddle": 52 } }, [
				{ "slot-strip": { "string-lines": true } },
			]),
		).parts[0]!;
		const sheet = sheetOf([{ part: strip, move: { ...STAY, x: 40, y: 200 } }]);
		const ordered = inOrder(sheet);
		expect(faultsOf(sheet, ordered)).toEqual([]);
		const figures = [workOf(sheet, null).travel, workOf(ordered, null).travel];
		expect(figures[1]).toBeLessThan(0.7 * figures[0]!);
	});
});

it("a closed path within nothing begins nowhere else without need", () => {
	const square = closed(vertex(0, 0), vertex(10, 0), vertex(10, 10), vertex(0, 10));
	const sheet = sheetOf([{ part: partOf("a", [mark("cut", square, "outline")]), move: STAY }]);
	expect(inOrder(sheet).placed[0]!.part.marks[0]!.path).toBe(square);
});
