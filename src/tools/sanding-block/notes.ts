import { arcLengthOfChord } from "../../geometry/index.js";
import { isFanned, type Neck, radiusAt } from "../../neck/index.js";
import { fixed, trimmed } from "../../units/index.js";
import type { Bench } from "../tool.js";
import { boardLength, boardShape, isOneCone, outermostShare } from "./board.js";
import type { Crate, Joints } from "./crate.js";
import type { BlockSettings } from "./settings.js";

/** What the person at the bench must know of the ribs. */
export function ribNotes(bench: Bench, s: BlockSettings, crate: Crate): string[] {
	return [
		`Cut ${crate.count} of it${crate.joints ? ", and two rails" : ""}.`,
		gritNote(s, crate),
		...(crate.joints
			? skinNotes(s, crate, crate.joints)
			: [
					`Stack ${crate.count} ribs face on face, ${fixed(crate.length, 1)} mm long, and glue them.`,
				]),
		...(crate.dowels
			? [
					"The dowels go through all ribs and hold their working edges in one line: fit them before glue.",
				]
			: [
					"Without dowels only a flat plate under the upper edges holds the ribs in line: glue them on one.",
				]),
		...useNotes(bench, s),
		"Sanding: wear a dust mask and eye protection and use extraction; dust of fret wire is metal, dust of some woods irritates skin and lungs. The rules and licensed practice where you work govern.",
	];
}

function gritNote(
	{ skin, abrasive, for: surface }: BlockSettings,
	{ radius, grit }: Crate,
): string {
	const layers = [
		...(skin > 0 ? [`skin ${trimmed(skin, 3)}`] : []),
		`abrasive ${trimmed(abrasive, 3)}`,
	];
	if (radius === null || grit === null) {
		return `Straight ribs: ${layers.join(" and ")} mm over them change nothing as long as they are even.`;
	}
	const where = surface === "crowns" ? "the crowns' tops" : "the wood";
	return `The grit works at ${fixed(grit, 3)} mm, on ${where}: ribs ${fixed(radius, 3)} less ${layers.join(" less ")} mm. Measure both layers with a caliper before you cut: the radius is off by what they are off.`;
}

function skinNotes(s: BlockSettings, { radius, width, length }: Crate, joints: Joints): string[] {
	const across = radius === null ? width : arcLengthOfChord(radius, width);
	return [
		`Skin: a sheet ${trimmed(s.skin, 3)} mm thick, ${fixed(across, 1)} mm across the block and ${fixed(length, 1)} mm along it, of thin plywood or hardboard; it ${radius === null ? "lies on" : "is bent over"} the ribs and carries the abrasive.`,
		`The joints' slots are ${fixed(joints.width, 3)} mm wide, the sheet's thickness ${s["joint-fit"] < 0 ? "less" : "and"} ${fixed(Math.abs(s["joint-fit"]), 3)} mm: measure your sheet, and try the fit on a coupon.`,
		"Assemble dry with the upper edges down on a flat plate, so that ribs and rails lie on it with their whole length; the slots are a little deeper than half and do not bear. Then glue.",
	];
}

/** How it is used on this board, and what it cannot do there. */
function useNotes({ neck }: Bench, s: BlockSettings): string[] {
	const shape = boardShape(neck);
	if (shape === "compound") return compoundNotes(neck);
	if (shape === "flat") return ["Work lengthwise over the whole width of the board."];
	if (s.form === "flat") {
		return [
			"Keep the beam along the centre line's direction: on this board any other way planes it off.",
		];
	}
	return [
		`Keep the block along the centre line: turned askew it sands a flatter radius.${isFanned(neck) ? " Slanted frets change nothing in this." : ""}`,
	];
}

/** Lines of constant y/R, on which a beam bears all along: rulings of the cone. */
function compoundNotes(neck: Neck): string[] {
	const share = outermostShare(neck);
	const last = boardLength(neck);
	const line = (part: number) => {
		const at = (x: number) => fixed(share * part * radiusAt(neck, x)!, 1);
		return `${at(0)} at the nut and ${at(last)} at the last fret`;
	};
	return [
		"Compound board: a block of one radius fits it at one place only, so this is a flat beam. It bears all along only on lines on which the distance y from the centre line grows as the radius, y/R constant; the strings do not lie on these unless their spread grows as the radius.",
		`Such lines of this board, mm off the centre line to either side: ${line(0.5)}; ${line(1)}, the outermost. And the centre line itself. Draw them with a pencil, lay the beam along each in turn, and work from one to the next.`,
		...(isOneCone(neck)
			? []
			: [
					"The radius of this board grows at more than one rate: these lines have a kink where the rate changes. Work each stretch by itself, with a beam no longer than it.",
				]),
	];
}

/** What the person at the bench must know of the rails. */
export function railNotes({ radius }: Crate): string[] {
	return [
		"Cut two. Upper edges flush with the ribs'; the slots open downward.",
		radius === null ? "Lower edges bear with the ribs'." : "Lower edges stay clear of the skin.",
	];
}
