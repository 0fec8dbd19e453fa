export * from "./claim.js";
export { partExtents } from "./dimension.js";
export * from "./operation.js";
export * from "./outline.js";
export * from "./part.js";
export * from "./sheet.js";
export * from "./sheet-of-many.js";
export * from "./sheet-of-one.js";
export * from "./title-block.js";
