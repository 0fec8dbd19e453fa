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
import { TOOLS_BLOCK } from "./tools-block.js";
import { TOOLS_CAMBER } from "./tools-camber.js";
import { TOOLS_SCALE } from "./tools-scale.js";
import { TOOLS_SETUP } from "./tools-setup.js";
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
	...TOOLS_SETUP,
	...TOOLS_SCALE,
	...TOOLS_CAMBER,
	...TOOLS_BLOCK,
];
