import { kerfIn } from "../cutting/index.js";
import type { Part } from "../drawing/index.js";
import { trimmed } from "../units/index.js";
import { parentElement, textElement } from "../writers/xml.js";
import { facts, list, parentRow, section, tableOf } from "./blocks.js";
import { claimBlocks, MANY } from "./claim-table.js";
import { counted } from "./figures.js";
import { pictureOf, withoutBlock } from "./picture.js";
import { deviationText, largestDeviation } from "./proof-summary.js";
import type { ReportFacts } from "./report-facts.js";
import { stockText } from "./stock-text.js";
import { claimKey, type Worst } from "./worst.js";

/** All parts at a glance, each leading to its own section. */
export function partList(parts: readonly Part[], worst: Worst): string {
	const rows = parts.map((part) => {
		const link = textElement("a", { href: `#${idOf(part)}` }, part.name);
		const cells = [
			stockText(part.stock),
			String(part.layers ?? 1),
			String(part.claims.length),
			...(worst.size > 0 ? [largestText(part, worst)] : []),
		];
		return parentRow([`<td>${link}</td>`, ...cells.map((cell) => textElement("td", {}, cell))]);
	});
	const last = worst.size > 0 ? ["largest deviation"] : [];
	const heads = ["part", "stock", "layers", "claims", ...last];
	return section("Parts", {}, [
		tableOf(heads, [parentElement("tbody", {}, rows)], { class: "names" }),
		textElement("p", { class: "small" }, "Pictures are not to scale: take sizes from the figures."),
	]);
}

/** One part: its picture, what is to be known of it at the bench, and what is promised of it. */
export function partSection(part: Part, { job, drawings }: ReportFacts, worst: Worst): string {
	const { machine } = job.bench;
	const own = drawings.find(({ laid, placed }) => !laid && placed[0]?.part.name === part.name);
	const kerf = part.nominal ? 0 : (kerfIn(machine, part.stock) ?? 0);
	const isLong = part.claims.filter(({ kind }) => kind !== "label").length > MANY;
	return section(part.title, { id: idOf(part), class: isLong ? "long" : "brief" }, [
		...(own ? [pictureOf(withoutBlock(own.sheet), machine.pens)] : []),
		facts([
			["name", part.name],
			["stock", stockText(part.stock)],
			["layers", layersText(part.layers ?? 1)],
			["working edge", part.workingEdge],
			["paths", pathsText(kerf)],
		]),
		...(part.notes.length > 0 ? [list(part.notes)] : []),
		...claimBlocks(part, worst),
	]);
}

function idOf({ name }: Part): string {
	return `part-${name}`;
}

function layersText(layers: number): string {
	return layers === 1 ? "1" : `${counted(layers, "piece")} to cut and glue up`;
}

function pathsText(kerf: number): string {
	if (kerf === 0) return "nominal, moved for no kerf";
	return `moved ${trimmed(kerf / 2, 4)} mm into the waste, for a cut ${trimmed(kerf, 4)} mm wide; sizes are those of the finished part`;
}

function largestText({ name, claims }: Part, worst: Worst): string {
	const measured = claims.flatMap(({ id }) => worst.get(claimKey(name, id)) ?? []);
	const largest = largestDeviation(measured);
	return largest === null ? "" : deviationText(largest);
}
