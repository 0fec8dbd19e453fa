/** Lengths that serve something, mm; `to` may be infinite. */
export interface Span {
	readonly from: number;
	readonly to: number;
}

/** Spans that one length serves together, and the lengths that do. */
export interface Group<S extends Span> extends Span {
	readonly spans: readonly S[];
}

/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-9;

/**
 * Groups of spans so that one length lies in all of a group, at least `margin` from both ends of
 * each: as few groups as there can be.
 *
 * Greedy by right ends: take the end of the span that ends first, drop every span that it serves,
 * go on with the rest. Proof that no choice has fewer: the spans that ended first in each round lie
 * apart from each other, since each starts beyond every length taken before it. No length serves
 * two of them, so that any choice needs as many lengths as there were rounds.
 *
 * @param margin - mm, 0 or more, at most half of the narrowest span
 */
export function fewestGroups<S extends Span>(spans: readonly S[], margin: number): Group<S>[] {
	let rest = [...spans].sort((a, b) => a.to - b.to);
	const groups: Group<S>[] = [];
	while (rest.length > 0) {
		const at = rest[0]!.to - margin;
		const isServed = ({ from }: S) => from + margin <= at + ROUNDING;
		groups.push(groupOf(rest.filter(isServed)));
		rest = rest.filter((span) => !isServed(span));
	}
	return groups;
}

function groupOf<S extends Span>(spans: readonly S[]): Group<S> {
	return {
		spans,
		from: Math.max(...spans.map((s) => s.from)),
		to: Math.min(...spans.map((s) => s.to)),
	};
}

/**
 * The fewest groups, and of all ways to have so few the one whose narrowest common span is widest,
 * so that every length has room for what a cut is off by.
 *
 * The widest margin is half the way from one span's start to another's end: the margins that come
 * into question are these, and the more margin, the more groups, so that halving finds it.
 */
export function roomiestGroups<S extends Span>(spans: readonly S[]): Group<S>[] {
	const fewest = fewestGroups(spans, 0).length;
	const most = Math.min(...spans.map(({ from, to }) => (to - from) / 2));
	const ends = spans.map(({ to }) => to).filter(Number.isFinite);
	const margins = ends
		.flatMap((to) => spans.map(({ from }) => (to - from) / 2))
		.filter((m) => m >= 0 && m <= most + ROUNDING)
		.sort((a, b) => a - b);
	let [low, high] = [-1, margins.length];
	while (high - low > 1) {
		const middle = Math.floor((low + high) / 2);
		if (fewestGroups(spans, margins[middle]!).length > fewest) high = middle;
		else low = middle;
	}
	return fewestGroups(spans, margins[low] ?? 0);
}
