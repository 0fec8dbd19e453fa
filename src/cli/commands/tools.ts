import { commonKeys, type Key, toolKeys } from "../../job/keys.js";
import { TOOLS } from "../../tools/index.js";
import { type Console, EXIT, wrapText } from "../console.js";

/** `camber tools`: every tool, what it is for, its settings with defaults and limits. */
export function toolsCommand(flags: { readonly json?: boolean }, console: Console): number {
	if (flags.json) {
		const list = TOOLS.map((tool) => ({
			id: tool.id,
			title: tool.title,
			purpose: tool.purpose,
			settings: toolKeys(tool),
		}));
		console.out(`${JSON.stringify(list, null, "\t")}\n`);
		return EXIT.ok;
	}
	for (const tool of TOOLS) {
		console.out(`${tool.id}\n${wrapText(`  ${tool.purpose}`, "  ")}\n`);
		for (const key of toolKeys(tool)) console.out(keyText(key));
		console.out("\n");
	}
	console.out("Every tool also takes\n");
	for (const key of commonKeys()) console.out(keyText(key));
	return EXIT.ok;
}

/** A key with its text, what is allowed and its default. */
function keyText({ path, text, range, initial }: Key): string {
	const allowed = range ? `; ${range}` : "";
	const fallback = initial ? `; default: ${initial}` : "";
	return `${wrapText(`    ${path.join(".")}: ${text}${allowed}${fallback}`, "        ")}\n`;
}
