import { type Ink, inkOf } from "../../drawing/index.js";
import type { Extents } from "../../geometry/index.js";
import { type Block, heightOf, type Line, stacked } from "./lines.js";

/** Between two columns of blocks, mm. */
export const COLUMN_GAP = 5;

/** What a page has room for. */
export interface Frame {
	/** Of a page's body as far as it is used. */
	readonly body: Extents;
	readonly columns: number;
	readonly columnWidth: number;
}

/** All that is to be laid out, each part as lines of the width it is laid out in. */
export interface Content {
	/** Heading and picture. */
	readonly first: readonly Line[];
	/** Heading of every further page. */
	readonly further: readonly Line[];
	readonly tableHeads: readonly Line[];
	readonly tableRows: readonly Line[];
	readonly blocks: readonly Block[];
}

/** A page as it fills from the top. */
interface Filling {
	readonly ink: Ink[];
	top: number;
}

/**
 * Lays content out on as many pages as it needs: heading, table, and the blocks in columns under it.
 * Rows of the table are never broken; a block is broken only where a whole page is too low for it.
 * Null if a page is too low for its heading, the table's heads and one line.
 */
export function pagesOf(content: Content, frame: Frame): Ink[] | null {
	if (leastHeight(content) > frame.body.maxY - frame.body.minY) return null;
	const pages: Filling[] = [];
	const begin = () => {
		const page: Filling = { ink: [], top: frame.body.maxY };
		put(page, pages.length === 0 ? content.first : content.further, frame);
		pages.push(page);
		return page;
	};
	const page = tablePages(content, frame, begin);
	blockPages(content.blocks, frame, page, begin);
	return pages.map(({ ink }) => inkOf(...ink));
}

/** Height of the lowest page on which everything goes on, mm. */
function leastHeight({ first, further, tableHeads, tableRows, blocks }: Content): number {
	const highest = (lines: readonly Line[]) => Math.max(...lines.map(({ size }) => size));
	const table = heightOf(tableHeads) + highest(tableRows);
	return Math.max(
		heightOf(first),
		heightOf(further) + Math.max(table, ...blocks.map((block) => highest(block))),
	);
}

function put(page: Filling, lines: readonly Line[], { body }: Frame): void {
	page.ink.push(stacked(lines, { x: body.minX, y: page.top }));
	page.top -= heightOf(lines);
}

/** The table from the first page on; the page on which it ends. */
function tablePages(content: Content, frame: Frame, begin: () => Filling): Filling {
	const { tableHeads, tableRows } = content;
	let rows = tableRows;
	let page = begin();
	while (rows.length > 0) {
		const room = page.top - frame.body.minY - heightOf(tableHeads);
		const count = fitting(rows, room);
		if (count > 0) put(page, [...tableHeads, ...rows.slice(0, count)], frame);
		rows = rows.slice(count);
		if (rows.length > 0) page = begin();
	}
	return page;
}

/** How many lines fit into a height. */
function fitting(lines: readonly Line[], room: number): number {
	let left = room + 1e-9;
	const beyond = lines.findIndex(({ size }) => {
		left -= size;
		return left < 0;
	});
	return beyond < 0 ? lines.length : beyond;
}

function blockPages(
	blocks: readonly Block[],
	frame: Frame,
	first: Filling,
	begin: () => Filling,
): void {
	let page = first;
	let fresh = false;
	let rest = blocks;
	while (rest.length > 0) {
		const room = page.top - frame.body.minY;
		const columns = evenly(rest, frame.columns, room) ?? inOrder(rest, frame.columns, room, fresh);
		for (const [i, lines] of columns.lines.entries()) {
			const x = frame.body.minX + i * (frame.columnWidth + COLUMN_GAP);
			page.ink.push(stacked(lines, { x, y: page.top }));
		}
		rest = columns.rest;
		if (rest.length > 0) page = begin();
		fresh = true;
	}
}

interface Columns {
	readonly lines: readonly (readonly Line[])[];
	readonly rest: readonly Block[];
}

/**
 * All blocks in columns as even as can be, the first block in the first and the last in the last
 * column; null without room.
 */
function evenly(blocks: readonly Block[], columns: number, room: number): Columns | null {
	const heights = blocks.map(heightOf);
	const last = blocks.length - 1;
	let best: { tallest: number; places: number[] } | null = null;
	for (let code = 0; code < columns ** Math.max(0, last - 1); code++) {
		const places = blocks.map((_, i) => {
			if (i === last) return columns - 1;
			return i === 0 ? 0 : Math.floor(code / columns ** (last - 1 - i)) % columns;
		});
		const sums = Array<number>(columns).fill(0);
		for (const [i, place] of places.entries()) sums[place]! += heights[i]!;
		const tallest = Math.max(...sums);
		if (!best || tallest < best.tallest - 1e-9) best = { tallest, places };
	}
	if (!best || best.tallest > room + 1e-9) return null;
	const { places } = best;
	const lines = Array.from({ length: columns }, (_, column) =>
		blocks.filter((_, i) => places[i] === column).flat(),
	);
	return { lines, rest: [] };
}

/** Blocks in their order down one column after the other; on a fresh page too large ones are broken. */
function inOrder(blocks: readonly Block[], columns: number, room: number, fresh: boolean): Columns {
	const lines: Line[][] = [];
	let rest = blocks;
	for (let column = 0; column < columns; column++) {
		const taken: Line[] = [];
		while (rest.length > 0) {
			const [block, ...others] = rest as [Block, ...Block[]];
			const left = room - heightOf(taken);
			if (heightOf(block) <= left + 1e-9) {
				taken.push(...block);
				rest = others;
				continue;
			}
			const count = fresh && taken.length === 0 ? fitting(block, left) : 0;
			taken.push(...block.slice(0, count));
			if (count > 0) rest = [block.slice(count), ...others];
			break;
		}
		lines.push(taken);
	}
	return { lines, rest };
}
