import { say, type Wording, w } from "./say.js";

/** Files and folders. */
export const FILES: Wording = {
	"file-missing": (f) =>
		w(`there is no file ${say(f.file)}`, "Check the path; `camber new FILE` writes a job."),
	"machine-file-missing": (f) =>
		w(
			`there is no file ${say(f.file)}`,
			"Check the path; README shows what a machine's file holds, and examples/machines has one.",
		),
	"file-is-folder": (f) => w(`${say(f.file)} is a folder`, "Name a file in it."),
	"file-too-large": (f) =>
		w(
			`${say(f.file)} is ${say(f.size)} bytes long and was not read`,
			`At most ${say(f.limit)} bytes are read.`,
		),
	"file-unreadable": (f) =>
		w(`${say(f.file)} cannot be read: ${say(f.reason)}`, "Check its permissions."),
	"file-not-utf8": (f) => w(`${say(f.file)} is not UTF-8 text`, "Save it as UTF-8."),
	"file-exists": (f) => w(`${say(f.file)} exists already`, "Choose another name, or add --force."),
	"folder-is-file": (f) =>
		w(`${say(f.folder)} is a file, not a folder`, "Give another folder with -o."),
	"folder-under-file": (f) =>
		w(`${say(f.folder)} lies under a file`, "Give another folder with -o."),
	"folder-unusable": (f) =>
		w(`${say(f.folder)} cannot be used: ${say(f.reason)}`, "Give another folder with -o."),
	"folder-of-other-job": (f) =>
		w(
			`${say(f.folder)} holds the files of the job "${say(f.other)}", this one is "${say(f.job)}"`,
			"Give the job another name, give another folder with -o, or add --force.",
		),
	"target-is-folder": (f) => w(`${say(f.file)} is a folder in ${say(f.folder)}`, "Move it away."),
	"foreign-file": (f) =>
		w(
			`${say(f.file)} in ${say(f.folder)} would be overwritten, but camber did not write it as it is (${say(f.why)})`,
			"Move it away, give another folder with -o, or add --force.",
		),
	"disk-full": (f) => w(`no room on the disk for ${say(f.file)}`, "Make room and run it again."),
	"write-failed": (f) =>
		w(`${say(f.file)} could not be written: ${say(f.reason)}`, "Mend that and run it again."),
	"not-restored": (f) =>
		w(
			`${say(f.file)} could not be put back: ${say(f.reason)}`,
			`Its old bytes are in ${say(f.kept)}.`,
		),
	"left-behind": (f) =>
		w(`${say(f.file)} could not be removed: ${say(f.reason)}`, "It may be deleted."),
};
