export * from "./dxf.js";
export * from "./svg.js";
