import { channels } from "./drawn.js";

type Rgb = readonly [number, number, number];

/** Brightness of the five tones of a hue in the colour index. */
const TONES = [1, 0.8, 0.6, 0.5, 0.3] as const;

/** Indices 1 to 9 by name (DXF reference, group 62); 7 is black on a white ground. */
const NAMED: readonly (readonly [number, Rgb])[] = [
	[1, [255, 0, 0]],
	[2, [255, 255, 0]],
	[3, [0, 255, 0]],
	[4, [0, 255, 255]],
	[5, [0, 0, 255]],
	[6, [255, 0, 255]],
	[7, [255, 255, 255]],
	[7, [0, 0, 0]],
	[8, [128, 128, 128]],
	[9, [192, 192, 192]],
];

/**
 * The colour of an index from 10 to 255.
 *
 * 10 to 249: the tens count hues of 15° from red, the units run through five tones, odd ones
 * half as saturated. 250 to 255: greys from 20 % to white in equal steps. Usual rendering of
 * the index; the DXF reference names no values (formula from memory).
 */
export function indexColour(index: number): Rgb {
	if (index >= 250) {
		const grey = 51 + ((index - 250) * 204) / 5;
		return [grey, grey, grey];
	}
	const hue = (Math.floor(index / 10) - 1) * 15;
	const value = 255 * TONES[Math.floor((index % 10) / 2)]!;
	const least = index % 2 === 1 ? value / 2 : 0;
	const share = (from: number) => {
		const away = Math.abs(((hue - from + 540) % 360) - 180);
		return least + (value - least) * Math.min(1, Math.max(0, 2 - away / 60));
	};
	return [share(0), share(120), share(240)];
}

/**
 * Index of the nearest of the 255 colours, by distance in red, green and blue; of equals the
 * lowest.
 *
 * @throws RangeError unless the colour is written #rrggbb
 * @example nearestIndex("#ff0000") // 1
 */
export function nearestIndex(colour: string): number {
	const wanted = channels(colour);
	const palette = [...NAMED];
	for (let index = 10; index <= 255; index++) palette.push([index, indexColour(index)]);
	let best = 7;
	let least = Number.POSITIVE_INFINITY;
	for (const [index, rgb] of palette) {
		const off = rgb.reduce((sum, value, i) => sum + (value - wanted[i]!) ** 2, 0);
		if (off < least) {
			least = off;
			best = index;
		}
	}
	return best;
}
