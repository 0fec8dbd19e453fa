export * from "./cautions.js";
export * from "./materials.js";
