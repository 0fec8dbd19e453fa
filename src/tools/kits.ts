import { TOOLS, type Tool } from "./index.js";

/** Several tools under one name: what a job may ask for in one word. */
export interface Kit {
	readonly id: string;
	/** What it is for, in a sentence. */
	readonly purpose: string;
	/** In the order in which they are made, with what each does in it. */
	readonly tools: readonly { readonly id: string; readonly why: string }[];
}

/** What a re-fret needs, from the first look at the board to the last dressing. */
const RE_FRET: Kit = {
	id: "re-fret-kit",
	purpose:
		"Everything a re-fret of this neck needs, from the first look at the board to the last dressing.",
	tools: [
		{ id: "shop-sheet", why: "fret places, wire to order and slot sizes to read off at the bench" },
		{
			id: "notched-straightedge",
			why: "whether the board is straight, with the old frets still in",
		},
		{ id: "radius-gauge", why: "what radius the board has, and whether it has it after levelling" },
		{ id: "sanding-block", why: "levels the bare board to its own radius" },
		{
			id: "slot-strip",
			why: "whether the slots are where they should be, before the wire goes in",
		},
		{ id: "wire-bend-gauge", why: "how tightly the wire is to be bent before it goes in" },
		{ id: "pressing-caul", why: "presses the frets in without flattening their ends" },
		{ id: "fret-rocker", why: "finds a fret that stands higher than its neighbours" },
		{
			id: "crown-gauge",
			why: "shows whether a dressed fret has its round crown again, and how high it still stands",
		},
		{ id: "board-mask", why: "keeps the file off the wood while crowns are dressed" },
	],
};

/** Every tool there is. */
const EVERYTHING: Kit = {
	id: "everything",
	purpose: "Every tool that this neck allows.",
	tools: TOOLS.map(({ id, purpose }) => ({ id, why: purpose })),
};

export const KITS: readonly Kit[] = [RE_FRET, EVERYTHING];

/** The tools of a kit, as they are built. */
export function toolsOf(kit: Kit): Tool[] {
	return kit.tools.map(({ id }) => TOOLS.find((tool) => tool.id === id)!);
}
