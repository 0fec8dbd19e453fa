export * from "./format.js";
export * from "./length.js";
