export * from "./board-radius.js";
export * from "./circle-fit-geometric.js";
export * from "./dress-line.js";
export * from "./dress-plan.js";
export type { Estimate } from "./estimate.js";
export * from "./fanned-fit.js";
export type { FittedSlot } from "./fitted-slots.js";
export * from "./fret-heights.js";
export * from "./law-choice.js";
export * from "./radius-combined.js";
export type { RadiusEstimate, ReadingPath } from "./radius-estimate.js";
export * from "./radius-reading.js";
export * from "./scale-fit.js";
export * from "./scale-laws.js";
export { lawName } from "./scale-notes.js";
export * from "./slot-readings.js";
// By name: the least squares have a spreadOf of their own, which stays inside.
export {
	fitWire,
	type Spread,
	spreadOf,
	type WireFit,
	type WireReading,
	type WireSize,
} from "./spread.js";
export * from "./statistics.js";
export * from "./straightness.js";
export * from "./straightness-bar.js";
export * from "./straightness-line.js";
export * from "./straightness-reading.js";
export * from "./undecided.js";
export * from "./usual-radii.js";
export * from "./usual-scales.js";
export * from "./width-fit.js";
