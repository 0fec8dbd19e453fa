export * from "./compensate.js";
export * from "./machine.js";
