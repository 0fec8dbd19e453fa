export * from "./body.js";
export * from "./correction.js";
export * from "./document.js";
export * from "./paper.js";
export * from "./pens.js";
export * from "./print.js";
export * from "./rule-ink.js";
export * from "./tiles.js";
