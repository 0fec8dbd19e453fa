import {
	type Document,
	isAlias,
	isCollection,
	isScalar,
	LineCounter,
	type Pair,
	parseAllDocuments,
	visit,
} from "yaml";
import { type Problem, problem } from "../problem/index.js";
import { deepPlace } from "./yaml-depth.js";
import { syntaxProblems, type YamlFault } from "./yaml-syntax.js";

/** A job file's largest size, characters: a thousand times what a long job needs. */
const MOST_TEXT = 1_000_000;
/** Deepest nesting: a job needs five levels. */
const MOST_DEPTH = 20;

/** A parsed job file with the means to say where things stand in it. */
export interface JobText {
	readonly value: unknown;
	readonly doc: Document.Parsed;
	readonly lines: LineCounter;
}

/**
 * Reads YAML 1.2; directives, aliases, tags and several documents have no place in a job and are
 * refused.
 */
export function parseJobText(text: string): JobText | Problem[] {
	if (text.length > MOST_TEXT) {
		return [problem("text-too-large", [], { size: text.length, most: MOST_TEXT })];
	}
	const lines = new LineCounter();
	const at = (code: string, offset: number, facts: Problem["facts"] = {}): Problem => {
		const { line, col } = lines.linePos(offset);
		return { ...problem(code, [], facts), where: { path: [], line, column: col } };
	};
	const deep = deepPlace(text);
	if (deep !== null) return [{ ...problem("too-deep", [], { most: MOST_DEPTH }), where: deep }];
	const docs = parseAllDocuments(text, {
		lineCounter: lines,
		uniqueKeys: true,
		version: "1.2",
		logLevel: "error",
	});
	const doc = Array.isArray(docs) ? docs[0] : undefined;
	const directive = text.search(/^%/mu);
	if (directive >= 0) return [at("yaml-directive", directive)];
	if (!doc || isNothing(doc.contents)) return [problem("empty-job", [])];
	if (docs.length > 1) return [at("several-documents", docs[1]!.range[0])];
	const faults = syntaxProblems(doc.errors, text);
	const found = faults.length > 0 ? faults : refusedNodes(doc);
	if (found.length > 0) return found.map(({ code, offset, facts }) => at(code, offset, facts));
	return { value: doc.toJS({ maxAliasCount: 0 }), doc: doc as Document.Parsed, lines };
}

function isNothing(node: unknown): boolean {
	return node === null || (isScalar(node) && node.value === null);
}

/** Anchors, aliases, tags, keys that are no words, and what is nested too deep. */
function refusedNodes(doc: Document.Parsed): YamlFault[] {
	const found: YamlFault[] = [];
	const refuse = (code: string, offset: number | undefined, facts: Problem["facts"] = {}) =>
		found.push({ code, offset: offset ?? 0, facts });
	visit(doc, {
		Pair(_, pair) {
			const { key } = pair as Pair<unknown>;
			const word = isScalar(key) && ["string", "number"].includes(typeof key.value);
			if (word || isAlias(key)) return;
			refuse("yaml-key", (key as { range?: number[] } | null)?.range?.[0]);
			return visit.SKIP;
		},
		Node(_, node, path) {
			const offset = node.range?.[0];
			if (isAlias(node) || node.anchor !== undefined) refuse("yaml-alias", offset);
			else if (node.tag !== undefined) refuse("yaml-tag", offset);
			if (!isCollection(node) || path.filter(isCollection).length < MOST_DEPTH) return;
			refuse("too-deep", offset, { most: MOST_DEPTH });
			return visit.BREAK;
		},
	});
	return found;
}

/** A scalar as it stands in the file: `1.10` where its value is the number 1.1. */
export function sourceOf(doc: Document.Parsed, path: readonly (string | number)[]) {
	const node = doc.getIn(path, true);
	return isScalar(node) ? node.source : undefined;
}
