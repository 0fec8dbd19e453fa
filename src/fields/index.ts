export * from "./division.js";
export * from "./given-length.js";
export * from "./length.js";
export * from "./machine.js";
export * from "./paper.js";
export * from "./readings.js";
export * from "./station.js";
export * from "./values.js";
