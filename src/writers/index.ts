export * from "./dxf.js";
export * from "./pdf.js";
export * from "./svg.js";
