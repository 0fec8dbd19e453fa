export * from "./problem.js";
export * from "./wording.js";
