export * from "./layout.js";
export * from "./lettering.js";
export * from "./load.js";
export * from "./outline.js";
export * from "./stroke.js";
