import { readFileSync } from "node:fs";
import type { OutFile } from "../src/drawing/index.js";
import { make } from "../src/make.js";
import { problemText } from "../src/problem/index.js";
import { TOOLS } from "../src/tools/index.js";

/** The example that a tool's picture comes from, if not from the usual one. */
const FROM: Readonly<Record<string, string>> = {
	"fret-rocker": "kestrel-eight",
	"slot-strip": "kestrel-eight",
	"board-mask": "kestrel-eight",
	"sanding-block": "wren-mandolin",
};
const USUAL = "heron-baritone";
/** Width of a picture, px: of a bar, of a page, of another part. */
const [BAR, PAGE, PART] = [760, 380, 300];
/** A part is a bar if it is longer than this, mm. */
const LONG = 200;
/** Around the drawing, and line width, px. */
const [AROUND, LINE] = [8, 1];
/** Steps of the coordinates in a pixel. */
const STEPS = 2;
const FILL = "#eef5f4";

/** One picture: its name and what is in it. */
export interface Picture {
	readonly name: string;
	readonly svg: string;
}

/** A picture of every tool, each made of the tool's own file of an example job. */
export async function gallery(): Promise<Picture[]> {
	const pictures: Picture[] = [];
	for (const { id, title, onPaper } of TOOLS) {
		const example = FROM[id] ?? USUAL;
		const text = readFileSync(`examples/${example}.yaml`, "utf8");
		const paper = onPaper ? { paper: "A4" } : {};
		const made = await make(text, {
			formats: ["svg"],
			dimensions: false,
			proof: false,
			...paper,
			only: [id],
		});
		if (!made.ok) throw new Error(made.problems.map(problemText).join("\n"));
		const part = made.tools.flatMap((t) => t.parts)[0];
		const file = made.files.find((f) => part === undefined || f.name.endsWith(`${part.name}.svg`))!;
		pictures.push({ name: `${id}.svg`, svg: pictureOf(file, title) });
	}
	return pictures;
}

/** Paths of an operation with their colour, as the file has them. */
interface Group {
	readonly id: string;
	readonly colour: string;
	readonly paths: readonly string[];
}

/** A written drawing as a small picture: what is cut filled, lines a pixel wide, coordinates to half a pixel. */
function pictureOf({ bytes }: OutFile, title: string): string {
	const text = new TextDecoder().decode(bytes);
	const groups = [
		...text.matchAll(/<g id="(\w+)"[^>]* stroke="(#\w+)"[^>]*>([\s\S]*?)<\/g>/gu),
	].map(
		([, id, colour, inner]): Group => ({
			id: id!,
			colour: colour!,
			paths: [...inner!.matchAll(/ d="([^"]+)"/gu)].map(([, d]) => d!),
		}),
	);
	const box = /viewBox="([^"]+)"/u.exec(text)![1]!.split(" ").map(Number) as [
		number,
		number,
		number,
		number,
	];
	const isPage = !groups.some(({ id }) => id === "cut");
	const pixels = isPage ? PAGE : box[2] > LONG ? BAR : PART;
	const scale = (STEPS * (pixels - 2 * AROUND)) / box[2];
	const [width, height] = [STEPS * pixels, Math.ceil(box[3] * scale) + 2 * STEPS * AROUND];
	const toSteps = ([x, y]: readonly [number, number]): [number, number] => [
		Math.round((x - box[0]) * scale) + STEPS * AROUND,
		Math.round((y - box[1]) * scale) + STEPS * AROUND,
	];
	const drawn = groups.map(({ id, colour, paths }) => {
		const d = paths.map((path) => coarse(path, scale, toSteps)).join("");
		const fill = id === "cut" ? `fill="${FILL}" fill-rule="evenodd"` : 'fill="none"';
		return { id, line: `<path ${fill} stroke="${colour}" d="${d}"/>` };
	});
	// What is cut lies below what is drawn on it.
	const order = [...drawn].sort((a, b) => Number(b.id === "cut") - Number(a.id === "cut"));
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" width="${width / STEPS}" height="${height / STEPS}" viewBox="0 0 ${width} ${height}">`,
		`<title>${title}</title>`,
		`<rect width="${width}" height="${height}" fill="#ffffff" stroke="#d5d9d8" stroke-width="${2 * STEPS}"/>`,
		`<g stroke-width="${LINE * STEPS}" stroke-linejoin="round" stroke-linecap="round">`,
		...order.map(({ line }) => line),
		"</g>",
		"</svg>",
		"",
	].join("\n");
}

/** Path data in whole steps, each point from the one before; points that fall together are one. */
function coarse(
	data: string,
	scale: number,
	toSteps: (point: readonly [number, number]) => [number, number],
): string {
	let at: [number, number] = [0, 0];
	let start = at;
	const commands = [...data.matchAll(/([MLAZ])([^MLAZ]*)/gu)];
	return commands
		.map(([, letter, rest]) => {
			if (letter === "Z") {
				at = start;
				return "z";
			}
			const numbers = rest!
				.trim()
				.split(/[\s,]+/u)
				.map(Number);
			const to = toSteps(numbers.slice(-2) as [number, number]);
			const by = `${to[0] - at[0]} ${to[1] - at[1]}`;
			const moves = to[0] !== at[0] || to[1] !== at[1];
			if (letter === "M") {
				[at, start] = [to, to];
				return `M${to[0]} ${to[1]}`;
			}
			if (!moves) return "";
			at = to;
			if (letter === "L") return `l${by}`;
			const radius = Math.max(1, Math.round(numbers[0]! * scale));
			return `a${radius} ${radius} 0 ${numbers[3]} ${numbers[4]} ${by}`;
		})
		.join("");
}
