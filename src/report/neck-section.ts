import { fretColumns, fretTable, isFanned } from "../neck/index.js";
import type { Bench } from "../tools/index.js";
import { trimmed } from "../units/index.js";
import { parentElement } from "../writers/xml.js";
import { facts, row, section, tableOf } from "./blocks.js";

/** The neck's fret table, as `camber frets` prints it. */
export function neckSection({ neck, wire }: Pick<Bench, "neck" | "wire">): string {
	const { bass, treble } = neck.scale;
	const scale = isFanned(neck)
		? `${trimmed(bass, 4)} mm bass, ${trimmed(treble, 4)} mm treble`
		: `${trimmed(bass, 4)} mm`;
	const columns = fretColumns(neck);
	const rows = fretTable(neck).map((fret) => row(columns.map(({ cell }) => cell(fret))));
	const heads = columns.map(({ head }) => head);
	return section("Frets", { class: "brief" }, [
		facts([
			["scale", scale],
			["frets", `${neck.frets}${neck.zeroFret ? " and a zero fret" : ""}`],
			["wire crown", `${trimmed(wire.crownWidth, 3)} x ${trimmed(wire.crownHeight, 3)} mm`],
			["wire tang", `${trimmed(wire.tangWidth, 3)} x ${trimmed(wire.tangDepth, 3)} mm`],
			["lengths", "mm from the theoretical nut along the centre line"],
		]),
		tableOf(heads, [parentElement("tbody", {}, rows)]),
	]);
}
