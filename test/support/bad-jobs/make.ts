import { jobText, making } from "../job-text.js";
import { type BadJob, bad, gauge } from "./bad-job.js";

export const MAKE: readonly BadJob[] = [
	bad(
		"nothing to make",
		jobText(/make:[\s\S]*/u, "make: []\n"),
		"make-empty",
		"[]",
		"radius-gauge",
	),
	bad("a number for a tool", making("55"), "make-entry", "55", "55 is no tool"),
	bad(
		"two tools in one entry",
		making("{radius-gauge: {}, slot-strip: {}}"),
		"make-entry",
		"{radius",
		"is no tool",
	),
	bad(
		"an unknown tool",
		making("radius-gage"),
		"unknown-tool",
		"radius-gage",
		'"radius-gauge"?',
		"slot-strip",
	),
	bad(
		"an unknown tool with settings",
		making("slot-stripe: {slots: tang}"),
		"unknown-tool",
		"{slots",
		'"slot-strip"?',
	),
	bad(
		"a tool twice",
		making("radius-gauge", "radius-gauge: {}"),
		"same-name",
		"{}",
		'"radius-gauge"',
		"name:",
	),
	bad(
		"two names that files write alike",
		making("radius-gauge: {name: Gauge 1}", "slot-strip: {name: gauge-1}"),
		"same-name",
		"{name: gauge-1",
		'"gauge-1"',
	),
	bad(
		"a part called like another tool's",
		making("radius-gauge: {name: x}", "slot-strip: {name: x-concave}"),
		"same-name",
		"{name: x-c",
		'"x-concave"',
	),
	bad("a station twice", gauge("{at: [nut, 7, nut]}"), "same-part", "{at", "nut", "twice"),
	bad("settings that are no map", gauge("[nut]"), "wrong-kind", "[nut]", "key: value"),
	bad(
		"stations beside radii",
		gauge("{at: [nut], radii: [12 in]}"),
		"at-or-radii",
		"[12 in]",
		"at",
		"radii",
	),
];
