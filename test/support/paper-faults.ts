import { degrees, PDFDocument, PDFName } from "@cantoo/pdf-lib";
import type { Mark, Part } from "../../src/drawing/index.js";
import {
	circle,
	extents,
	line,
	moved,
	type Path,
	type Point,
	shift,
	stretched,
} from "../../src/geometry/index.js";
import type { Problem } from "../../src/problem/index.js";
import { type Proven, provePrint } from "../../src/proof/index.js";
import { jobWith, LETTERS, madeParts } from "./made-parts.js";
import { corrected, type Drafted, drafted, pdfOf, withMarks, withPaths } from "./prints.js";

const KEPT = 3;
/** What a printer makes of a millimetre. */
const MADE = { x: 0.9961, y: 1.002 } as const;

/** A strip of 22 slots with few labels, so that it is soon proven. */
function fewLabels(part: Part): Part {
	const labels = part.claims.filter((c) => c.kind === "label").map((c) => c.feature);
	const dropped = new Set(labels.slice(KEPT));
	return {
		...part,
		marks: part.marks.filter((m) => !dropped.has(m.feature)),
		claims: part.claims.filter((c) => !dropped.has(c.feature)),
	};
}

const [whole] = madeParts(jobWith({}, ["slot-strip"])).parts as [Part];
export const STRIP = fewLabels(whole);

/** Where a line across the strip lies that is nearest to a place along it. */
export function slotNear(x: number): number {
	const places = STRIP.marks
		.filter(({ operation, path }) => operation === "score" && isAcross(path))
		.map(({ path }) => path.points[0]!.x);
	return places.reduce((a, b) => (Math.abs(b - x) < Math.abs(a - x) ? b : a));
}

function isAcross({ points }: Path): boolean {
	return points.length === 2 && Math.abs(points[0]!.x - points[1]!.x) < 1e-9;
}

/** Seams that cut it into three, the first so near to a slot that both pages show it. */
export const SEAMS = [slotNear(150) - 3, 318.7] as const;

const draft = (made?: Point): Drafted =>
	drafted(STRIP, made ? { seams: SEAMS, made } : { seams: SEAMS });

/** Slots of one page by their places across it, true millimetres. */
function slotsOf({ pages }: Drafted, page: number): Mark[] {
	return pages[page - 1]!.marks.filter(
		({ operation, path }) => operation === "score" && isAcross(path),
	);
}

/** The slot of a page that lies in some stretch of what it shows moved across the page. */
function slotMoved(page: number, from: "own" | "shared", by: number): Drafted {
	const base = draft();
	const { own, window } = base.promised.files[0]!.pages[page - 1]!.tile!;
	const isThere = (x: number) =>
		from === "own" ? x > window.minX + 20 && x < window.maxX - 20 : x > own.maxX;
	const slot = slotsOf(base, page).find((m) => isThere(m.path.points[0]!.x));
	if (!slot) throw new Error("no slot there");
	return withMarks(base, page, (marks) => marks.map((m) => (m === slot ? shifted(m, by) : m)));
}

function shifted(mark: Mark, x: number): Mark {
	return { ...mark, path: moved(mark.path, shift(x, 0)) };
}

/** One mark of a page changed, the first of a feature. */
function first(feature: string, page: number, change: (mark: Mark) => Mark[]): Drafted {
	return withMarks(draft(), page, (marks) => {
		const at = marks.findIndex((m) => m.feature.startsWith(feature));
		if (at < 0) throw new Error(`no ${feature}`);
		return marks.flatMap((m, i) => (i === at ? change(m) : [m]));
	});
}

function widened(): Drafted {
	const base = draft();
	const pages = base.pages.map((p, i) => (i === 1 ? { ...p, size: { ...p.size, maxX: 211 } } : p));
	return { ...base, pages };
}

function shorter(mark: Mark): Mark[] {
	const [a, b] = [mark.path.points[0]!, mark.path.points[1]!];
	return [{ ...mark, path: line(a, { x: b.x - 0.05, y: b.y }) }];
}

/** A page's marks with one more. */
function added(page: number, mark: Omit<Mark, "feature">): Drafted {
	return withMarks(draft(), page, (marks) => [...marks, { ...mark, feature: "added" }]);
}

async function changedPdf(
	change: (file: PDFDocument) => void | Promise<void>,
): Promise<Uint8Array> {
	const file = await PDFDocument.load(await pdfOf(draft()), { updateMetadata: false });
	await change(file);
	return file.save({ useObjectStreams: false });
}

const onAll = (base: Drafted, change: (path: Path) => Path) =>
	base.pages.reduce((done, _, i) => withPaths(done, i + 1, change), base);

/** The same with a page more that shows nothing but its rules. */
function withBlank(base: Drafted): Drafted {
	const [file] = base.promised.files;
	const page = file!.pages[0]!;
	const blank = { ...page, crosses: [], tile: null };
	const marks = base.pages[0]!.marks.filter((m) => m.feature === "rule");
	return {
		pages: [...base.pages, { ...base.pages[0]!, marks }],
		promised: { ...base.promised, files: [{ ...file!, pages: [...file!.pages, blank] }] },
	};
}

