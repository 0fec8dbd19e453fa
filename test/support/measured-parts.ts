import { compensated, withTabs } from "../../src/cutting/index.js";
import type { Claim, Part } from "../../src/drawing/index.js";
import { around, extents } from "../../src/geometry/index.js";
import type { Cutter } from "../../src/proof/cut.js";
import { measurePart, type Remarked } from "../../src/proof/measure.js";
import type { PromisedPart, ReadStroke } from "../../src/proof/types.js";
import type { MachineKind } from "../../src/shop/index.js";
import { LETTERS } from "./made-parts.js";

/** Strokes as a file of one part holds them, in the part's own frame. */
export function strokesOf(part: Part): ReadStroke[] {
	return part.marks.map(({ operation, path }) => ({ operation, layer: operation, path }));
}

/** What a manifest promises of a part that is drawn for a kerf. */
export function promisedOf(part: Part, kerf: number): PromisedPart {
	const { name, tool, stock, claims, working } = part;
	const cuts = part.marks.filter(({ operation }) => operation === "cut").map((m) => m.path);
	return {
		name,
		tool,
		stock,
		claims,
		working,
		box: around(part.marks.map((m) => extents(m.path))),
		marks: {},
		open: cuts.filter((path) => !path.closed).length,
		outline: cuts,
		scores: part.marks.filter((m) => m.operation === "score").map((m) => m.path),
		kerf: part.nominal ? 0 : kerf,
		nominal: part.nominal === true,
	};
}

/** A part moved for a kerf, with tabs if they are asked for; null if it refuses either. */
export function cutPart(
	part: Part,
	kerf: number,
	tabs: number,
	kind: MachineKind = "laser",
): Part | null {
	const moved = compensated(part, kerf);
	if (!moved.ok) return null;
	if (tabs === 0) return moved.part;
	const held = withTabs(moved.part, { count: tabs, width: 1 }, { kind, tolerance: 0.05, kerf });
	return "marks" in held ? held : null;
}

/** Every claim of a part measured in its own marks. */
export function measuredIn(part: Part, kerf = 0, cutter: Cutter | null = null): Remarked[] {
	return measurePart(promisedOf(part, kerf), strokesOf(part), LETTERS, cutter);
}

/** A measured claim that is off by more than `by`, not found or remarked, in words. */
export function faultsBeyond(
	measured: readonly Remarked[],
	by: (claim: Claim) => number,
): string[] {
	return measured
		.filter((m) => !(Math.abs(m.deviation) <= by(m.claim)) || m.remark)
		.map(
			(m) => `${m.part} ${m.claim.id}: ${m.value}, not ${m.claim.nominal} ${m.remark?.kind ?? ""}`,
		);
}
