export { run } from "./cli/main.js";

// A reader that has seen enough (`camber schema | head`) closes the pipe: no fault of anybody.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
	if (error.code !== "EPIPE") throw error;
	process.exit();
});
