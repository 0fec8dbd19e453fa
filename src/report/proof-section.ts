import { problemText } from "../problem/index.js";
import { findingNumber, type Proven } from "../proof/index.js";
import { textElement } from "../writers/xml.js";
import { list, section } from "./blocks.js";
import { findingsText, proofSummary, summaryText } from "./proof-summary.js";

const NOTHING = "Nothing was measured: these files were written without proof.";
const MEASURED =
	"Each file was read again by its bytes alone and measured against what is promised of its parts. Where several files show a part, the figures below are those of the file that keeps them worst.";

/** What came of measuring the files. */
export function proofSection(proven: readonly Proven[]): string {
	if (proven.length === 0) return section("Proof", {}, [textElement("p", {}, NOTHING)]);
	const summary = proofSummary(proven);
	const found = findingsText(summary) || "nothing found wrong";
	const findings = proven.flatMap(({ file, findings }) =>
		findings.map((f) => `${f.severity} ${findingNumber(f.code) ?? ""}, ${file}: ${problemText(f)}`),
	);
	return section("Proof", {}, [
		textElement("p", {}, `${summaryText(summary)}; ${found}.`),
		...(findings.length > 0 ? [list(findings)] : []),
		textElement("p", { class: "small" }, MEASURED),
	]);
}
