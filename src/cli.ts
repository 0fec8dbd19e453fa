export { run } from "./cli/main.js";
