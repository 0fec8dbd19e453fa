import type { Mark, Part, Placed, Sheet } from "../../src/drawing/index.js";
import {
	moved,
	offset,
	type Path,
	type Point,
	reversed,
	STAY,
	segments,
	shift,
	startedAt,
} from "../../src/geometry/index.js";
import {
	arcFaceted,
	arcFlipped,
	holeChanged,
	labelsSwapped,
	notchFilled,
	notchMoved,
	scribbledOver,
	shifted,
	without,
	withPaths,
} from "./proof-measure-faults.js";

/** What is done to a sheet before it is written, as a slip in a program or a hand would do it. */
export interface Damage {
	readonly title: string;
	/** The part that it is done to: by its tool, on its own sheet; or "bed" for a laid-out one. */
	readonly to: "bar" | "gauge" | "strip" | "coupon" | "bed" | "held";
	readonly change: (sheet: Sheet) => Sheet;
	/** One of these at least must be found. */
	readonly finds: readonly string[];
}

const onPart = (change: (part: Part) => Part) => (sheet: Sheet) => ({
	...sheet,
	placed: sheet.placed.map((p, i): Placed => (i === 0 ? { ...p, part: change(p.part) } : p)),
});

const onPaths = (change: (path: Path) => Path) =>
	onPart((part) => ({ ...part, marks: part.marks.map((m) => ({ ...m, path: change(m.path) })) }));

const onOutline = (change: (path: Path) => Path[]) =>
	onPart((part) => withPaths(part, "outline", change));

const scaled = (x: number, y = x) =>
	roomy(
		onPaths(({ points, closed }) => ({
			closed,
			points: points.map((p) => ({ ...p, x: p.x * x, y: p.y * y })),
		})),
	);

/** The same on a page that is large enough for it. */
const roomy = (change: (sheet: Sheet) => Sheet) => (sheet: Sheet) => ({
	...change(sheet),
	size: { minX: -20_000, minY: -20_000, maxX: 20_000, maxY: 20_000 },
});

const withMark = (mark: Mark) => onPart((part) => ({ ...part, marks: [...part.marks, mark] }));

function outlineOf(part: Part): Path {
	return part.marks.find((m) => m.feature === "outline")!.path;
}

/** The same path with one point moved. */
function pointMoved({ points, closed }: Path, at: number, by: Point): Path {
	return {
		closed,
		points: points.map((p, i) => (i === at ? { ...p, x: p.x + by.x, y: p.y + by.y } : p)),
	};
}

/** Index of the outline's point nearest a place. */
function nearest({ points }: Path, to: Point): number {
	const far = (p: Point) => Math.hypot(p.x - to.x, p.y - to.y);
	return points.map((_, i) => i).reduce((a, b) => (far(points[b]!) < far(points[a]!) ? b : a));
}

/** Cut contours moved by another distance: the kerf on the wrong side, or none. */
const offsetBy = (by: number) =>
	onPart((part) => {
		const cuts = part.marks.filter((m) => m.operation === "cut" && m.path.closed);
		const paths = offset(
			cuts.map((m) => m.path),
			by,
		).paths;
		const rest = part.marks.filter((m) => !cuts.includes(m));
		const marks = paths.map((path): Mark => ({ operation: "cut", path, feature: "outline" }));
		return { ...part, marks: [...rest, ...marks] };
	});

/** A floor or a flank of the notch of fret 5, by the place of one corner. */
const notchCorner = (x: number, y: number) =>
	onPart((part) => {
		const width = part.claims.find((c) => c.id === "notch-5-width")!;
		const path = outlineOf(part);
		const depth = part.claims.find((c) => c.id === "notch-5-depth")!.nominal;
		const corners = width.at.map((p) => nearest(path, { x: p.x, y: depth }));
		const wider = corners.reduce((at, c) => pointMoved(at, c, { x, y }), path);
		return withPaths(part, "outline", () => [wider]);
	});

