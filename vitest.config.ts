import { defineConfig } from "vitest/config";

export default defineConfig({
	resolve: { alias: { camber: new URL("src/index.ts", import.meta.url).pathname } },
	test: {
		include: ["test/**/*.test.ts"],
		testTimeout: 60_000,
		hookTimeout: 60_000,
		allowOnly: false,
		passWithNoTests: false,
	},
});
