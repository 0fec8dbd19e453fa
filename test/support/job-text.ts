/** An ordinary job that makes every tool without a problem. */
export const JOB = `format: 1
job: Test neck
neck:
  scale: 648 mm
  frets: 22
  radius: 12 in
  width: {nut: 43 mm, last-fret: 56 mm}
  strings: {count: 6, at-nut: 35.5 mm, at-saddle: 52 mm}
wire: {crown-width: 2.7 mm, crown-height: 1.3 mm, tang-width: 0.53 mm, tang-depth: 1.6 mm}
stock: {material: acrylic, thickness: 3 mm}
make:
  - notched-straightedge
  - radius-gauge
  - slot-strip
`;

/** The ordinary job with one piece of its text changed. @throws Error if the piece is not in it */
export function jobText(from: string | RegExp, to: string): string {
	const text = JOB.replace(from, () => to);
	if (text === JOB) throw new Error(`the job does not hold ${from}`);
	return text;
}

/** The ordinary job with more keys under `neck`. */
export function withNeck(lines: string): string {
	return jobText("  radius: 12 in", `  radius: 12 in\n  ${lines}`);
}

/** The ordinary job with more blocks. */
export function withBlock(lines: string): string {
	return jobText("make:", `${lines}\nmake:`);
}

/** The ordinary job that makes but these entries. */
export function making(...entries: string[]): string {
	return jobText(/make:[\s\S]*/u, `make:\n${entries.map((e) => `  - ${e}\n`).join("")}`);
}

/** Line and column of the first place at which a text holds a piece, counted from 1. */
export function placeOf(text: string, piece: string): { line: number; column: number } {
	const offset = text.indexOf(piece);
	if (offset < 0) throw new Error(`the text does not hold ${piece}`);
	const before = text.slice(0, offset).split("\n");
	return { line: before.length, column: before.at(-1)!.length + 1 };
}
