// Makes every example job into templates-out/ with the built command and says what it made.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";

if (!existsSync("dist/cli.js")) await import("./build.mjs");
const jobs = readdirSync("examples").filter((name) => name.endsWith(".yaml"));
for (const job of jobs) {
	const own = /^machine:/mu.test(readFileSync(`examples/${job}`, "utf8"));
	const machine = own ? [] : ["--machine", "examples/machines/bench-laser.yaml"];
	const args = ["bin/camber.js", "make", `examples/${job}`, ...machine];
	const { status } = spawnSync(process.execPath, args, {
		stdio: "inherit",
	});
	if (status !== 0) process.exit(status ?? 1);
	console.log();
}
console.log(`${jobs.length} example jobs made into templates-out/.`);
console.log(
	"Open templates-out/heron-baritone/heron-baritone-notched-straightedge.svg in a browser.",
);
