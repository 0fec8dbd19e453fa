export {
	type BoardRadius,
	fitBoard,
	type RadiusStation,
	type StationRadius,
} from "./board-radius.js";
export { type CircleFit, circleFitGeometric } from "./circle-fit-geometric.js";
export {
	highestLineBetween,
	highestLineUnder,
	type Spot,
	type StraightLine,
} from "./dress-line.js";
export { type DressedFret, type DressPlan, planDressing } from "./dress-plan.js";
export type { Estimate } from "./estimate.js";
export {
	type FannedFit,
	type FannedOptions,
	type FannedReadings,
	fitFanned,
} from "./fanned-fit.js";
export type { FittedSlot } from "./fitted-slots.js";
export {
	type FretHeights,
	type FretHeightsReading,
	type FretReading,
	type FretTop,
	fitFretHeights,
} from "./fret-heights.js";
export type { Comparison } from "./law-choice.js";
export { combinedRadius } from "./radius-combined.js";
export type { RadiusEstimate, ReadingPath } from "./radius-estimate.js";
export {
	type BarReading,
	type ChordReading,
	type HeightsReading,
	type LightReading,
	type RadiusReading,
	radiusFrom,
	type Wanted,
} from "./radius-reading.js";
export { fitScale, type ScaleFit, type ScaleOptions, type ScaleThrough } from "./scale-fit.js";
export type { LawKind } from "./scale-laws.js";
export { lawName } from "./scale-notes.js";
export type { ReadingsPath, RuleZero, SlotReading } from "./slot-readings.js";
export {
	fitWire,
	type Spread,
	spreadOf,
	type WireFit,
	type WireReading,
	type WireSize,
} from "./spread.js";
export { fitRelief, type Relief, type ReliefPoint } from "./straightness.js";
export { type BarSpan, type Straightedge, sagAt } from "./straightness-bar.js";
export { alongOf, camberOver, type ReadLine, readLine } from "./straightness-line.js";
export type { GapReading, StraightnessReading } from "./straightness-reading.js";
export type { Undecided } from "./undecided.js";
export { type Separation, separation, usualRadiiNotes } from "./usual-radii.js";
export type { UsualScale } from "./usual-scales.js";
export {
	type BoardWidth,
	type FittedWidth,
	fitWidth,
	type WidthPlace,
	type WidthReading,
} from "./width-fit.js";
