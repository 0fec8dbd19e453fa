// Writes docs/gallery/, README's small picture of every tool, from the files that the examples make. Run
// again after a change of a tool or an example; a test compares the committed bytes.
//   node scripts/gallery.mjs
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

const FOLDER = "docs/gallery";
const bundle = "node_modules/.cache/gallery.mjs";
await build({
	entryPoints: ["scripts/gallery.ts"],
	outfile: bundle,
	bundle: true,
	format: "esm",
	platform: "node",
	packages: "external",
});
const { gallery } = await import(`../${bundle}`);
const pictures = await gallery();
mkdirSync(FOLDER, { recursive: true });
for (const old of readdirSync(FOLDER)) rmSync(`${FOLDER}/${old}`);
for (const { name, svg } of pictures) writeFileSync(`${FOLDER}/${name}`, svg);
console.log(`${pictures.length} pictures in ${FOLDER}`);
