import { fretTable, make, problemText, readJob } from "camber";

const text = `
format: 1
job: Bench note
neck: {scale: 25 1/2 in, frets: 22, radius: 12 in, width: {nut: 43 mm, last-fret: 56 mm}}
wire: {crown-width: 2.7 mm, crown-height: 1.3 mm, tang-width: 0.53 mm, tang-depth: 1.6 mm}
stock: {material: acrylic, thickness: 3 mm}
make: [notched-straightedge, radius-gauge]
`;

/** Files as bytes, or the problems in words. Nothing touches a disk. */
export async function benchNote() {
	const made = await make(text, { formats: ["svg"] });
	if (!made.ok) throw new Error(made.problems.map(problemText).join("\n"));
	const read = readJob(text);
	const frets = read.ok ? fretTable(read.job.bench.neck) : [];
	return { names: made.files.map((file) => file.name), fret12: frets[11]?.fromNut };
}
