import { kerfIn, type Machine, pathMoved } from "./cutting/index.js";
import type { Claim, OutFile, Part } from "./drawing/index.js";
import type { Job } from "./job/index.js";
import type { MadeTool } from "./stages/build.js";
import { stable } from "./units/index.js";

/** Form of the manifest; raised when a reader would misread it. */
const MANIFEST_FORMAT = 1;

/**
 * `manifest.json`: every file with its SHA-256, every tool with the settings used, every part
 * with its claims and how far its paths were moved for the kerf, and the cautions. Numbers pass the one formatter, so that engines agree.
 */
export async function manifestOf(
	job: Job,
	tools: readonly MadeTool[],
	files: readonly OutFile[],
	cautions: readonly string[],
): Promise<OutFile> {
	const { bench } = job;
	const content = {
		writer: "camber",
		format: MANIFEST_FORMAT,
		job: bench.job,
		...(bench.date === null ? {} : { date: bench.date }),
		units: "mm, rad",
		machine: {
			kind: bench.machine.kind,
			tolerance: bench.machine.tolerance,
			kerf: bench.machine.kerf,
		},
		files: await Promise.all(files.map(fileEntry)),
		tools: tools.map((tool) => toolEntry(tool, bench.machine)),
		cautions,
	};
	const text = `${JSON.stringify(content, numbersStable, "\t")}\n`;
	const bytes = new TextEncoder().encode(text);
	return { name: "manifest.json", format: "json", bytes, sheet: "", parts: [] };
}

async function fileEntry({ name, format, bytes, parts }: OutFile) {
	return { name, format, bytes: bytes.length, sha256: await sha256(bytes), parts };
}

function toolEntry({ wanted, settings, parts }: MadeTool, machine: Machine) {
	return {
		tool: wanted.tool.id,
		name: wanted.name,
		stock: wanted.stock,
		settings,
		parts: parts.map((part) => partEntry(part, machine)),
	};
}

function partEntry(part: Part, machine: Machine) {
	const { name, title, workingEdge, notes, claims } = part;
	const moved = pathMoved(part, kerfIn(machine, part.stock) ?? 0);
	return { name, title, workingEdge, pathMoved: moved, notes, claims: claims.map(claimEntry) };
}

function claimEntry(claim: Claim) {
	return { ...claim, at: claim.at.map(({ x, y }) => [x, y]) };
}

function numbersStable(_key: string, value: unknown): unknown {
	return typeof value === "number" ? stable(value) : value;
}

/** SHA-256 as hex digits, by the platform's own Web Cryptography. */
export async function sha256(bytes: Uint8Array): Promise<string> {
	const digest = await crypto.subtle.digest("SHA-256", bytes as Uint8Array<ArrayBuffer>);
	return [...new Uint8Array(digest)].map((b) => b.toString(16).padStart(2, "0")).join("");
}
