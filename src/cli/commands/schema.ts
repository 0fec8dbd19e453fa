import { jobJsonSchema } from "../../job/index.js";
import { type Console, EXIT } from "../console.js";

/** The JSON Schema as a file's text. */
export function schemaText(): string {
	return `${JSON.stringify(jobJsonSchema(), null, "\t")}\n`;
}

/** `camber schema`: JSON Schema of a job file, for editors that complete and check. */
export function schemaCommand(console: Console): number {
	console.out(schemaText());
	return EXIT.ok;
}
