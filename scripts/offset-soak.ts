/**
 * Judges offsets of many random contours by the definition of an offset; a number of trials of
 * each kind and the first seed may be given. Ends with 1 if one of them is wrong.
 *
 * npx esbuild scripts/offset-soak.ts --bundle --platform=node --format=esm |
 *   node --input-type=module - 10000 1
 */
import { outcomeOf, TRIALS, type TrialKind } from "../test/support/offset-trials.js";

const [count = 1000, first = 1] = process.argv.slice(2).map(Number);
let failures = 0;
for (const kind of Object.keys(TRIALS) as TrialKind[]) {
	const start = performance.now();
	let wrong = 0;
	let worst = 0;
	let points = 0;
	for (let seed = first; seed < first + count; seed++) {
		const outcome = outcomeOf(kind, seed);
		worst = Math.max(worst, outcome.error);
		points += outcome.tested;
		if (outcome.wrong === null) continue;
		wrong++;
		if (wrong <= 10) console.log(outcome.wrong);
	}
	const seconds = ((performance.now() - start) / 1000).toFixed(1);
	console.log(
		`${kind}: ${wrong} of ${count} wrong, worst error ${worst.toExponential(1)} mm, ` +
			`${points} points looked at, ${seconds} s`,
	);
	failures += wrong;
}
process.exitCode = failures > 0 ? 1 : 0;
