import type { BadJob } from "./bad-job.js";
import { CUTTING } from "./cutting.js";
import { KEYS } from "./keys.js";
import { LENGTHS } from "./lengths.js";
import { MACHINE } from "./machine.js";
import { MAKE } from "./make.js";
import { NECK } from "./neck.js";
import { PAPER } from "./paper.js";
import { READINGS } from "./readings.js";
import { SHOP_SHEET } from "./shop-sheet.js";
import { TOOLS } from "./tools.js";
import { VALUES } from "./values.js";
import { YAML } from "./yaml.js";

export type { BadJob } from "./bad-job.js";

/** Jobs with a fault each; the file lies alone in its folder as neck.yaml. */
export const BAD_JOBS: readonly BadJob[] = [
	...LENGTHS,
	...VALUES,
	...KEYS,
	...MAKE,
	...YAML,
	...NECK,
	...TOOLS,
	...MACHINE,
	...CUTTING,
	...PAPER,
	...SHOP_SHEET,
	...READINGS,
];
