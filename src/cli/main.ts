import { Command, CommanderError, Option } from "commander";
import { VERSION } from "../version.js";
import type { CheckFlags } from "./commands/check.js";
import type { FitFlags } from "./commands/fit.js";
import type { KerfFlags } from "./commands/kerf.js";
import type { MakeFlags } from "./commands/make.js";
import type { PrinterFlags } from "./commands/printer.js";
import type { ProofFlags } from "./commands/proof.js";
import { type Console, EXIT } from "./console.js";
import type { Disk } from "./disk.js";

/** The console of the running process. */
const processConsole: Console = {
	out: (text) => void process.stdout.write(text),
	err: (text) => void process.stderr.write(text),
};

/** Flags that `make` and `single` share. */
function addMakeFlags(command: Command): Command {
	return command
		.option("-o, --out <folder>", "output folder (default: templates-out/<job>)")
		.option(
			"--format <list>",
			"svg, dxf, pdf, with commas between (default: svg,dxf; with pdf where the job names its paper)",
		)
		.option(
			"--paper <size>",
			'print on this paper: A4, Letter, A3, Legal, Tabloid, "210 x 330 mm", "roll 610 mm" (default format: pdf; svg means pages)',
		)
		.option("--dxf <flavour>", "r2000, r12 or loose (default: r2000)")
		.option("--no-dimensions", "leave the reference layer out: no dimensions, no notes")
		.option("--machine <file>", "the machine's own file; what the job says of it wins")
		.option("--sheets", "lay parts out on the bed (default where it is known)")
		.option("--no-sheets", "single parts alone, no laid-out beds")
		.option("--no-proof", "do not measure the files again before they are written")
		.option("--no-report", "no report.html beside the files")
		.option("--force", "overwrite files that camber did not write")
		.option("--allow-unusual", "let scale lengths outside 150 to 2000 mm pass")
		.option("--json", "report for machines");
}

/**
 * Runs one command line. Each command is loaded when it is called.
 *
 * @param args - without node and script
 * @param disk - this computer's; tests give their own
 * @returns the exit code: 0 well, 2 refused, 70 camber itself failed
 */
export async function run(
	args: readonly string[],
	console: Console = processConsole,
	disk?: Disk,
): Promise<number> {
	let code: number = EXIT.ok;
	const done = (result: number) => {
		code = result;
	};
	const program = await commands(args, console, done, disk);
	try {
		await program.parseAsync([...args], { from: "user" });
	} catch (error) {
		if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.refused;
		const detail = args.includes("--debug") && error instanceof Error ? error.stack : String(error);
		console.err(
			`camber failed: ${detail}\nThis is a fault of camber, not of the job. --debug shows more.\n`,
		);
		return EXIT.failed;
	}
	return code;
}

