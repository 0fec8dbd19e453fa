import { basename, dirname, extname, join } from "node:path";
import type { Problem } from "../../problem/index.js";
import { type Console, EXIT, reportProblems } from "../console.js";
import { nodeDisk } from "../disk.js";
import { newFile } from "../new-file.js";
import { starterJob } from "../starter.js";
import { schemaText } from "./schema.js";

/** Name of the JSON Schema that stands beside a starter job. */
const SCHEMA = "camber.schema.json";

/** `camber new JOB`: a commented starter and, beside it, the schema that editors read. */
export async function newCommand(
	path: string,
	flags: { readonly force?: boolean },
	console: Console,
): Promise<number> {
	const file = extname(path) === "" ? `${path}.yaml` : path;
	const name = jobName(basename(file, extname(file)));
	const job = await newFile(nodeDisk, file, starterJob(name, SCHEMA), flags.force ?? false);
	if (job) return refuse([job], console);
	const schema = join(dirname(file), SCHEMA);
	const beside = await newFile(nodeDisk, schema, schemaText(), flags.force ?? false);
	if (beside && beside.code !== "file-exists") return refuse([beside], console);
	const left = beside ? `; ${schema} was there already and stays as it is` : ` and ${schema}`;
	console.out(`Wrote ${file}${left}.\n`);
	console.out(`Put your readings in, then: camber check ${file}, camber make ${file}\n`);
	return EXIT.ok;
}

function refuse(problems: readonly Problem[], console: Console): number {
	reportProblems(console, problems, "");
	return EXIT.refused;
}

/** "heron-baritone" as a name: "Heron baritone". */
function jobName(stem: string): string {
	const words = stem.replace(/[^\p{L}\p{N}]+/gu, " ").trim() || "My neck";
	return words[0]!.toUpperCase() + words.slice(1);
}
