import { outlineOf, type Part, type Placed, type Stock } from "../drawing/index.js";
import { STAY, signedArea } from "../geometry/index.js";
import { type Problem, problem } from "../problem/index.js";
import { boxOf, fits, roomOf } from "./layout/boxed.js";
import { extentsOf } from "./layout/corner.js";
import { layoutFaults } from "./layout/layout-faults.js";
import { onDiagonal } from "./layout/on-diagonal.js";
import { packedSheets } from "./layout/packed-sheets.js";
import { type Bed, isSameStock } from "./machine.js";

/** One sheet on the bed, from its lower left corner, with the parts at their places. */
export interface Layout {
	readonly stock: Stock;
	readonly placed: readonly Placed[];
	/** Share of the bed's area within the parts' outlines, 0 to 1. */
	readonly used: number;
}

/** Every sheet, or why some part goes on none. */
export type Layouts =
	| { readonly ok: true; readonly layouts: readonly Layout[] }
	| { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Parts laid out on as few sheets as the packer finds, each sheet of one material, thickness and
 * grain, in the order in which these first appear.
 *
 * Parts are turned by 90° where that helps, or not at all where their sheet has a grain. A part
 * that is too long for both goes on a sheet of its own, at the angle that leaves it the most room,
 * with as many others beside it as the rooms there hold.
 * The same parts and bed give the same sheets.
 *
 * @param parts - compensated already; a part that stands several times is placed several times
 * @returns one problem for each part that fits in no way
 * @throws Error if the sheets do not keep the margin and the spacing
 * @example a bar of 300 x 100 mm on a bed of 120 x 320 mm: turned by 90°
 */
export function layOut(parts: readonly Part[], bed: Bed): Layouts {
	const room = roomOf(bed);
	const diagonals = new Map<Part, Placed | null>();
	const boxed = new Map(parts.map((part) => [part, boxOf(part)]));
	for (const part of new Set(parts)) {
		if (!fits(boxed.get(part)!, room)) diagonals.set(part, onDiagonal(part, bed));
	}
	const refused = [...diagonals].filter(([, placed]) => !placed).map(([part]) => part);
	if (refused.length > 0) return { ok: false, problems: refusals(refused, bed) };
	const layouts = groupsOf(parts).flatMap((group): Layout[] => {
		const packed = group.filter((part) => !diagonals.has(part)).map((part) => boxed.get(part)!);
		const slanted = group.flatMap((part) => diagonals.get(part) ?? []);
		return packedSheets(packed, slanted, bed).map((placed) => ({
			stock: group[0]!.stock,
			placed,
			used: areaOf(placed) / (bed.size.x * bed.size.y),
		}));
	});
	const faults = layouts.flatMap(({ placed }) => layoutFaults(placed, bed));
	if (faults.length > 0) throw new Error(`parts laid out wrongly: ${faults.join("; ")}`);
	return { ok: true, layouts };
}

/** Parts by their sheet: what is laid out together. */
function groupsOf(parts: readonly Part[]): Part[][] {
	const groups: Part[][] = [];
	for (const part of parts) {
		const group = groups.find(([first]) => {
			const { stock } = first!;
			return isSameStock(stock, part.stock) && stock.grain === part.stock.grain;
		});
		if (group) group.push(part);
		else groups.push([part]);
	}
	return groups;
}

function refusals(parts: readonly Part[], { size, margin }: Bed): Problem[] {
	const names = new Map(parts.map((part) => [part.name, part]));
	return [...names].map(([name, part]) => {
		const box = extentsOf({ part, move: STAY });
		return problem("part-larger-than-bed", [], {
			part: name,
			width: box.maxX - box.minX,
			height: box.maxY - box.minY,
			bedWidth: size.x - 2 * margin,
			bedHeight: size.y - 2 * margin,
			grain: part.stock.grain ?? "",
		});
	});
}

/** Area within the outlines of some parts, mm². */
function areaOf(placed: readonly Placed[]): number {
	return placed.reduce((sum, { part }) => sum + signedArea(outlineOf(part)), 0);
}
