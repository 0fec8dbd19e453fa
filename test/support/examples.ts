import { readdirSync, readFileSync } from "node:fs";
import { type Made, type MakeOptions, make } from "../../src/make.js";

/** Names of the example jobs. */
export const EXAMPLES = readdirSync("examples")
	.filter((name) => name.endsWith(".yaml"))
	.map((name) => name.replace(/\.yaml$/u, ""));

/** The machine of the examples that say nothing of theirs, as the demo hands it to them. */
const MACHINE = "examples/machines/bench-laser.yaml";

/** An example as the demo makes it, not measured unless asked for. @throws Error if it is refused */
export async function madeExample(name: string, options: MakeOptions = {}) {
	const text = readFileSync(`examples/${name}.yaml`, "utf8");
	const machine = { name: MACHINE, text: readFileSync(MACHINE, "utf8") };
	const own = /^machine:/mu.test(text);
	return soundly(await make(text, { proof: false, ...options, ...(own ? {} : { machine }) }));
}

function soundly(made: Made): Extract<Made, { ok: true }> {
	if (!made.ok) throw new Error(JSON.stringify(made.problems));
	return made;
}
