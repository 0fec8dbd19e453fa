import { type ReadLineSlots, rangeOf } from "../report/index.js";
import { fixed, trimmed } from "../units/index.js";

/** Signs on either side of the middle. */
const HALF = 24;

/** Residuals by fret as text: a line a fret, `*` where the slot lies, `O` where it is out. */
export function residualChart({ line, slots }: ReadLineSlots): string {
	const range = rangeOf(slots.map(({ residual }) => residual));
	const head = `${line === "" ? "" : `${line} string, `}read less law, mm: -${trimmed(range, 2)} to +${trimmed(range, 2)}`;
	const lines = slots.map(({ fret, residual, isOdd }) => {
		const at = Math.round((residual / range) * HALF) + HALF;
		const signs = Array.from({ length: 2 * HALF + 1 }, (_, i) => {
			if (i === at) return isOdd ? "O" : "*";
			return i === HALF ? "|" : " ";
		});
		return `${String(fret).padStart(4)} ${signs.join("")} ${residual > 0 ? "+" : ""}${fixed(residual, 3)}`.trimEnd();
	});
	return [head, ...lines].join("\n");
}
