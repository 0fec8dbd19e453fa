import type { Machine } from "../cutting/index.js";
import { trimmed } from "../units/index.js";
import { facts, section } from "./blocks.js";

/** The machine as the job knows it. */
export function machineSection(machine: Machine): string {
	const { kind, tolerance, cutter, tabs, bed, stretch } = machine;
	const isStretched = stretch.x !== 1 || stretch.y !== 1;
	const entries: (readonly [string, string])[] = [
		["kind", kind],
		["tolerance", `±${mm(tolerance)}`],
		["kerf", kerfText(machine)],
		...(cutter === null ? [] : [["cutter", mm(cutter)] as const]),
		...(tabs === null ? [] : [["tabs", `${tabs.count}, each ${mm(tabs.width)}`] as const]),
		...(bed === null ? [] : [["bed", bedText(bed)] as const]),
		...(isStretched ? [["stretch", stretchText(stretch)] as const] : []),
	];
	return section("Machine", {}, [facts(entries)]);
}

function mm(value: number): string {
	return `${trimmed(value, 4)} mm`;
}

function kerfText({ kerf }: Machine): string {
	if (typeof kerf === "number") return kerf === 0 ? "none: nominal contours" : mm(kerf);
	const entries = kerf.map((k) => `${k.material} ${mm(k.thickness)}: ${mm(k.kerf)}`);
	return entries.join(", ");
}

function bedText({ size, margin, spacing }: NonNullable<Machine["bed"]>): string {
	const { x, y } = size;
	return `${trimmed(x, 3)} x ${mm(y)}, margin ${mm(margin)}, spacing ${mm(spacing)}`;
}

function stretchText({ x, y }: Machine["stretch"]): string {
	return `the machine makes ${trimmed(x, 6)} of 1 along x and ${trimmed(y, 6)} along y; the files make up for it`;
}
