import { createCanvas } from "@napi-rs/canvas";
import { beforeAll, describe, expect, it } from "vitest";
import { type Extents, movedPoint, type Point } from "../../src/geometry/index.js";
import type { Print } from "../../src/paper/index.js";
import { madeExample } from "../support/examples.js";
import { openPdf } from "../support/pdf-pages.js";

/** 254 dpi: ten dots to the millimetre. */
const DOTS = 10;

interface Raster {
	readonly width: number;
	readonly height: number;
	/** Darkness of a dot, 0 to 1, from the lower left corner. */
	readonly dark: (x: number, y: number) => number;
}

async function rastersOf(bytes: Uint8Array): Promise<Raster[]> {
	const pdf = await openPdf(bytes);
	const rasters: Raster[] = [];
	for (let i = 1; i <= pdf.numPages; i++) {
		const page = await pdf.getPage(i);
		const viewport = page.getViewport({ scale: (DOTS * 25.4) / 72 });
		const canvas = createCanvas(Math.round(viewport.width), Math.round(viewport.height));
		const context = canvas.getContext("2d");
		// biome-ignore lint/suspicious/noExplicitAny: the types know the canvas of a browser alone
		await page.render({ canvas: null, canvasContext: context as any, viewport }).promise;
		const { width, height } = canvas;
		const { data } = context.getImageData(0, 0, width, height);
		const dark = (x: number, y: number) => 1 - data[4 * ((height - 1 - y) * width + x)]! / 255;
		rasters.push({ width, height, dark });
	}
	return rasters;
}

/** Where the dark line that crosses a short stretch around a point has its middle, mm along an axis. */
function lineAt({ dark }: Raster, { x, y }: Point, axis: "x" | "y"): number {
	const centre = Math.round((axis === "x" ? x : y) * DOTS);
	const other = Math.floor((axis === "x" ? y : x) * DOTS);
	let [sum, moment] = [0, 0];
	for (let i = centre - 5; i < centre + 5; i++) {
		const share = axis === "x" ? dark(i, other) : dark(other, i);
		sum += share;
		moment += share * (i + 0.5);
	}
	return moment / sum / DOTS;
}

let print: Print;
let rasters: Raster[];
beforeAll(async () => {
	const { prints } = await madeExample("heron-baritone", { paper: "A4", only: ["slot-strip"] });
	print = prints[0]!.print;
	rasters = await rastersOf(prints[0]!.files[0]!.bytes);
}, 60_000);

const within = ({ x, y }: Point, b: Extents) =>
	x > b.minX && x < b.maxX && y > b.minY && y < b.maxY;

describe("a strip printed on A4", () => {
	it("has as many pages, of 210 by 297 mm", () => {
		expect(rasters.map(({ width, height }) => [width, height])).toEqual(
			print.pages.map(() => [2100, 2970]),
		);
	});

	it("shows every slot line within 0.1 mm of its place, on every page that shows it", () => {
		let seen = 0;
		const found = new Set<string>();
		print.pages.forEach(({ tile }, i) => {
			const { part, move, window } = tile!;
			const axis = Math.abs(Math.cos(move.turn)) > 0.5 ? "x" : "y";
			for (const claim of part.claims) {
				if (claim.kind !== "position" || !/^slot \d/u.test(claim.feature)) continue;
				const slot = claim.at[1]!;
				// Off the centre line and the string lines, which cross the slot's own.
				const at = movedPoint({ x: slot.x, y: slot.y + 4 }, move);
				if (!within(at, { ...window, minX: window.minX + 1, minY: window.minY + 1 })) continue;
				expect(Math.abs(lineAt(rasters[i]!, at, axis) - at[axis])).toBeLessThan(0.1);
				found.add(claim.feature);
				seen++;
			}
		});
		expect(found.size).toBe(22);
		expect(seen).toBeGreaterThanOrEqual(22);
	});

	it("carries rules whose end strokes are 100 mm and 4 in apart within 0.1 mm", () => {
		for (const [i, { rules }] of print.pages.entries()) {
			for (const { from, to } of rules) {
				const axis = Math.abs(to.x - from.x) > 1 ? "x" : "y";
				const other = axis === "x" ? "y" : "x";
				// End strokes stand up to one side, 4 mm long: the side is the one that is dark.
				const ends = [from, to].map((end) => {
					const sides = [2.5, -2.5].map((d) => ({ ...end, [other]: end[other] + d }));
					return sides.map((p) => lineAt(rasters[i]!, p, axis)).filter(Number.isFinite);
				});
				const spans = ends[0]!.flatMap((a) => ends[1]!.map((b) => b - a));
				const length = Math.hypot(to.x - from.x, to.y - from.y);
				expect(spans.some((span) => Math.abs(span - length) < 0.1)).toBe(true);
			}
		}
	});
});
