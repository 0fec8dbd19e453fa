// Writes docs/kerf.svg, the README's picture of a kerf, from the project's own geometry. Run again
// after a change there; a test compares the committed bytes.
//   node scripts/kerf-picture.mjs           write the picture
//   node scripts/kerf-picture.mjs --print   print it instead
import { mkdirSync, writeFileSync } from "node:fs";
import { build } from "esbuild";

const { outputFiles } = await build({
	entryPoints: ["scripts/kerf-picture.ts"],
	bundle: true,
	format: "esm",
	platform: "node",
	write: false,
});
const code = Buffer.from(outputFiles[0].contents).toString("base64");
const { kerfPicture } = await import(`data:text/javascript;base64,${code}`);
if (process.argv.includes("--print")) process.stdout.write(kerfPicture());
else {
	mkdirSync("docs", { recursive: true });
	writeFileSync("docs/kerf.svg", kerfPicture());
}
