import { problemText } from "../problem/index.js";
import type { SkippedTool } from "../stages/build.js";
import { emptyElement, parentElement, textElement } from "../writers/xml.js";
import { list, section } from "./blocks.js";
import { fileSection } from "./file-section.js";
import { fitSections } from "./fit-section.js";
import { machineSection } from "./machine-section.js";
import { neckSection } from "./neck-section.js";
import { paperSection } from "./paper-section.js";
import { partList, partSection } from "./part-section.js";
import { proofSection } from "./proof-section.js";
import type { ReportFacts } from "./report-facts.js";
import { sheetSection } from "./sheet-section.js";
import { STYLE } from "./style.js";
import { worstByClaim } from "./worst.js";

/**
 * `report.html`: what was made and what came of measuring it, to be read or printed. One
 * well-formed page that holds its pictures and asks for nothing else; no scripts.
 *
 * Texts are escaped, figures pass the one formatter, and the same facts give the same text.
 *
 * @example reportHtml(facts) // '<!DOCTYPE html>\n<html lang="en">…'
 */
export function reportHtml(facts: ReportFacts): string {
	const { job, tools, drawings, proven, cautions } = facts;
	const { bench } = job;
	const worst = worstByClaim(proven);
	const parts = tools.flatMap((tool) => tool.parts);
	const sheets = drawings.filter(({ laid }) => laid !== null);
	const head = [
		textElement("h1", {}, bench.job),
		...(bench.date === null ? [] : [textElement("p", {}, bench.date)]),
	];
	const body = [
		parentElement("header", {}, head),
		machineSection(bench.machine),
		proofSection(proven),
		partList(parts, worst),
		...parts.map((part) => partSection(part, facts, worst)),
		...(facts.skipped.length === 0
			? []
			: [section("Not made", {}, [list(facts.skipped.map(reasonOf))])]),
		...sheets.map((drawing, i) => sheetSection(drawing, i, sheets.length, bench.machine.pens)),
		...fitSections(job),
		...paperSection(facts.prints),
		...(tools.every(({ wanted }) => wanted.tool.neckless) ? [] : [neckSection(bench)]),
		fileSection(facts.files, proven),
		section("Cautions", {}, [list(cautions)]),
	];
	return `<!DOCTYPE html>\n${parentElement("html", { lang: "en" }, [
		parentElement("head", {}, headElements(bench.job)),
		parentElement("body", {}, body),
	])}\n`;
}

function reasonOf({ wanted, reasons }: SkippedTool): string {
	return `${wanted.tool.id}: ${reasons.map(problemText).join(" ")}`;
}

function headElements(job: string): string[] {
	return [
		emptyElement("meta", { charset: "utf-8" }),
		emptyElement("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
		textElement("title", {}, `${job}: report`),
		`<style>\n${STYLE}</style>`,
	];
}