type Damage = () => Promise<Uint8Array> | Promise<readonly [Uint8Array, Drafted]>;

const written =
	(damage: () => Drafted): Damage =>
	() =>
		pdfOf(damage());

/** Spoilt prints by what is wrong, each with the codes of all that is found. */
export const PAPER_DAMAGES: readonly (readonly [title: string, damage: Damage, codes: string[]])[] =
	[
		["a page a millimetre too wide", written(widened), ["page-size"]],
		[
			"a page missing",
			written(() => ({ ...draft(), pages: draft().pages.slice(0, 2) })),
			["page-count"],
		],
		[
			"two pages exchanged",
			written(() => {
				const { pages, ...rest } = draft();
				return { ...rest, pages: [pages[1]!, pages[0]!, pages[2]!] };
			}),
			["cross-missing", "outside-window", "page-order"],
		],
		[
			"a page's content 0.01 mm beside its place",
			written(() => withPaths(draft(), 2, (path) => moved(path, shift(0.01, 0)))),
			["page-moved"],
		],
		[
			"a page scaled by 0.4 %",
			written(() => withPaths(draft(), 2, (path) => stretched(path, { x: 1.004, y: 1.004 }))),
			["page-scale"],
		],
		[
			"not corrected at all",
			async () => [await pdfOf(draft(MADE), { x: 1, y: 1 }), draft(MADE)],
			["page-scale"],
		],
		[
			"corrected twice",
			async () => [await pdfOf(onAll(draft(MADE), (p) => corrected(p, MADE))), draft(MADE)],
			["page-scale"],
		],
		[
			"a slot 0.01 mm beside its place on one page",
			written(() => slotMoved(2, "own", 0.01)),
			["claim-failed", "line-differs"],
		],
		[
			"a slot 0.01 mm beside its place where two pages show it, on the one that does not own it",
			written(() => slotMoved(1, "shared", 0.01)),
			["pages-differ"],
		],
		[
			"a cross 0.01 mm beside its place",
			written(() =>
				withMarks(draft(), 2, (marks) => {
					const at = marks.findIndex((m) => m.feature === "cross");
					return marks.map((m, i) => (i === at || i === at + 1 ? shifted(m, 0.01) : m));
				}),
			),
			["cross-moved"],
		],
		["a cross with one stroke", written(() => first("cross", 1, () => [])), ["cross-missing"]],
		["a rule 0.05 mm short", written(() => first("rule", 1, shorter)), ["rule-wrong"]],
		["a rule missing", written(() => first("rule", 3, () => [])), ["rule-missing"]],
		[
			"a stroke of a label missing",
			written(() => first("label", 1, () => [])),
			["count-differs", "label-wrong"],
		],
		[
			"a hole outside of what the page shows",
			written(() => added(2, { operation: "cut", path: circle({ x: 100, y: 250 }, 3) })),
			["outside-window"],
		],
		[
			"a slot drawn twice",
			written(() => added(2, { operation: "score", path: slotsOf(draft(), 2)[3]!.path })),
			["count-differs", "doubled"],
		],
		["cut short", async () => (await pdfOf(draft())).slice(0, 3000), ["unreadable"]],
		["no PDF", async () => new TextEncoder().encode("%PDF-1.7 and no more"), ["unreadable"]],
		[
			"a page without paths, but text",
			() =>
				changedPdf(async (file) => {
					const page = file.getPage(1);
					page.node.delete(PDFName.of("Contents"));
					page.drawText("slots", { x: 200, y: 300 });
				}),
			["not-read", "page-bare"],
		],
		[
			"a page turned",
			() => changedPdf((file) => file.getPage(2).setRotation(degrees(90))),
			["page-turned"],
		],
		[
			"nothing on its pages",
			() =>
				changedPdf((file) => {
					for (const page of file.getPages()) page.node.delete(PDFName.of("Contents"));
				}),
			["page-bare"],
		],
		[
			"a cut on a page that shows no part",
			async () => {
				const base = withBlank(draft());
				const cut = {
					operation: "cut",
					path: circle({ x: 99, y: 99 }, 3),
					feature: "hole",
				} as const;
				return [await pdfOf(withMarks(base, 4, (marks) => [...marks, cut])), base] as const;
			},
			["strays-on-page"],
		],
	];

/** What is found in a spoilt print. */
export async function provenDamage(damage: Damage): Promise<Proven> {
	const made = await damage();
	const [bytes, { promised }] = made instanceof Uint8Array ? [made, draft()] : made;
	const [found] = await provePrint([{ name: "a.pdf", bytes }], promised, LETTERS);
	return found!;
}

/** What is found in spoilt prints, every kind of fault once at least. */
export async function problemsOfPaper(): Promise<Problem[]> {
	const found: Problem[] = [];
	for (const [, damage] of PAPER_DAMAGES) found.push(...(await provenDamage(damage)).findings);
	return found;
}

/** How far a part's box reaches along x. */
export function spanOf(part: Part): readonly [number, number] {
	const boxes = part.marks.map((m) => extents(m.path));
	return [Math.min(...boxes.map((b) => b.minX)), Math.max(...boxes.map((b) => b.maxX))];
}