export const DAMAGES: readonly Damage[] = [
	{
		title: "a notch moved by 0.02 mm",
		to: "bar",
		change: onPart((p) => notchMoved(p, "notch-7", 0.02)),
		finds: ["claim-failed"],
	},
	{
		title: "a missing notch",
		to: "bar",
		change: onPart((p) => notchFilled(p, "notch-7")),
		finds: ["feature-missing"],
	},
	{
		title: "a notch's floor pushed sideways by 0.05 mm",
		to: "bar",
		change: notchCorner(0.05, 0),
		finds: ["claim-failed"],
	},
	{
		title: "a notch deeper by 0.03 mm",
		to: "bar",
		change: notchCorner(0, 0.03),
		finds: ["claim-failed"],
	},
	{
		title: "a bent working edge",
		to: "bar",
		change: onOutline((path) => {
			const low = path.points.map((p, i) => [p.y, p.x, i] as const).filter(([y]) => y < 0.001);
			const [, , at] = low[Math.floor(low.length / 2)]!;
			return [pointMoved(path, at, { x: 0, y: 0.02 })];
		}),
		finds: ["claim-failed"],
	},
	{
		title: "a bar longer by 0.02 mm",
		to: "bar",
		change: onOutline(({ points, closed }) => {
			const right = Math.max(...points.map((p) => p.x));
			const isEnd = (p: Point) => p.x > right - 3;
			return [{ closed, points: points.map((p) => (isEnd(p) ? { ...p, x: p.x + 0.02 } : p)) }];
		}),
		finds: ["claim-failed"],
	},
	{
		title: "two numbers in each other's place",
		to: "bar",
		change: onPart((p) => labelsSwapped(p, "label fret-7", "label fret-8")),
		finds: ["label-wrong"],
	},
	{
		title: "a missing number",
		to: "bar",
		change: onPart((p) => without(p, "label fret-7")),
		finds: ["label-wrong", "count-differs"],
	},
	{
		title: "a number moved by 0.05 mm",
		to: "bar",
		change: onPart((p) => shifted(p, "label fret-7", 0.05, 0)),
		finds: ["label-wrong"],
	},
	{
		title: "a stroke through a number",
		to: "bar",
		change: onPart((p) => scribbledOver(p, "label fret-7")),
		finds: ["label-wrong", "count-differs"],
	},
	{
		title: "a flipped arc",
		to: "gauge",
		change: onPart(arcFlipped),
		finds: ["claim-failed", "feature-missing"],
	},
	{
		title: "an arc of 20 chords",
		to: "gauge",
		change: onPart((p) => arcFaceted(p, 20)),
		finds: ["not-round", "claim-failed"],
	},
	{
		title: "an arc of 2,000 chords, and a hundredth of a millimetre off at its top",
		to: "gauge",
		change: onPart((p) => {
			const path = outlineOf(arcFaceted(p, 2000));
			return withPaths(p, "outline", () => [
				{
					closed: true,
					points: path.points.map((v) =>
						Math.abs(v.x) < 2 && v.y < 3 ? { ...v, y: v.y + 0.01 } : v,
					),
				},
			]);
		}),
		finds: ["not-round", "claim-failed"],
	},
	{
		title: "a hole wider by 0.01 mm",
		to: "gauge",
		change: onPart((p) => holeChanged(p, 0.01, 0)),
		finds: ["claim-failed"],
	},
	{
		title: "a hole moved by 0.05 mm",
		to: "gauge",
		change: onPart((p) => holeChanged(p, 0, 0.05)),
		finds: ["off-place"],
	},
	{
		title: "a missing hole",
		to: "gauge",
		change: onPart((p) => without(p, "hanging hole")),
		finds: ["feature-missing"],
	},
	{
		title: "an opened outline",
		to: "gauge",
		change: onOutline(({ points }) => [{ closed: false, points }]),
		finds: ["contour-open"],
	},
	{
		title: "a flipped fillet, of which no claim speaks",
		to: "gauge",
		change: onOutline(({ points, closed }) => {
			const at = points.findIndex((p) => p.bulge > 0.4);
			return [{ closed, points: points.map((p, i) => (i === at ? { ...p, bulge: -p.bulge } : p)) }];
		}),
		finds: ["outline-differs"],
	},
	{
		title: "a corner cut off by 0.01 mm, of which no claim speaks",
		to: "gauge",
		change: onOutline((path) => {
			const at = path.points.findIndex((p) => p.bulge > 0.4);
			return [pointMoved(path, at, { x: 0, y: -0.01 })];
		}),
		finds: ["outline-differs"],
	},
	{
		title: "an outline that crosses itself",
		to: "gauge",
		change: roomy(
			onOutline(({ points, closed }) => {
				const left = points.findIndex((p) => p.x === Math.min(...points.map((q) => q.x)));
				return [pointMoved({ points, closed }, left, { x: 80, y: 3 })];
			}),
		),
		finds: ["contour-crosses-itself"],
	},
	{ title: "a mirrored bar", to: "bar", change: roomy(mirroredParts), finds: ["mirrored"] },
	{ title: "a mirrored gauge", to: "gauge", change: roomy(mirroredParts), finds: ["mirrored"] },
	{ title: "25.4 times the size", to: "bar", change: scaled(25.4), finds: ["unit-slip"] },
	{ title: "one inch for 25.4 mm", to: "bar", change: scaled(1 / 25.4), finds: ["unit-slip"] },
	{ title: "96 dots for 72", to: "strip", change: scaled(96 / 72), finds: ["unit-slip"] },
	{ title: "72 dots for 96", to: "gauge", change: scaled(72 / 96), finds: ["unit-slip"] },
	{
		title: "0.05 % too large",
		to: "bar",
		change: scaled(1.0005),
		finds: ["claim-failed"],
	},
	{
		title: "0.02 % too long in one direction",
		to: "strip",
		change: scaled(1.0002, 1),
		finds: ["claim-failed"],
	},
	{ title: "no kerf", to: "bar", change: offsetBy(-0.08), finds: ["claim-failed"] },
	{
		title: "the kerf on the wrong side",
		to: "bar",
		change: offsetBy(-0.16),
		finds: ["claim-failed"],
	},
	{ title: "twice the kerf", to: "gauge", change: offsetBy(0.08), finds: ["claim-failed"] },
	{
		title: "an outline drawn twice",
		to: "gauge",
		change: onPart((p) => ({
			...p,
			marks: [...p.marks, { operation: "cut", path: outlineOf(p), feature: "outline" }],
		})),
		finds: ["doubled"],
	},
	{
		title: "an outline drawn twice, the other way round and from another start",
		to: "gauge",
		change: onPart((p) => ({
			...p,
			marks: [
				...p.marks,
				{ operation: "cut", path: startedAt(reversed(outlineOf(p)), 2), feature: "outline" },
			],
		})),
		finds: ["doubled"],
	},
	{
		title: "a stray cut across the part",
		to: "bar",
		change: withMark({
			operation: "cut",
			path: {
				closed: false,
				points: [
					{ x: 100, y: 10, bulge: 0 },
					{ x: 120, y: 12, bulge: 0 },
				],
			},
			feature: "stray",
		}),
		finds: ["count-differs", "contour-open"],
	},
	{
		title: "the outline on the layer of scores",
		to: "bar",
		change: onPart((p) => ({
			...p,
			marks: p.marks.map((m) => (m.feature === "outline" ? { ...m, operation: "score" } : m)),
		})),
		finds: ["count-differs"],
	},
	{
		title: "a start of cut on the working edge",
		to: "gauge",
		change: onOutline((path) => {
			const at = segments(path).findIndex((s) => s.kind === "arc" && s.radius > 50);
			return [startedAt(path, at)];
		}),
		finds: ["start-on-working-edge"],
	},
	{
		title: "a slot line moved by 0.02 mm",
		to: "strip",
		change: onPart((p) => shifted(p, "slot 9", 0.02, 0)),
		finds: ["claim-failed"],
	},
	{
		title: "a missing slot line",
		to: "strip",
		change: onPart((p) => without(p, "slot 9")),
		finds: ["feature-missing", "count-differs"],
	},
	{
		title: "a slot line shorter by 0.05 mm",
		to: "strip",
		change: onPart((p) =>
			withPaths(p, "slot 9", (path) => [
				pointMoved(path, 0, { x: 0, y: Math.sign(path.points[1]!.y) * 0.05 }),
			]),
		),
		finds: ["claim-failed"],
	},
	{
		title: "a slot line turned about its middle by half a degree",
		to: "strip",
		change: onPart((p) => withPaths(p, "slot 12", (path) => [turnedInPlace(path, Math.PI / 360)])),
		finds: ["line-differs"],
	},
	{
		title: "the nut's line, of which no claim speaks, moved by 0.05 mm",
		to: "strip",
		change: onPart((p) => shifted(p, "theoretical nut", 0.05, 0)),
		finds: ["line-differs"],
	},
	{
		title: "a string's dashes moved by 0.1 mm",
		to: "strip",
		change: onPart((p) => shifted(p, "string line 2", 0, 0.1)),
		finds: ["line-differs"],
	},
	{
		title: "a marker moved by 0.05 mm",
		to: "strip",
		change: onPart((p) => shifted(p, "marker 5", 0.05, 0)),
		finds: ["claim-failed"],
	},
	{
		title: "a strip wider by 0.02 mm at its end",
		to: "strip",
		change: onOutline(({ points, closed }) => [
			{ closed, points: points.map((p) => (p.x > 300 ? { ...p, y: p.y * 1.0008 } : p)) },
		]),
		finds: ["claim-failed"],
	},
	{
		title: "a distance with another figure",
		to: "strip",
		change: onPart((p) => {
			const [one, two] = ["label distance-3", "label distance-4"];
			return labelsSwapped(p, one, two);
		}),
		finds: ["label-wrong"],
	},
	{
		title: "a line of the coupon moved by 0.02 mm",
		to: "coupon",
		change: onPart((p) => {
			const name = p.marks.find((m) => m.operation === "cut" && !m.path.closed)!.feature;
			return shifted(p, name, 0.02, 0.02);
		}),
		finds: ["claim-failed", "feature-missing"],
	},
	{
		title: "a line of the coupon missing",
		to: "coupon",
		change: onPart((p) => {
			const mark = p.marks.find((m) => m.operation === "cut" && !m.path.closed)!;
			return { ...p, marks: p.marks.filter((m) => m !== mark) };
		}),
		finds: ["count-differs"],
	},
	{
		title: "a coupon that was compensated",
		to: "coupon",
		change: offsetBy(0.08),
		finds: ["claim-failed"],
	},
	{
		title: "a part outside the bed",
		to: "bed",
		change: roomy((sheet) => ({
			...sheet,
			placed: sheet.placed.map((p, i) =>
				i === 0 ? { ...p, move: { ...p.move, x: p.move.x - 30 } } : p,
			),
		})),
		finds: ["outside-bed", "feature-missing"],
	},
	{
		title: "a part moved onto another",
		to: "bed",
		change: roomy((sheet) => ({
			...sheet,
			placed: sheet.placed.map((p) => ({ ...p, move: sheet.placed[0]!.move })),
		})),
		finds: ["cuts-cross", "parts-too-near", "doubled", "count-differs"],
	},
	{
		title: "a part moved by 0.01 mm on its bed",
		to: "bed",
		change: (sheet) => ({
			...sheet,
			placed: sheet.placed.map((p, i) =>
				i === 0
					? {
							...p,
							part: {
								...p.part,
								marks: p.part.marks.map((m) => ({ ...m, path: moved(m.path, shift(0.01, 0)) })),
							},
						}
					: p,
			),
		}),
		finds: ["claim-failed", "label-wrong"],
	},
	{
		title: "a part left out of its bed",
		to: "bed",
		change: (sheet) => ({ ...sheet, placed: sheet.placed.slice(1) }),
		finds: ["feature-missing", "count-differs"],
	},
	{
		title: "a tab that was cut through",
		to: "held",
		change: onPart((p) => {
			const [first, second] = p.marks.filter((m) => m.feature === "outline");
			const points = [...first!.path.points, ...second!.path.points];
			const marks = p.marks.flatMap((m) =>
				m === first ? [{ ...m, path: { points, closed: false } }] : m === second ? [] : [m],
			);
			return { ...p, marks };
		}),
		finds: ["contour-joined", "feature-missing", "claim-failed"],
	},
	{
		title: "a tab narrower by 0.1 mm",
		to: "held",
		change: onPart((p) => {
			const first = p.marks.find((m) => m.feature === "outline")!;
			const [a, b] = first.path.points;
			const size = Math.hypot(b!.x - a!.x, b!.y - a!.y);
			const by = { x: ((a!.x - b!.x) / size) * 0.1, y: ((a!.y - b!.y) / size) * 0.1 };
			const path = pointMoved(first.path, 0, by);
			return { ...p, marks: p.marks.map((m) => (m === first ? { ...m, path } : m)) };
		}),
		finds: ["claim-failed"],
	},
];

