/**
 * Places as near as possible to the wanted ones (least squares) that keep a distance.
 *
 * With the i-th place lowered by i·gap the demand is only that places do not fall: isotonic
 * regression by pooling neighbours that are out of order.
 *
 * @param wanted - rising
 * @param gap - least distance between neighbours
 * @example spread([0, 1, 10], 4) // [-1.5, 2.5, 10]
 */
export function spread(wanted: readonly number[], gap: number): number[] {
	const pools: { sum: number; count: number }[] = [];
	wanted.forEach((x, i) => {
		pools.push({ sum: x - i * gap, count: 1 });
		for (;;) {
			const last = pools.at(-1)!;
			const before = pools.at(-2);
			if (!before || before.sum / before.count <= last.sum / last.count) break;
			pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
		}
	});
	const lowered = pools.flatMap(({ sum, count }) => Array<number>(count).fill(sum / count));
	return lowered.map((x, i) => x + i * gap);
}
