import { readdirSync, readFileSync } from "node:fs";
import { type Made, type MakeOptions, make } from "../../src/make.js";

/** Tools with every kind of feature: notches, arcs, scored lines, shared edges, letters. */
export const FEW = ["notched-straightedge", "slot-strip", "radius-gauge", "kerf-coupon"];

/** Names of the example jobs. */
export const EXAMPLES = readdirSync("examples")
	.filter((name) => name.endsWith(".yaml"))
	.map((name) => name.replace(/\.yaml$/u, ""));

/** The machine of the examples that say nothing of theirs, as the demo hands it to them. */
const MACHINE = "examples/machines/bench-laser.yaml";

type MadeJob = Extract<Made, { ok: true }>;

/** The example that was made last: tests of one ask for it again and again. */
let last: { readonly key: string; readonly made: Promise<MadeJob> } | null = null;

/** An example as the demo makes it, not measured unless asked for. @throws Error if it is refused */
export function madeExample(name: string, options: MakeOptions = {}): Promise<MadeJob> {
	const key = JSON.stringify([name, options]);
	if (last?.key !== key) last = { key, made: makeExample(name, options) };
	return last.made;
}

async function makeExample(name: string, options: MakeOptions): Promise<MadeJob> {
	const text = readFileSync(`examples/${name}.yaml`, "utf8");
	const machine = { name: MACHINE, text: readFileSync(MACHINE, "utf8") };
	const own = /^machine:/mu.test(text);
	return soundly(await make(text, { proof: false, ...options, ...(own ? {} : { machine }) }));
}

function soundly(made: Made): MadeJob {
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	return made;
}