function mirroredParts(sheet: Sheet): Sheet {
	return {
		...sheet,
		placed: sheet.placed.map((p) => ({ ...p, move: { ...STAY, mirror: true } })),
	};
}

/** A line turned about its middle. */
function turnedInPlace({ points, closed }: Path, turn: number): Path {
	const [a, b] = [points[0]!, points.at(-1)!];
	const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
	const back = moved({ points, closed }, shift(-middle.x, -middle.y));
	return moved(back, { ...middle, turn, mirror: false });
}

/** A sheet whose parts all lie elsewhere, turned. */
export function movedAsAWhole(sheet: Sheet): Sheet {
	const move = { x: 100, y: 50, turn: 0.3, mirror: false };
	return roomy((s) => ({ ...s, placed: s.placed.map((p) => ({ ...p, move })) }))(sheet);
}

/** A sheet whose outline is exploded into its lines and arcs. */
export const exploded = onPart((part) => ({
	...part,
	marks: part.marks.flatMap((mark): Mark[] =>
		mark.feature === "outline"
			? segments(mark.path).map((s) => ({ ...mark, path: pieceOf(s) }))
			: [mark],
	),
}));

function pieceOf(s: ReturnType<typeof segments>[number]): Path {
	const bulge = s.kind === "arc" ? Math.tan(s.sweep / 4) : 0;
	return {
		closed: false,
		points: [
			{ ...s.start, bulge },
			{ ...s.end, bulge: 0 },
		],
	};
}
