export { fileSafe } from "./file-safe.js";
export { isUneven } from "./fit-neck.js";
export { loadJob } from "./load-job.js";
export { BY_HAND } from "./machine-of.js";
export { nearest } from "./nearest.js";
export {
	type Job,
	type JobRead,
	type ReadOptions,
	readJob,
	type Wanted,
} from "./read-job.js";
export { type MachineFile, readMachine } from "./read-machine.js";
export { jobJsonSchema } from "./schema.js";
export { withFit } from "./with-fit.js";
