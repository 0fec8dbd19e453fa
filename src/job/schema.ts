import * as z from "zod";
import {
	choiceField,
	countField,
	describe,
	fault,
	flagField,
	kelvinField,
	type LengthRange,
	lengthField,
	readingsField,
	textField,
} from "../fields/index.js";
import { MATERIAL_NAMES, type MaterialName, NEVER_ON_A_LASER } from "../shop/index.js";
import { TOOLS, type Tool } from "../tools/index.js";
import { KITS, type Kit, toolsOf } from "../tools/kits.js";
import type { Unit } from "../units/index.js";
import { fileSafe } from "./file-safe.js";
import { machineSchema } from "./machine-schema.js";
import { nearest } from "./nearest.js";
import { neckSchema, type SchemaOptions } from "./neck-schema.js";
import { paperSchema, printerSchema } from "./paper-schema.js";

const materialField = z
	.string()
	.transform((given, ctx): MaterialName => {
		const name = given.trim().toLowerCase();
		const never = NEVER_ON_A_LASER[name];
		if (never) fault(ctx, "material-never", { given, reason: never });
		else if (!(MATERIAL_NAMES as string[]).includes(name)) {
			const guess = nearest(name, MATERIAL_NAMES);
			fault(ctx, "material-unknown", { given, guess, allowed: MATERIAL_NAMES.join(", ") });
		}
		return name as MaterialName;
	})
	.meta({
		description: "What the parts are cut from",
		kind: "choice",
		range: MATERIAL_NAMES.join(", "),
		enum: MATERIAL_NAMES,
	});

/** A text that becomes part of file names: some of it must be left there. */
function nameField(text: string) {
	return textField({ most: 60 }, { text }).superRefine((name, ctx) => {
		if (fileSafe(name) === "") fault(ctx, "name-unwritable", { given: name });
	});
}

/** The sheet that parts are cut from; a tool may have its own. */
function stockSchema(unit: Unit) {
	return z.strictObject({
		material: materialField,
		thickness: lengthField(unit, { from: 0.2, to: 60 }, { text: "Thickness of the sheet" }),
		grain: choiceField(["x"], {
			text: "x: the grain runs along the parts, which are then not turned on the bed",
		}).optional(),
	});
}

/** The mean of readings, of which there is one at least. */
export function meanOf(readings: readonly number[]): number {
	return readings.reduce((a, b) => a + b, 0) / readings.length;
}

/** The job file's blocks. `make` is open here: each entry is read by its tool's own schema. */
export function jobSchema(options: SchemaOptions) {
	const { unit } = options;
	const read = (range: LengthRange, text: string) => readingsField(unit, range, { text });
	return z.strictObject({
		format: z.literal(1).meta({
			description: "Version of the job file's form",
			kind: "number",
			range: "1",
		}),
		job: nameField("Name of the job: on the parts and in file names"),
		date: textField({ most: 30 }, { text: "Printed in the title block if given" }).optional(),
		units: choiceField(["mm", "cm", "m", "in"], {
			text: "What a number without unit means",
		}).default("mm"),
		neck: neckSchema(options),
		wire: z
			.strictObject({
				"crown-width": read({ from: 0.5, to: 8 }, "Width of the wire's crown"),
				"crown-height": read({ from: 0.3, to: 4 }, "Height of the crown above the board"),
				"tang-width": read({ from: 0.2, to: 3 }, "Thickness of the tang, without its beads"),
				"tang-depth": read({ from: 0.5, to: 6 }, "Depth of the tang below the crown"),
			})
			.superRefine((wire, ctx) => {
				const [tang, crown] = [meanOf(wire["tang-width"]), meanOf(wire["crown-width"])];
				if (tang >= crown) fault(ctx, "tang-wider-than-crown", { tang, crown }, ["tang-width"]);
			}),
		stock: stockSchema(unit),
		machine: machineSchema(unit).prefault({}),
		paper: paperSchema(unit),
		printer: printerSchema(unit),
		shop: z
			.strictObject({
				"temperature-swing": kelvinField(
					{ from: 0, to: 60 },
					{ text: "How far the shop's temperature goes either way from the day of the cut" },
				).prefault("10 K"),
			})
			.prefault({}),
		lettering: z
			.strictObject({
				font: textField(
					{ most: 400 },
					{
						text: "A TTF or OTF file, from the job file's folder",
					},
				).optional(),
			})
			.prefault({}),
		make: z.array(z.unknown()).meta({
			...describe({ text: "The tools to make, each by name or with settings" }),
			kind: "list",
			range: `[${[...TOOLS, ...KITS].map(({ id }) => id).join(", ")}]`,
		}),
	});
}

export type JobValues = z.output<ReturnType<typeof jobSchema>>;
export type NeckValues = JobValues["neck"];

/** What every tool's entry may hold besides the tool's own settings. */
export function commonSettings(unit: Unit) {
	return {
		name: nameField("Name of the part and its files; needed where a tool is used twice").optional(),
		stock: stockSchema(unit)
			.optional()
			.meta({
				...describe({ text: "Its own sheet instead of the job's" }),
				kind: "map",
				range: "{material: steel, thickness: 0.5 mm}",
			}),
		layers: countField(
			{ from: 1, to: 20 },
			{ text: "Pieces of it to cut, glued up to one part of that thickness" },
		).default(1),
		tabs: flagField({
			text: "Whether the machine's tabs hold it; a part that works all around has no room for them, a kerf-coupon has none",
		}).default(true),
	};
}

/** One tool's entry under `make`. */
export function toolSchema(tool: Tool, unit: Unit) {
	return tool.settings(unit).extend(commonSettings(unit));
}

/** A kit's entry under `make`: tools to leave out, and settings for those that stay. */
export function kitSchema(kit: Kit, unit: Unit) {
	const ids = kit.tools.map(({ id }) => id) as [string, ...string[]];
	const settings = toolsOf(kit).map((tool) => [tool.id, toolSchema(tool, unit).optional()]);
	return z.strictObject({
		without: z
			.array(choiceField(ids, { text: "A tool to leave out" }))
			.optional()
			.meta({
				...describe({ text: "Tools to leave out" }),
				kind: "list",
				range: `[${ids.join(", ")}]`,
			}),
		...(Object.fromEntries(settings) as Record<string, z.ZodType>),
	});
}

/** JSON Schema (draft 2020-12) of a job file, for editors that complete and check. */
export function jobJsonSchema(): object {
	const options: SchemaOptions = { unit: "mm", allowUnusual: false };
	const names = [...TOOLS, ...KITS].map(({ id }) => id) as [string, ...string[]];
	const entries = [
		...TOOLS.map((tool) => z.strictObject({ [tool.id]: toolSchema(tool, "mm") })),
		...KITS.map((kit) => z.strictObject({ [kit.id]: kitSchema(kit, "mm") })),
	];
	const whole = jobSchema(options).extend({
		make: z
			.array(z.union([z.enum(names), ...entries]))
			.min(1)
			.meta(describe({ text: "The tools to make, each by name or with settings" })),
	});
	return z.toJSONSchema(whole, { io: "input" });
}
