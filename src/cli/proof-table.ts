import { type Fact, type Problem, problemText } from "../problem/index.js";
import { findingNumber, type Measured, type Proven } from "../proof/index.js";
import { compareBadness } from "../report/figures.js";
import { findingsText, proofSummary, summaryText } from "../report/proof-summary.js";
import { stable } from "../units/index.js";
import { wrapText } from "./console.js";
import { figureLines, LINE, seen, shortened } from "./figure-table.js";

/** Most findings told at once; all of a file have one cause, mostly. */
const MOST_TOLD = 40;
/** Claims told where something of the file itself is wrong: they follow from it, mostly. */
const FEW_TOLD = 8;
/** Longest word that is told in full: a text breaks between words. */
const LONGEST_WORD = 90;

const SEVERITIES = ["error", "warning", "note"] as const;
/** Findings that a row of figures tells in full. */
const OF_FIGURES = new Set(["claim-failed", "feature-missing", "label-wrong"]);

/** One finding, with the figures it speaks of. */
interface Told {
	readonly file: string;
	readonly finding: Problem;
	readonly measured: Measured | null;
}

/**
 * What was found in written files, for people: one line if all is well, else a table of the
 * claims that fail and the other findings by their files, worst first, and that line last.
 *
 * @param options.all - lists every claim, worst first
 */
export function proofText(proven: readonly Proven[], { all }: { readonly all: boolean }): string {
	const summary = proofSummary(proven);
	const found = findingsText(summary);
	const last = found === "" ? summaryText(summary) : `${summaryText(summary)}; ${found}`;
	const isWell = summary.errors + summary.warnings + summary.notes === 0;
	if (isWell && !all) return `${last}\n`;
	const told = proven.flatMap(toldOf);
	const lines = all
		? [...findingLines(told.filter((t) => !t.measured)), ...claimLines(proven)]
		: shortLines(told);
	return [...lines, last].map((line) => `${line}\n`).join("");
}

function toldOf({ file, measured, findings }: Proven): Told[] {
	return findings.map((finding) => {
		const { part, claim, deviation = Number.NaN } = finding.facts;
		const isIt = (m: Measured) =>
			m.part === part && m.claim.id === claim && Object.is(m.deviation, deviation);
		const own = OF_FIGURES.has(finding.code) ? measured.find(isIt) : undefined;
		return { file, finding, measured: own ?? null };
	});
}

/** What was found of files as such, then the worst claims, and how many more there are. */
function shortLines(told: readonly Told[]): string[] {
	const rank = (t: Told) => SEVERITIES.indexOf(t.finding.severity);
	const files = told.filter((t) => !t.measured).sort((a, b) => rank(a) - rank(b));
	const claims = byBadness(told.filter((t) => t.measured));
	const some = claims.slice(
		0,
		files.some((t) => t.finding.severity === "error") ? FEW_TOLD : MOST_TOLD,
	);
	const rest = claims.length - some.length + Math.max(0, files.length - MOST_TOLD);
	return [
		...findingLines(files.slice(0, MOST_TOLD)),
		...findingLines(some),
		...(rest > 0 ? [`And ${rest} more.`] : []),
	];
}

function byBadness(told: readonly Told[]): Told[] {
	return [...told].sort((a, b) => compareBadness(a.measured!, b.measured!));
}

/** Of each severity the claims in a table, then what else was found, by files. */
function findingLines(told: readonly Told[]): string[] {
	return SEVERITIES.flatMap((severity) => {
		const own = told.filter(({ finding }) => finding.severity === severity);
		const rows = own.flatMap(({ file, measured }) => (measured ? [{ ...measured, file }] : []));
		const rest = own.filter(({ measured }) => !measured);
		const files = [...new Set(rest.map(({ file }) => file))];
		const texts = files.flatMap((file) => [
			shortened(seen(file), LINE),
			...rest.filter((t) => t.file === file).map(({ finding }) => findingLine(finding)),
		]);
		return [...figureLines(rows), ...texts];
	});
}

function findingLine(finding: Problem): string {
	const words = problemText(finding).split(" ");
	const text = words.map((word) => shortened(word, LONGEST_WORD)).join(" ");
	const number = findingNumber(finding.code);
	return wrapText(`  ${finding.severity}${number === null ? "" : ` ${number}`}: ${text}`, "    ");
}

function claimLines(proven: readonly Proven[]): string[] {
	const rows = proven.flatMap(({ file, measured }) => measured.map((m) => ({ ...m, file })));
	return figureLines(rows.sort(compareBadness));
}

/** The same for machines: mm and radians; what was not found is null. */
export function proofJson(proven: readonly Proven[]) {
	const { largest, ...summary } = proofSummary(proven);
	return {
		units: "mm, rad",
		...summary,
		largest: largest === null ? null : numberOf(largest),
		proven: proven.map(({ file, measured, findings }) => ({
			file,
			measured: measured.map(measuredJson),
			findings: findings.map(findingJson),
		})),
	};
}

function measuredJson({ part, claim, value, deviation, tolerance }: Measured) {
	return {
		part,
		claim: claim.id,
		kind: claim.kind,
		feature: claim.feature,
		...(claim.kind === "label" ? { text: claim.text } : {}),
		nominal: numberOf(claim.nominal),
		value: numberOf(value),
		deviation: numberOf(deviation),
		tolerance: numberOf(tolerance),
	};
}

function findingJson(finding: Problem) {
	const plain = (fact: Fact) => (typeof fact === "number" ? numberOf(fact) : fact);
	const facts = Object.entries(finding.facts).map(([key, fact]) => [key, plain(fact)] as const);
	const number = findingNumber(finding.code);
	return { ...finding, number, facts: Object.fromEntries(facts), text: problemText(finding) };
}

/** A number that the one formatter can write; null for any other. */
function numberOf(value: number): number | null {
	return Math.abs(value) < 1e15 ? stable(value) : null;
}
