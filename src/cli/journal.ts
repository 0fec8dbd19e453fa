import { dirname } from "node:path";
import { type Problem, ProblemError, problem } from "../problem/index.js";
import { codeOf, type Disk, mayBeThere, reasonOf } from "./disk.js";

/** A way back, the path it clears, and what to say if it is barred. */
interface Way {
	readonly back: () => Promise<void>;
	readonly clears: string;
	readonly barred: (reason: string) => Problem;
}

/**
 * Changes to the disk, each with its way back.
 *
 * The way back is noted before the change is tried, since one that fails may have happened in part
 * or in full; going back where nothing happened does nothing. Every change throws a ProblemError:
 * `folder-unusable`, `disk-full` or `write-failed`.
 */
export class Journal {
	readonly #ways: Way[] = [];
	readonly #disk: Disk;

	constructor(disk: Disk) {
		this.#disk = disk;
	}

	async makeFolder(path: string): Promise<void> {
		await this.#change(
			() => this.#disk.mkdir(path),
			{ back: () => this.#disk.rmdir(path), clears: path, barred: leftBehind(path) },
			(error) => (isFull(error) ? writeProblem(path, error) : folderProblem(path, error)),
		);
	}

	/** Writes the bytes of `target` under a name of their own. */
	async writeTemporary(temporary: string, bytes: Uint8Array, target: string): Promise<void> {
		await this.#change(
			() => this.#disk.writeNew(temporary, bytes),
			{ back: () => this.#disk.rm(temporary), clears: temporary, barred: leftBehind(temporary) },
			(error) =>
				isForbidden(error) ? folderProblem(dirname(target), error) : writeProblem(target, error),
		);
	}

	/** Gives what is at `target` another name. */
	async setAside(target: string, aside: string): Promise<void> {
		await this.#change(
			() => this.#disk.rename(target, aside),
			{
				back: () => this.#disk.rename(aside, target),
				clears: aside,
				barred: (reason) => problem("not-restored", [], { file: target, kept: aside, reason }),
			},
			(error) => writeProblem(target, error),
		);
	}

	/** Moves a temporary file to a target that is free: new, or set aside before. */
	async putInPlace(temporary: string, target: string, isNew: boolean): Promise<void> {
		// What was set aside comes back over the target; only a new one has to go.
		const back = isNew ? () => this.#disk.rm(target) : async () => {};
		await this.#change(
			() => this.#disk.rename(temporary, target),
			{ back, clears: target, barred: leftBehind(target) },
			(error) => writeProblem(target, error),
		);
	}

	/** Goes all the way back. Returns `not-restored` and `left-behind` where the disk barred it. */
	async undo(): Promise<Problem[]> {
		const problems: Problem[] = [];
		for (let way = this.#ways.pop(); way; way = this.#ways.pop()) {
			try {
				await way.back();
			} catch (error) {
				// A read-only disk refuses to remove even what was never made.
				if (await mayBeThere(this.#disk, way.clears)) problems.push(way.barred(reasonOf(error)));
			}
		}
		return problems;
	}

	async #change(act: () => Promise<void>, way: Way, explain: (error: unknown) => Problem) {
		this.#ways.push(way);
		try {
			await act();
		} catch (error) {
			// The name was taken by somebody else: theirs stays.
			if (codeOf(error) === "EEXIST") this.#ways.pop();
			throw new ProblemError([explain(error)]);
		}
	}
}

function leftBehind(file: string): Way["barred"] {
	return (reason) => problem("left-behind", [], { file, reason });
}

function folderProblem(folder: string, error: unknown): Problem {
	return problem("folder-unusable", [], { folder, reason: reasonOf(error) });
}

function writeProblem(file: string, error: unknown): Problem {
	const code = isFull(error) ? "disk-full" : "write-failed";
	return problem(code, [], { file, reason: reasonOf(error) });
}

function isFull(error: unknown): boolean {
	return ["ENOSPC", "EDQUOT"].includes(codeOf(error));
}

function isForbidden(error: unknown): boolean {
	return ["EACCES", "EPERM", "EROFS"].includes(codeOf(error));
}
