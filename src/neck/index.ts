export * from "./camber.js";
export * from "./fret-columns.js";
export * from "./law.js";
export * from "./neck.js";
export * from "./profile.js";
export * from "./station.js";
export * from "./strings.js";
export * from "./table.js";
