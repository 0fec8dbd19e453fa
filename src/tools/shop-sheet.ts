import { bodyOf, type PaperDocument } from "../paper/index.js";
import { type Problem, problem } from "../problem/index.js";
import { layOut, leastWidth } from "./shop-sheet/layout.js";
import { type ShopSheetSettings, settings } from "./shop-sheet/settings.js";
import { tableTexts } from "./shop-sheet/table.js";
import { offCrown, type WireList, wireList } from "./shop-sheet/wire.js";
import { type Bench, type Built, tool } from "./tool.js";

/** Pages of a roll are as high as the commonest sheet, mm. */
const ROLL_PAGE = 297;

/** What the neck makes impossible. */
function neckProblems({ neck }: Bench): Problem[] {
	const tooFar = neck.markers.find(({ fret }) => fret > neck.frets);
	if (tooFar) return [problem("marker-beyond", [], { fret: tooFar.fret, frets: neck.frets })];
	const off = offCrown(neck);
	if (!off) return [];
	const { fret, half, radius } = off;
	return [problem("radius-below-half-board", [], { at: `fret ${fret}`, width: 2 * half, radius })];
}

function paperProblems(bench: Bench, wire: WireList): Problem[] {
	const { neck, paper } = bench;
	const { minX, maxX } = bodyOf(paper, paper.height ?? ROLL_PAGE);
	const [room, least] = [maxX - minX, leastWidth(bench, tableTexts(neck, wire))];
	return room < least ? [problem("page-too-narrow", [], { room, least, paper: paper.name })] : [];
}

function build(bench: Bench, given: ShopSheetSettings, name: string): Built {
	const refuse = (...problems: Problem[]): Built => ({ parts: [], problems });
	const unsound = neckProblems(bench);
	if (unsound.length > 0) return refuse(...unsound);
	const wire = wireList(bench.neck, given);
	const problems = paperProblems(bench, wire);
	if (problems.length > 0) return refuse(...problems);
	const height = bench.paper.height ?? ROLL_PAGE;
	const pages = layOut(bench, given, wire, bodyOf(bench.paper, height));
	if (!pages) return refuse(problem("page-too-low", [], { height, paper: bench.paper.name }));
	const document: PaperDocument = {
		name,
		tool: "shop-sheet",
		title: "Shop sheet",
		height,
		pages: pages.map((ink) => ({ ink, rules: [] })),
		corrected: true,
	};
	return { parts: [], documents: [document], problems: [] };
}

export const shopSheet = tool({
	id: "shop-sheet",
	title: "Shop sheet",
	purpose:
		"Puts all numbers of the neck on a page for the wall over the bench: every fret's place, the wire to order, slots, radii and strings. Print it, hang it up and read off it what you are about to saw, file or buy.",
	onPaper: true,
	settings,
	defaults: () => ({}),
	build,
});
