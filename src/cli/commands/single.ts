import type { Command } from "commander";
import { parse, stringify } from "yaml";
import { fileSafe } from "../../job/index.js";
import { flagOf, jobKeys, type Key, toolKeys } from "../../job/keys.js";
import { type Problem, problem } from "../../problem/index.js";
import { TOOLS, type Tool } from "../../tools/index.js";
import { type Console, EXIT, reportProblems } from "../console.js";
import { loader } from "../job-file.js";
import { type MakeFlags, makeAndPut } from "./make.js";

type Values = Record<string, unknown>;

/** Keys of a job that one tool's flags set: all but the job file's own form. */
function neckKeys(): Key[] {
	return jobKeys().filter(({ path }) => path[0] !== "format");
}

/** Adds `camber single TOOL`: one tool from flags that the job's schema gives, no file. */
export function addSingle(
	program: Command,
	console: Console,
	addMakeFlags: (command: Command) => Command,
	done: (code: number) => void,
): void {
	const single = program
		.command("single")
		.description("make one tool straight from flags, without a job file");
	for (const tool of TOOLS) {
		const command = addMakeFlags(single.command(tool.id).description(tool.purpose));
		for (const key of [...neckKeys(), ...toolKeys(tool)]) {
			command.option(`${flagOf(key.path)} <value>`, helpText(key));
		}
		command.action(async (flags: MakeFlags & Values) => {
			done(await singleCommand(tool, flags, console));
		});
	}
}

function helpText({ text, range, initial, required }: Key): string {
	const tail = required ? " (needed)" : initial ? ` (default: ${initial})` : "";
	return `${text}; ${range}${tail}`;
}

async function singleCommand(
	tool: Tool,
	flags: MakeFlags & Values,
	console: Console,
): Promise<number> {
	const job: Values = { format: 1 };
	const settings: Values = {};
	const problems: Problem[] = [];
	const set = (keys: readonly Key[], target: Values) => {
		for (const { path } of keys) {
			const flag = flagOf(path);
			const given = flags[camelCase(flag)];
			if (typeof given !== "string") continue;
			const value = flagValue(given);
			if (value === undefined) problems.push(problem("flag-yaml", [], { flag, given }));
			else put(target, path, value);
		}
	};
	set(neckKeys(), job);
	set(toolKeys(tool), settings);
	if (problems.length > 0) {
		reportProblems(console, problems, "");
		return EXIT.refused;
	}
	job.job ??= tool.title;
	job.make = [Object.keys(settings).length > 0 ? { [tool.id]: settings } : tool.id];
	const text = stringify(job);
	const folder = flags.out ?? `templates-out/${fileSafe(String(job.job))}`;
	const file = { file: "", text, load: loader(process.cwd()) };
	return makeAndPut(file, { ...flags, out: folder }, console, flagPlace);
}

/** Where a problem of a single tool stands: at the flag that set it. */
function flagPlace(p: Problem): string {
	const [first, , , ...inner] = p.where.path;
	if (first === "make") return inner.length > 0 ? `--${String(inner[0])}` : "";
	return p.where.path.length > 0 ? flagOf(p.where.path.map(String)) : "";
}

/** Maps and lists take job-file text; plain values stay as they are. Undefined if unreadable. */
function flagValue(given: string): unknown {
	const text = given.trim();
	if (/^[[{]/u.test(text)) {
		try {
			return parse(text, { maxAliasCount: 0 }) ?? undefined;
		} catch {
			return undefined;
		}
	}
	if (text === "true" || text === "false") return text === "true";
	return /^[-+]?\d+(\.\d+)?$/u.test(text) ? Number(text) : given;
}

function put(target: Values, path: readonly string[], value: unknown): void {
	const [key, ...rest] = path;
	if (rest.length === 0) target[key!] = value;
	else {
		target[key!] ??= {};
		put(target[key!] as Values, rest, value);
	}
}

function camelCase(flag: string): string {
	return flag.slice(2).replace(/-([a-z0-9])/gu, (_, c: string) => c.toUpperCase());
}
