// Builds after an install, if the development packages are there: `npm ci --omit=dev` works too.
import { createRequire } from "node:module";

const require = createRequire(import.meta.url);
let ready = true;
try {
	require.resolve("esbuild");
	require.resolve("typescript/package.json");
} catch {
	ready = false;
}
if (ready) await import("./build.mjs");
