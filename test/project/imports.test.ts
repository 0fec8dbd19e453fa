import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";

const SRC = resolve("src");

/** The layers from the ground up: a file may import from its own layer and from those before it. */
const LAYERS = [
	["units"],
	["problem"],
	["geometry"],
	["neck"],
	["shop"],
	["readings"],
	["lettering"],
	["drawing"],
	["fields"],
	["proof"],
	["cutting"],
	["paper"],
	["tools"],
	["writers"],
	["job"],
	["stages"],
	["report"],
	["manifest.ts"],
	["make.ts"],
	["version.ts"],
	["index.ts"],
	["cli", "cli.ts"],
];

/** What a layer must not know although it lies below: writers and tools know nothing of each other. */
const STRANGERS: Readonly<Record<string, readonly string[]>> = {
	proof: ["neck", "shop", "fields", "cutting", "paper", "tools", "writers", "job"],
	cutting: ["neck", "fields", "lettering"],
	paper: ["neck", "shop", "fields", "proof"],
	writers: ["tools", "fields", "neck", "shop", "lettering"],
	job: ["writers"],
	lettering: ["neck", "shop"],
	drawing: ["neck", "shop"],
	neck: ["problem"],
	geometry: ["problem"],
};

function filesUnder(folder: string): string[] {
	return readdirSync(folder).flatMap((name) => {
		const path = join(folder, name);
		return statSync(path).isDirectory() ? filesUnder(path) : path.endsWith(".ts") ? [path] : [];
	});
}

function importsOf(file: string): string[] {
	const text = readFileSync(file, "utf8");
	return [...text.matchAll(/(?:from|import\()\s*"([^"]+)"/gu)].map((m) => m[1]!);
}

function partOf(file: string): string {
	return relative(SRC, file).split("/")[0]!;
}

function layerOf(part: string): number {
	const layer = LAYERS.findIndex((parts) => parts.includes(part));
	if (layer < 0) throw new Error(`src/${part} has no layer`);
	return layer;
}

const FILES = filesUnder(SRC);

describe("imports", () => {
	it("run one way, from the command down to the units", () => {
		const upward = FILES.flatMap((file) =>
			importsOf(file)
				.filter((name) => name.startsWith("."))
				.map((name) => resolve(dirname(file), name.replace(/\.js$/u, ".ts")))
				.filter((target) => layerOf(partOf(target)) > layerOf(partOf(file)))
				.map((target) => `${relative(SRC, file)} -> ${relative(SRC, target)}`),
		);
		expect(upward).toEqual([]);
	});

	it("keep layers apart that know nothing of each other", () => {
		const meetings = FILES.flatMap((file) => {
			const strangers = STRANGERS[partOf(file)] ?? [];
			return importsOf(file)
				.filter((name) => name.startsWith("."))
				.map((name) => partOf(resolve(dirname(file), name)))
				.filter((part) => strangers.includes(part))
				.map((part) => `${relative(SRC, file)} -> ${part}`);
		});
		expect(meetings).toEqual([]);
	});

	it("bring nothing of node into the core, which also runs in a browser", () => {
		const node = FILES.filter((file) => !["cli", "cli.ts"].includes(partOf(file))).flatMap((file) =>
			importsOf(file)
				.filter((name) => name.startsWith("node:"))
				.map((name) => `${relative(SRC, file)}: ${name}`),
		);
		expect(node).toEqual([]);
	});

	it("and use of globals leave the core free of DOM and process", () => {
		const word = /\b(document|window|navigator|process|Buffer|require|__dirname)\s*[.(]/u;
		const found = FILES.filter((file) => !["cli", "cli.ts"].includes(partOf(file))).filter((file) =>
			word.test(
				readFileSync(file, "utf8")
					.replace(/\/\*[\s\S]*?\*\//gu, "")
					.replace(/\/\/.*$/gmu, "")
					.replace(/"[^"\n]*"/gu, '""'),
			),
		);
		expect(found.map((file) => relative(SRC, file))).toEqual([]);
	});

	it("of heavy packages are dynamic", () => {
		const heavy = FILES.filter((file) =>
			/^import (?!type).*"(opentype\.js|makerjs|@cantoo\/pdf-lib|pdfjs-dist[^"]*)"/mu.test(
				readFileSync(file, "utf8"),
			),
		);
		expect(heavy).toEqual([]);
	});
});
