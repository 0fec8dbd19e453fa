import { type Document, LineCounter, parseAllDocuments, visit, type YAMLError } from "yaml";
import { type Fact, type Problem, problem } from "../problem/index.js";

/** A job file's largest size, characters: a thousand times what a long job needs. */
export const MOST_TEXT = 1_000_000;
/** Deepest nesting: a job needs five levels. */
const MOST_DEPTH = 20;

/** A parsed job file with the means to say where things stand in it. */
export interface JobText {
	readonly value: unknown;
	readonly doc: Document.Parsed;
	readonly lines: LineCounter;
}

/** Reads YAML; aliases, tags and several documents have no place in a job and are refused. */
export function parseJobText(text: string): JobText | Problem[] {
	if (text.length > MOST_TEXT) {
		return [problem("text-too-large", [], { size: text.length, most: MOST_TEXT })];
	}
	const lines = new LineCounter();
	const at = (offset: number) => {
		const { line, col } = lines.linePos(offset);
		return { path: [], line, column: col };
	};
	if (deepest(text) > MOST_DEPTH) return [problem("too-deep", [], { most: MOST_DEPTH })];
	const docs = parseAllDocuments(text, { lineCounter: lines, uniqueKeys: true, version: "1.2" });
	const doc = Array.isArray(docs) ? docs[0] : undefined;
	if (!doc || doc.contents === null) return [problem("empty-job", [])];
	if (docs.length > 1) {
		const where = at(docs[1]!.range[0]);
		return [{ ...problem("several-documents", []), where }];
	}
	const found = doc.errors.map((error): Problem => {
		const { code, facts } = syntaxFault(error, text);
		return { ...problem(code, [], facts), where: at(error.pos[0]) };
	});
	visit(doc, {
		Node(_, node) {
			const { anchor, tag, range } = node as { anchor?: string; tag?: string; range?: number[] };
			const alias = node.constructor.name === "Alias" || anchor !== undefined;
			if (!alias && tag === undefined) return;
			const code = alias ? "yaml-alias" : "yaml-tag";
			found.push({ ...problem(code, []), where: at(range?.[0] ?? 0) });
		},
		Alias(_, node) {
			found.push({ ...problem("yaml-alias", []), where: at(node.range?.[0] ?? 0) });
			return visit.SKIP;
		},
	});
	if (found.length > 0) return found;
	return { value: doc.toJS({ maxAliasCount: 0 }), doc: doc as Document.Parsed, lines };
}

/** Deepest nesting of brackets or indentation, a bound that needs no parser. */
function deepest(text: string): number {
	let open = 0;
	let most = 0;
	for (const c of text) {
		if (c === "{" || c === "[") most = Math.max(most, ++open);
		else if (c === "}" || c === "]") open = Math.max(0, open - 1);
	}
	return most;
}

function syntaxFault(
	error: YAMLError,
	text: string,
): { code: string; facts: Record<string, Fact> } {
	const start = text.lastIndexOf("\n", error.pos[0] - 1) + 1;
	const end = text.indexOf("\n", error.pos[0]);
	const line = text.slice(start, end === -1 ? undefined : end).trim();
	if (/"[^"]*\d"{2}|"[^"]*\d″?"[^\s,}\]#]/u.test(line))
		return { code: "inch-in-quotes", facts: { line } };
	if (error.code === "DUPLICATE_KEY") return { code: "duplicate-key", facts: { line } };
	const reason = error.message.split("\n")[0]!.replace(/ at line \d+.*$/u, "");
	return { code: "yaml-syntax", facts: { line, reason } };
}