async function commands(
	args: readonly string[],
	console: Console,
	done: (code: number) => void,
	disk?: Disk,
): Promise<Command> {
	const program = new Command("camber")
		.description(
			"True-to-scale templates for refretting one neck: a job file in, SVG, DXF and PDF out.",
		)
		.version(VERSION)
		.option("--debug", "show where camber itself failed")
		.showHelpAfterError("(camber --help lists the commands)")
		.exitOverride()
		.configureOutput({ writeOut: console.out, writeErr: console.err });

	program
		.command("new <job>")
		.description("write a commented starter job and its JSON Schema")
		.option("--force", "overwrite an existing file")
		.action(async (path: string, flags: { force?: boolean }) => {
			const { newCommand } = await import("./commands/new.js");
			done(await newCommand(path, flags, console, disk));
		});
	addMakeFlags(
		program
			.command("make <job>")
			.description("make every tool of a job file")
			.option("--only <list>", "only these tools or part names, with commas between"),
	).action(async (path: string, flags: MakeFlags) => {
		const { makeCommand } = await import("./commands/make.js");
		done(await makeCommand(path, flags, console, disk));
	});
	program
		.command("check <job>")
		.description("say all problems and what would be made; writes nothing")
		.option("--machine <file>", "the machine's own file; what the job says of it wins")
		.option("--paper <size>", "as for make: what it would print, and on how many pages")
		.option("--no-sheets", "single parts alone, no laid-out beds")
		.option("--allow-unusual", "let scale lengths outside 150 to 2000 mm pass")
		.action(async (path: string, flags: CheckFlags) => {
			const { checkCommand } = await import("./commands/check.js");
			done(await checkCommand(path, flags, console, disk));
		});
	program
		.command("frets <job>")
		.description("the neck's fret table")
		.option("--csv", "comma-separated, for a spreadsheet")
		.addOption(
			new Option("--decimal-comma", "CSV with decimal commas, separated by semicolons")
				.implies({ csv: true })
				.conflicts("json"),
		)
		.addOption(new Option("--json", "for machines").conflicts("csv"))
		.option("--allow-unusual", "let scale lengths outside 150 to 2000 mm pass")
		.action(async (path: string, flags: object) => {
			const { fretsCommand } = await import("./commands/frets.js");
			done(await fretsCommand(path, flags, console, disk));
		});
	program
		.command("fit <job>")
		.description(
			"what a job's readings come to: scale, radius, relief, fret tops, with what they leave open",
		)
		.option(
			"--write <file>",
			"write a copy of the job with the fitted numbers, the readings kept beside them",
		)
		.option("--force", "overwrite that file")
		.option("--allow-unusual", "let scale lengths outside 150 to 2000 mm pass")
		.option("--json", "for machines")
		.action(async (path: string, flags: FitFlags) => {
			const { fitCommand } = await import("./commands/fit.js");
			done(await fitCommand(path, flags, console, disk));
		});
	addKerf(program, console, done);
	addPrinter(program, console, done, disk);
	program
		.command("proof <path...>")
		.description("measure written files again: output folders, manifests, SVG, DXF and PDF files")
		.option("--manifest <file>", "the manifest, where it does not lie beside the files")
		.option("--job <file>", "measure against a part of this job, wherever it lies in the file")
		.option(
			"--tool <part>",
			"with --job: the part that the file shows, or its tool if it makes one part",
		)
		.option("--machine <file>", "with --job: the machine's own file")
		.option("--font <file>", "the font of the labels, where the job names one")
		.option("--all", "list every claim, also those that hold")
		.option("--json", "for machines")
		.action(async (paths: readonly string[], flags: ProofFlags) => {
			const { proofCommand } = await import("./commands/proof.js");
			done(await proofCommand(paths, flags, console, disk));
		});
	program
		.command("tools")
		.description("every tool, what it is for, its settings with defaults and limits")
		.option("--json", "for machines")
		.action(async (flags: { json?: boolean }) => {
			const { toolsCommand } = await import("./commands/tools.js");
			done(toolsCommand(flags, console));
		});
	program
		.command("schema")
		.description("JSON Schema of a job file, for editors")
		.action(async () => {
			const { schemaCommand } = await import("./commands/schema.js");
			done(schemaCommand(console));
		});
	if (args.includes("single")) {
		const { addSingle } = await import("./commands/single.js");
		addSingle(program, console, addMakeFlags, done, disk);
	} else {
		program
			.command("single <tool>")
			.description("make one tool straight from flags, without a job file");
	}
	for (const command of program.commands) inherit(command, program);
	return program;
}

function addKerf(program: Command, console: Console, done: (code: number) => void): void {
	program
		.command("kerf")
		.description("the width of the cut, from the blocks of a kerf coupon pushed together")
		.requiredOption("--blocks <number>", "number of blocks")
		.requiredOption("--nominal <length>", "their whole length as drawn: 100mm")
		.requiredOption(
			"--measured <length>",
			"their whole length as measured; give it again for each further reading",
			(given: string, before: readonly string[] = []) => [...before, given],
		)
		.option("--resolution <length>", "the caliper's smallest step", "0.02mm")
		.option("--sheet <sheet>", 'the sheet it was cut in, for a machine\'s list: "acrylic 3 mm"')
		.action(async (flags: KerfFlags) => {
			const { kerfCommand } = await import("./commands/kerf.js");
			done(kerfCommand(flags, console));
		});
}

function addPrinter(
	program: Command,
	console: Console,
	done: (code: number) => void,
	disk?: Disk,
): void {
	program
		.command("printer")
		.description("what the printer makes of a millimetre, from the rules of its check page")
		.requiredOption("--nominal <length>", "length of the rule that was read: 10in, 254mm")
		.option("--nominal-along <length>", "the same along the feed (default: --nominal)")
		.requiredOption("--across <length>", "what the rule across the feed measures")
		.requiredOption("--along <length>", "what the rule along the feed measures")
		.option(
			"--resolution <length>",
			"smallest step that was read (default: as the readings are written)",
		)
		.option("--longest <length>", "the longest part to be printed (default: 500mm)")
		.addOption(new Option("--job <file>", "a job whose longest part counts").conflicts("longest"))
		.action(async (flags: PrinterFlags) => {
			const { printerCommand } = await import("./commands/printer.js");
			done(await printerCommand(flags, console, disk));
		});
}

/** Commander hands its settings down only to commands made afterwards. */
function inherit(command: Command, parent: Command): void {
	command.copyInheritedSettings(parent);
	for (const inner of command.commands) inherit(inner, command);
}
