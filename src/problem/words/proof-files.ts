import { say, type Wording, w } from "./say.js";

/** Which files are measured against what. */
export const PROOF_FILES: Wording = {
	"manifest-unreadable": (f) =>
		w(
			`${say(f.file)} is no manifest that a file can be measured against: ${say(f.reason)}`,
			"Name the manifest.json that camber wrote beside the files, or make them anew.",
		),
	"manifest-missing": (f) =>
		w(
			`there is no manifest ${say(f.file)}`,
			"Name it with --manifest, or name a job and a part with --job and --tool.",
		),
	"drawing-missing": (f) =>
		w(
			`there is no file or folder ${say(f.file)}`,
			"Check the path; a file that was removed comes back when the job is made again.",
		),
	"proof-flags": () =>
		w(
			"--tool and --machine go with --job, and --job goes without --manifest",
			"Measure against a manifest, or give --job with --tool.",
		),
	"pdf-with-job": (f) =>
		w(
			`${say(f.file)}: pages of a PDF cannot be looked for, only measured where they were put`,
			"Leave --job out: it is measured against the manifest beside it, or against --manifest.",
		),
	"file-not-promised": (f) =>
		w(
			`${say(f.manifest)} promises nothing of ${say(f.file)}`,
			`A file that was only renamed is known by its bytes; for one that was changed too, give it its old name, or, an SVG or DXF of one part, --job and --tool. The manifest speaks of ${say(f.known)}.`,
		),
	"one-part-wanted": (f) =>
		w(
			`a file is measured against one part, and here are ${(f.names as readonly string[]).length}`,
			`Name one of them with --tool: ${say(f.names)}.`,
		),
	"file-changed": (f) =>
		w(
			`${say(f.file)} is no longer as camber wrote it`,
			"If you edited it, what was measured of it tells whether it still holds; texts and tables are not measured: for those make it anew.",
		),
};
