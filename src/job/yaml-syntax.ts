import type { YAMLError } from "yaml";
import type { Problem } from "../problem/index.js";

/** One fault of the YAML with its place in the text. */
export interface YamlFault {
	readonly code: string;
	readonly facts: Problem["facts"];
	readonly offset: number;
}

/** The parser's errors in a repairer's words. */
const REASONS: Readonly<Record<string, string>> = {
	TAB_AS_INDENT: "a tab stands where spaces must",
	BAD_INDENT: "the line is not set in like the others of its block",
	MISSING_CHAR: "a closing bracket or quotation mark, a comma or a colon is missing",
	BLOCK_IN_FLOW: "a bracket is not closed before the next line",
	MULTILINE_IMPLICIT_KEY: "a bracket or quotation mark is not closed, or a colon is missing",
	BLOCK_AS_IMPLICIT_KEY: "a second key follows in this line, or the next line is set in too far",
	BAD_SCALAR_START: "a value begins with a sign that needs quotation marks",
	BAD_DQ_ESCAPE: "a backslash stands in double quotation marks",
	UNEXPECTED_TOKEN: "something stands here that does not belong",
};

/**
 * What is wrong with the YAML. One slip makes the parser stumble again and again, so of the
 * general errors the first alone is told; slips that have a name of their own are all told.
 */
export function syntaxProblems(errors: readonly YAMLError[], text: string): YamlFault[] {
	const told = new Set<string>();
	return errors
		.map((error) => faultOf(error, text))
		.filter(({ code, offset }) => {
			const name = code === "yaml-syntax" ? code : `${code} ${lineStart(text, offset)}`;
			return !told.has(name) && told.add(name);
		});
}

function faultOf(error: YAMLError, text: string): YamlFault {
	const offset = error.pos[0];
	const line = lineAt(text, offset);
	const facts = { line };
	if (/"[^"]*\d"{2}|"[^"]*\d″?"[^\s,}\]#]/u.test(line)) {
		return { code: "inch-in-quotes", facts, offset };
	}
	if (error.code === "DUPLICATE_KEY") return { code: "duplicate-key", facts, offset };
	const hash = /colour\s*:\s+#[0-9a-f]{3,6}\b/iu.exec(text);
	if (hash) {
		const sign = hash.index + hash[0].indexOf("#");
		return { code: "colour-unquoted", facts: { line: lineAt(text, sign) }, offset: sign };
	}
	const reason = REASONS[error.code] ?? "this cannot be read";
	return { code: "yaml-syntax", facts: { line, reason }, offset };
}

/** The line around a place in the text, without its indentation. */
function lineAt(text: string, offset: number): string {
	const end = text.indexOf("\n", offset);
	return text.slice(lineStart(text, offset), end === -1 ? undefined : end).trim();
}

function lineStart(text: string, offset: number): number {
	return text.lastIndexOf("\n", offset - 1) + 1;
}
