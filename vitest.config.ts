import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

/** Files that take minutes begin first, so that the others run beside them and none is left alone at the end. */
class LongestFirst extends BaseSequencer {
	override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
		const isLong = ({ moduleId }: TestSpecification) =>
			/\/random(-paper)?\.test\.ts$/u.test(moduleId);
		const sorted = await super.sort(files);
		return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
	}
}

export default defineConfig({
	resolve: { alias: { camber: new URL("src/index.ts", import.meta.url).pathname } },
	test: {
		include: ["test/**/*.test.ts"],
		testTimeout: 60_000,
		hookTimeout: 60_000,
		isolate: false,
		maxWorkers: "100%",
		allowOnly: false,
		passWithNoTests: false,
		sequence: { sequencer: LongestFirst },
	},
});
