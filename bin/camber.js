#!/usr/bin/env node
// The version is answered before anything else loads.
if (process.argv.length === 3 && ["--version", "-V"].includes(process.argv[2])) {
	const { VERSION } = await import("../dist/version.js");
	console.log(VERSION);
} else {
	const { run } = await import("../dist/cli.js");
	process.exitCode = await run(process.argv.slice(2));
}
