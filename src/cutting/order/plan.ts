import type { Point } from "../../geometry/index.js";
import { TRAVELLED } from "../work.js";
import { chain } from "./chain.js";
import { EXACT } from "./exact-legs.js";
import type { Job } from "./job.js";
import { GAIN, type Step } from "./leg.js";
import { partOrders } from "./part-order.js";

/** Elementary steps that an exact search may take where it is only scored or engraved. */
const EXACT_DRAWN = 1e5;

/** Most parts for which every one is tried as the last. */
const FEW_PARTS = 6;

/** By how much a sheet's cuts may be farther apart than need be if scores and texts gain by it. */
const SPARE = 0.05;

/** A sheet's order of work and its ways, mm. */
interface Plan {
	readonly jobs: readonly Job[];
	readonly steps: ReadonlyMap<Job, readonly Step[]>;
	readonly cutTravel: number;
	readonly travel: number;
	/** Where the head stands when cutting begins. */
	readonly cutFrom: Point;
}

/** The best of the plans that begin and end with different parts. */
export function bestPlan(jobs: readonly Job[], home: Point): Plan {
	const drawn = jobs.some(({ stops }) => stops.score.length + stops.engrave.length > 0);
	const orderFrom = partOrders(jobs);
	const first = planOf(orderFrom(home), home);
	if (!drawn || jobs.length < 2) return first;
	// Where the engraving ends depends on the order of parts, and the best order on where it ends.
	const plans = [first];
	const add = (order: readonly Job[]) => {
		const isNew = plans.every(({ jobs }) => jobs.some((job, i) => job !== order[i]));
		if (isNew) plans.push(planOf(order, home));
	};
	add(orderFrom(first.cutFrom));
	for (const last of jobs.length <= FEW_PARTS ? jobs : []) {
		for (let round = 0; round < 2; round++) {
			const known = plans.find((plan) => plan.jobs.at(-1) === last);
			add(orderFrom(known?.cutFrom ?? last.centre, last));
		}
	}
	const least = Math.min(...plans.map(({ cutTravel }) => cutTravel));
	return plans
		.filter(({ cutTravel }) => cutTravel <= least * (1 + SPARE) + GAIN)
		.reduce((a, b) => (b.travel < a.travel - GAIN ? b : a));
}

/** All operations, part by part in a given order. */
function planOf(jobs: readonly Job[], home: Point): Plan {
	const steps = new Map<Job, Step[]>(jobs.map((job) => [job, []]));
	let at = home;
	let travel = 0;
	let cutTravel = 0;
	let cutFrom = home;
	for (const operation of TRAVELLED) {
		const busy = jobs.filter(({ stops }) => stops[operation].length > 0);
		if (operation === "cut") cutFrom = at;
		const legs = chain(
			busy.map(({ stops }) => stops[operation]),
			busy.map(({ centre }) => centre),
			at,
			// Drawn marks end toward the part that is cut first.
			operation === "cut" ? { steps: EXACT } : { steps: EXACT_DRAWN, toward: jobs[0]!.centre },
		);
		legs.forEach((leg, i) => {
			steps.get(busy[i]!)!.push(...leg.steps);
			travel += leg.travel;
			if (operation === "cut") cutTravel += leg.travel;
			at = leg.to;
		});
	}
	return { jobs, steps, cutTravel, travel, cutFrom };
}
