export * from "./compensate.js";
export * from "./cutter.js";
export * from "./layout.js";
export * from "./machine.js";
export * from "./order.js";
export * from "./stretch.js";
export * from "./tabs.js";
export * from "./work.js";
