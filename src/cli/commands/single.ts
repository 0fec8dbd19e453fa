import type { Command } from "commander";
import { stringify } from "yaml";
import { commonKeys, flagOf, jobKeys, type Key, toolKeys } from "../../job/keys.js";
import { parseJobText } from "../../job/yaml-text.js";
import { type Problem, problem } from "../../problem/index.js";
import { TOOLS, type Tool } from "../../tools/index.js";
import type { Console } from "../console.js";
import { type Disk, nodeDisk } from "../disk.js";
import { loader, readMachineFile } from "../job-file.js";
import { type MakeFlags, makeAndPut, refused } from "./make.js";

type Values = Record<string, unknown>;

/** Keys of a job that one tool's flags set: all but the job file's own form. */
export function singleKeys(tool: Tool): { readonly job: Key[]; readonly tool: Key[] } {
	const job = jobKeys().filter(({ path }) => path[0] !== "format" && path[0] !== "paper");
	const title = { initial: tool.title, required: false };
	const ofNeck = tool.neckless ? job.filter(({ path }) => !isOfNeck(path)) : job;
	const known = isOfNothing(tool) ? ofNeck.filter(({ path }) => path[0] !== "stock") : ofNeck;
	return {
		job: known.map((key) => (key.path[0] === "job" ? { ...key, ...title } : key)),
		tool: [...toolKeys(tool), ...commonKeys().filter(({ path }) => path[0] !== "stock")],
	};
}

/** Whether a tool asks for neither neck nor sheet. */
function isOfNothing({ neckless, onPaper }: Tool): boolean {
	return neckless === true && onPaper === true;
}

function isOfNeck([block]: readonly string[]): boolean {
	return block === "neck" || block === "wire" || block === "shop";
}

/** A neck and its wire for tools that ask for neither: a job has them. */
const ANY_NECK = {
	neck: { scale: "648 mm", frets: 22, radius: "flat", width: "50 mm" },
	wire: {
		"crown-width": "2.5 mm",
		"crown-height": "1.2 mm",
		"tang-width": "0.5 mm",
		"tang-depth": "1.5 mm",
	},
};

/** A sheet for tools that cut none. */
const ANY_STOCK = { material: "card", thickness: "0.3 mm" };

const HELP = `
Lengths: 648, 648 mm, 25.5 in, "25 1/2 in", "1/64 in". Put values with spaces in quotes.
Maps and lists are written as in a job file: --radius '{nut: 10 in, last-fret: 14 in}'`;

/** Adds `camber single TOOL`: one tool from flags that the job's schema gives, no file. */
export function addSingle(
	program: Command,
	console: Console,
	addMakeFlags: (command: Command) => Command,
	done: (code: number) => void,
	disk?: Disk,
): void {
	const single = program
		.command("single")
		.description("make one tool straight from flags, without a job file");
	for (const tool of TOOLS) {
		const command = single.command(tool.id).summary(tool.title).description(tool.purpose);
		const keys = singleKeys(tool);
		for (const key of [...keys.tool, ...keys.job]) {
			command.option(`${flagOf(key.path)} <value>`, helpText(key));
		}
		addMakeFlags(command).addHelpText("after", HELP);
		command.action(async (flags: MakeFlags & Values) => {
			done(await singleCommand(tool, flags, console, disk));
		});
	}
}

function helpText({ text, range, initial, required }: Key): string {
	const isOwed = initial.startsWith("needed");
	const tail = required
		? " (needed)"
		: isOwed
			? ` (${initial})`
			: initial
				? ` (default: ${initial})`
				: "";
	return `${text}; ${range}${tail}`;
}

async function singleCommand(
	tool: Tool,
	flags: MakeFlags & Values,
	console: Console,
	disk: Disk = nodeDisk,
): Promise<number> {
	const keys = singleKeys(tool);
	const neck = tool.neckless ? ANY_NECK : { neck: {}, wire: {} };
	const stock = isOfNothing(tool) ? { ...ANY_STOCK } : {};
	const job: Values = { format: 1, job: tool.title, ...neck, stock };
	const settings: Values = {};
	const problems = [...setAll(job, keys.job, flags), ...setAll(settings, keys.tool, flags)];
	if (problems.length > 0) return refused(console, flags, problems, "");
	job.make = [{ [tool.id]: settings }];
	const machine = await readMachineFile(disk, flags.machine);
	if (machine && "code" in machine) return refused(console, flags, [machine], "");
	const file = {
		file: "",
		text: stringify(job),
		load: loader(process.cwd(), disk),
		...(machine ? { machine } : {}),
	};
	return makeAndPut(file, flags, console, disk, placeIn([...keys.job, ...keys.tool]));
}

/** Puts the flags' values into a job or settings; returns the flags that cannot be read. */
function setAll(target: Values, keys: readonly Key[], flags: Values): Problem[] {
	return keys.flatMap(({ path, kind }) => {
		const flag = flagOf(path);
		const given = flags[camelCase(flag)];
		if (typeof given !== "string") return [];
		const value = kind === "text" ? given : flagValue(given);
		if (value === undefined) return [problem("flag-yaml", [], { flag, given })];
		put(target, path, value);
		return [];
	});
}

/** Where a problem of a single tool stands: at the flag that set it, or the first of its block. */
function placeIn(keys: readonly Key[]) {
	return ({ where }: Problem): string => {
		const [first, , ...inner] = where.path.map(String);
		const path = first === "make" ? inner : where.path.map(String);
		const isTool = first === "make" && TOOLS.some(({ id }) => id === path[0]);
		const wanted = isTool ? path.slice(1) : path;
		if (wanted.length === 0) return "";
		const same = (key: Key) =>
			key.path.every((step, i) => i >= wanted.length || step === wanted[i]);
		const key = keys.find(same);
		return key ? flagOf(key.path) : "";
	};
}

/** Maps and lists take job-file text; plain values stay as they are. Undefined if unreadable. */
function flagValue(given: string): unknown {
	const text = given.trim();
	if (/^[[{]/u.test(text)) {
		const parsed = parseJobText(text);
		return Array.isArray(parsed) ? undefined : parsed.value;
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
