import type { OutFile } from "../drawing/index.js";
import type { Proven } from "../proof/index.js";
import { parentElement } from "../writers/xml.js";
import { row, section, tableOf } from "./blocks.js";
import { deviationText, largestDeviation } from "./proof-summary.js";

/** The files, how large they are and what came of measuring each. */
export function fileSection(files: readonly OutFile[], proven: readonly Proven[]): string {
	const rows = files.map(({ name, bytes }) => {
		const found = proven.find(({ file }) => file === name);
		return row([name, String(bytes.length), ...(found ? resultOf(found) : ["", "", ""])]);
	});
	const heads = ["file", "bytes", "claims measured", "largest deviation", "findings"];
	const table = tableOf(heads, [parentElement("tbody", {}, rows)], { class: "names" });
	return section("Files", {}, [table]);
}

function resultOf({ measured, findings }: Proven): string[] {
	const count = measured.filter(({ value }) => Number.isFinite(value)).length;
	const largest = largestDeviation(measured);
	return [
		String(count),
		largest === null ? "" : deviationText(largest),
		findings.length === 0 ? "none" : String(findings.length),
	];
}
