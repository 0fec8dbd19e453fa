/**
 * camber: one neck's measurements in, true-to-scale templates out. Lengths are millimetres,
 * angles radians, y is up.
 */
export type { Bed, Machine, Speeds, StockKerf, Tabs, Work } from "./cutting/index.js";
export type {
	Claim,
	LabelClaim,
	Mark,
	Note,
	Operation,
	OutFile,
	Part,
	Pen,
	Pens,
	Placed,
	Sheet,
	SizeClaim,
} from "./drawing/index.js";
export * from "./geometry/index.js";
export {
	type Job,
	type JobRead,
	jobJsonSchema,
	loadJob,
	type MachineFile,
	type ReadOptions,
	readJob,
} from "./job/index.js";
export { type Lettering, loadLettering } from "./lettering/index.js";
export {
	type Drawing,
	FORMATS,
	type Format,
	type Made,
	type MadeTool,
	type MakeOptions,
	make,
	type WrittenPrint,
} from "./make.js";
export * from "./neck/index.js";
export type { Paper, Print, PrintedPage, Rule, Tile } from "./paper/index.js";
export { type Problem, pathText, placeText, problemText } from "./problem/index.js";
export {
	type Measured,
	type Promised,
	type PromisedFile,
	type PromisedPage,
	type PromisedPart,
	type PromisedPrint,
	type Proven,
	Prover,
	promisedOf,
	prove,
} from "./proof/index.js";
export * from "./readings/index.js";
export {
	type Bench,
	type Built,
	TOOLS,
	type Tool,
	type Wire,
} from "./tools/index.js";
export { fixed, inches, parseLength, sixtyFourth, type Unit } from "./units/index.js";
export { VERSION } from "./version.js";
export { type DxfFlavour, writeDxf, writePdf, writeSvg } from "./writers/index.js";
