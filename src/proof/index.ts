export * from "./judge.js";
export * from "./numbers.js";
export * from "./place.js";
export * from "./promised.js";
export * from "./prove.js";
export * from "./read-dxf.js";
export * from "./read-svg.js";
export * from "./types.js";
