export * from "./cautions.js";
export * from "./kerf.js";
export * from "./materials.js";
