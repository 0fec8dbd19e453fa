export { fileSafe } from "./file-safe.js";
export { nearest } from "./nearest.js";
export {
	type Job,
	type JobRead,
	type ReadOptions,
	readJob,
	USUAL_PENS,
	type Wanted,
} from "./read-job.js";
export { commonSettings, jobJsonSchema, jobSchema, toolSchema } from "./schema.js";
