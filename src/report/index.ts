export * from "./figures.js";
export type { FitBlock, ReadLineSlots } from "./fit-block.js";
export * from "./fit-blocks.js";
export * from "./proof-summary.js";
export * from "./report-facts.js";
export * from "./report-html.js";
export { rangeOf } from "./residual-plot.js";
