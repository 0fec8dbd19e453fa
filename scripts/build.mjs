// Builds dist/: the library and the command, bundled and split so that a command loads only
// what it needs, and the library's types.
import { execFileSync } from "node:child_process";
import { rmSync } from "node:fs";
import { build } from "esbuild";

rmSync("dist", { recursive: true, force: true });
const shared = {
	bundle: true,
	format: "esm",
	target: "node20",
	splitting: true,
	legalComments: "linked",
	logLevel: "warning",
};
// The library: platform-neutral, its packages left for the user's own bundler or node.
await build({
	...shared,
	entryPoints: ["src/index.ts"],
	outdir: "dist",
	platform: "neutral",
	packages: "external",
	chunkNames: "library/[name]-[hash]",
});
// The command: everything in, so that nothing is looked for at start; but for the reader of PDFs,
// which looks for its worker beside itself.
await build({
	...shared,
	entryPoints: ["src/cli.ts", "src/version.ts"],
	outdir: "dist",
	platform: "node",
	external: ["pdfjs-dist/*"],
	chunkNames: "command/[name]-[hash]",
	minify: true,
	banner: {
		js: "import { createRequire as __camberRequire } from 'node:module'; const require = __camberRequire(import.meta.url);",
	},
});
execFileSync("npx", ["tsc", "-p", "tsconfig.types.json"], { stdio: "inherit" });
