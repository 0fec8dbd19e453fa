import { basename, dirname, extname, join } from "node:path";
import { stringify } from "yaml";
import { fileSafe } from "../../job/index.js";
import { loadLettering } from "../../lettering/index.js";
import { type Problem, problem } from "../../problem/index.js";
import { type Console, EXIT, reportProblems } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
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
	disk: Disk = nodeDisk,
): Promise<number> {
	if (/[/\\]$/u.test(path) || (await isFolder(disk, path))) {
		return refuse([problem("file-is-folder", [], { file: path })], console);
	}
	const file = extname(path) === "" ? `${path}.yaml` : path;
	const name = stringify(await jobName(basename(file, extname(file)))).trim();
	const job = await newFile(disk, file, starterJob(name, SCHEMA), flags.force ?? false);
	if (job) return refuse([job], console);
	const schema = join(dirname(file), SCHEMA);
	const beside = await newFile(disk, schema, schemaText(), flags.force ?? false);
	if (beside && beside.code !== "file-exists") return refuse([beside], console);
	const left = beside ? `; ${schema} was there already and stays as it is` : ` and ${schema}`;
	console.out(`Wrote ${file}${left}.\n`);
	const shown = /\s/u.test(file) ? `"${file}"` : file;
	console.out(`Put your readings in, then: camber check ${shown}, camber make ${shown}\n`);
	return EXIT.ok;
}

function refuse(problems: readonly Problem[], console: Console): number {
	reportProblems(console, problems, "");
	return EXIT.refused;
}

async function isFolder(disk: Disk, path: string): Promise<boolean> {
	return disk.stat(path).then(
		(entry) => entry.isDirectory(),
		() => false,
	);
}

/** "heron-baritone" as a name: "Heron baritone"; a name that could not be used is "My neck". */
async function jobName(stem: string): Promise<string> {
	const words = stem
		.replace(/[^\p{L}\p{N}]+/gu, " ")
		.trim()
		.slice(0, 60);
	const { missing } = await loadLettering(undefined);
	if (fileSafe(words) === "" || missing(words).length > 0) return "My neck";
	return words[0]!.toUpperCase() + words.slice(1);
}
