import { kindText, type LabelClaim, type Part, type SizeClaim } from "../drawing/index.js";
import type { Measured } from "../proof/index.js";
import type { Remarked } from "../proof/measure.js";
import { inches, trimmed } from "../units/index.js";
import { parentElement, textElement } from "../writers/xml.js";
import { parentRow, row, tableOf } from "./blocks.js";
import { counted, figureText } from "./figures.js";
import { deviationText, largestDeviation } from "./proof-summary.js";
import { claimKey, type Worst } from "./worst.js";

/** From more claims than this a part's table stands in columns. */
export const MANY = 12;

/** What is promised of a part and what its files keep of it. */
export function claimBlocks(part: Part, worst: Worst): string[] {
	const sizes = part.claims.filter((c): c is SizeClaim => c.kind !== "label");
	const labels = part.claims.filter((c): c is LabelClaim => c.kind === "label");
	const hasAngle = sizes.some(({ kind }) => kind === "angle");
	const table = sizes.length > 0 ? [claimTable(part, sizes, worst)] : [];
	return [
		...table,
		...(hasAngle ? [textElement("p", { class: "small" }, ANGLES)] : []),
		...(labels.length > 0 ? [textElement("p", {}, labelText(part, labels, worst))] : []),
	];
}

const ANGLES = "An angle's ± is that of the ends it is measured between.";
const PROMISED = ["feature", "kind", "nominal mm", "inch", "± mm"];
const MEASURED = ["measured", "deviation"];

function claimTable({ name }: Part, sizes: readonly SizeClaim[], worst: Worst): string {
	const heads = worst.size > 0 ? [...PROMISED, ...MEASURED] : PROMISED;
	const groups = groupsOf(sizes);
	const bodies = [...groups].map(([title, claims]) => {
		const measured = claims.map((c) => worst.get(claimKey(name, c.id)));
		const rows = claims.map((claim, i) => claimRow(name, claim, measured[i], worst.size > 0));
		const head = groups.size > 1 ? [groupRow(title, measured, heads.length)] : [];
		return parentElement("tbody", {}, [...head, ...rows]);
	});
	return tableOf(heads, bodies, { class: "claims" }, sizes.length > MANY);
}

/** Series, positions from one datum, and the rest, in the order in which they first appear. */
function groupsOf(sizes: readonly SizeClaim[]): ReadonlyMap<string, SizeClaim[]> {
	const groups = new Map<string, SizeClaim[]>();
	for (const claim of sizes) {
		const key =
			claim.series ?? (claim.kind === "position" ? `positions from ${claim.datum}` : "sizes");
		groups.set(key, [...(groups.get(key) ?? []), claim]);
	}
	return groups;
}

function groupRow(
	title: string,
	measured: readonly (Measured | undefined)[],
	columns: number,
): string {
	const largest = largestDeviation(measured.flatMap((m) => m ?? []));
	const off = largest === null ? "" : `, largest deviation ${deviationText(largest)}`;
	const text = `${title}: ${counted(measured.length, "claim")}${off}`;
	return parentRow([textElement("th", { colspan: String(columns), scope: "rowgroup" }, text)]);
}

function claimRow(
	part: string,
	claim: SizeClaim,
	measured: Measured | undefined,
	isProven: boolean,
): string {
	const { id, feature, kind, nominal, bench } = claim;
	const isOff = measured !== undefined && !(Math.abs(measured.deviation) <= measured.tolerance);
	const cells = [
		feature,
		kindText(claim),
		figureText(claim, nominal),
		kind === "angle" ? "" : inches(nominal),
		trimmed(bench, 4),
		...(isProven ? measuredCells(claim, measured, isOff) : []),
	];
	return row(cells, { id: claimKey(part, id), class: isOff ? "off" : null });
}

function measuredCells(claim: SizeClaim, measured: Measured | undefined, isOff: boolean): string[] {
	if (!measured) return ["not measured", ""];
	if (Number.isNaN(measured.value)) return ["not found", ""];
	const deviation = figureText(claim, measured.deviation);
	return [figureText(claim, measured.value), isOff ? `${deviation} (off)` : deviation];
}

/** How many labels the files hold as they are promised. */
function labelText({ name }: Part, labels: readonly LabelClaim[], worst: Worst): string {
	if (worst.size === 0) return `${counted(labels.length, "label")}, not measured.`;
	const found = labels.map(({ id }): Remarked | undefined => worst.get(claimKey(name, id)));
	const isUnread = (m: Remarked | undefined) => !m || m.remark?.kind === "font-not-given";
	const unread = found.filter(isUnread).length;
	const drawn = found.filter((m) => m && Math.abs(m.deviation) <= m.tolerance).length;
	const wrong = labels.length - drawn - unread;
	return [
		`${counted(drawn, "label")} as drawn`,
		...(wrong > 0 ? [`${wrong} wrong or missing`] : []),
		...(unread > 0 ? [`${unread} not compared`] : []),
	].join(", ");
}
