import { createRequire } from "node:module";
import { Worker } from "node:worker_threads";

interface ParsedVertex {
	readonly x: number;
	readonly y: number;
	readonly bulge?: number;
}

/** An entity as the general-purpose parser gives it; angles in radians. */
export interface ParsedEntity {
	readonly type: string;
	readonly layer: string;
	readonly vertices?: readonly ParsedVertex[];
	readonly shape?: boolean;
	readonly center?: ParsedVertex;
	readonly radius?: number;
	readonly startAngle?: number;
	readonly endAngle?: number;
	readonly startPoint?: ParsedVertex;
	readonly textHeight?: number;
	readonly text?: string;
}

export interface ParsedDxf {
	readonly header: Readonly<Record<string, unknown>>;
	readonly tables: { readonly layer: { readonly layers: Readonly<Record<string, unknown>> } };
	readonly entities: readonly ParsedEntity[];
}

const PROGRAM = `
const { parentPort, workerData } = require("node:worker_threads");
const Parser = require(workerData.parser);
try {
	parentPort.postMessage({ parsed: new Parser().parseSync(workerData.text) });
} catch (error) {
	parentPort.postMessage({ failed: String(error) });
}
`;

/**
 * A file as a general-purpose DXF parser sees it. The parser waits for ever on some broken
 * files, so it runs in a thread that is stopped after `limit` ms.
 *
 * @throws Error "no answer within …", or whatever the parser threw
 */
export function parseElsewhere(text: string, limit: number): Promise<ParsedDxf> {
	const parser = createRequire(import.meta.url).resolve("dxf-parser");
	const worker = new Worker(PROGRAM, { eval: true, workerData: { parser, text } });
	return new Promise<ParsedDxf>((resolve, reject) => {
		const timer = setTimeout(() => reject(new Error(`no answer within ${limit} ms`)), limit);
		worker.once("message", (answer: { parsed?: ParsedDxf; failed?: string }) => {
			clearTimeout(timer);
			if (answer.parsed) resolve(answer.parsed);
			else reject(new Error(answer.failed ?? "nothing parsed"));
		});
		worker.once("error", (error) => {
			clearTimeout(timer);
			reject(error);
		});
	}).finally(() => worker.terminate());
}
