export * from "./compensate.js";
