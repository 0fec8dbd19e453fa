// Speed, side by side in one run: the command against bare node, the exports against makerjs.
import { spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import makerjs from "makerjs";
import { extents, make, segments, writeDxf, writeSvg } from "../dist/index.js";

const JOB = "examples/heron-baritone.yaml";
const OUT = join(tmpdir(), `camber-bench-${process.pid}`);

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const ms = (value) => value.toFixed(value < 10 ? 2 : 0).padStart(8);

/** Whole processes in turn, A B C A B C …, so that a drifting machine is fair to all. */
function processes(commands, rounds) {
	const times = commands.map(() => []);
	for (let round = 0; round <= rounds; round++) {
		commands.forEach((args, i) => {
			const start = performance.now();
			const { status } = spawnSync(process.execPath, args, { stdio: "ignore" });
			if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}`);
			if (round > 0) times[i].push(performance.now() - start);
		});
	}
	return times.map(median);
}

/** Median time of one call, ms, over at least five calls and 300 ms. */
function timed(call) {
	call();
	const times = [];
	const begin = performance.now();
	while (times.length < 5 || performance.now() - begin < 300) {
		const start = performance.now();
		call();
		times.push(performance.now() - start);
	}
	return median(times);
}

console.log(
	`${new Date().toISOString().slice(0, 10)}, node ${process.version}, ${cpus().length} x ${cpus()[0].model}\n`,
);

const commands = [
	["bare node -e 0", ["-e", "0"]],
	["camber --version", ["bin/camber.js", "--version"]],
	["camber make, baritone, svg and dxf", ["bin/camber.js", "make", JOB, "-o", OUT]],
	[
		"camber make, one tool",
		["bin/camber.js", "make", JOB, "-o", OUT, "--only", "notched-straightedge"],
	],
];
const walls = processes(
	commands.map(([, args]) => args),
	15,
);
rmSync(OUT, { recursive: true, force: true });
console.log("whole process, median of 15           ms    x bare node");
commands.forEach(([name], i) => {
	console.log(`${name.padEnd(34)}${ms(walls[i])}${(walls[i] / walls[0]).toFixed(2).padStart(10)}`);
});

const made = await make(readFileSync(JOB, "utf8"));
const whole = made.tools[0].parts[0];
const outline = whole.marks.find((m) => m.feature === "outline");
const part = { ...whole, marks: [outline], claims: [] };
const pens = made.job.bench.machine.pens;
const box = extents(outline.path);

/** A sheet of n straightedges one above the other. */
function sheetOf(n) {
	const placed = Array.from({ length: n }, (_, i) => ({
		part,
		move: { x: 0, y: 60 * i, turn: 0, mirror: false },
	}));
	return {
		name: "bench",
		title: "bench",
		size: { ...box, maxY: box.maxY + 60 * n },
		placed,
		marks: [],
		notes: [],
	};
}

/** The same geometry as a makerjs model. */
function modelOf(n) {
	const models = {};
	for (let i = 0; i < n; i++) {
		const paths = {};
		segments(outline.path).forEach((s, k) => {
			if (s.kind === "line") {
				paths[k] = new makerjs.paths.Line([s.start.x, s.start.y], [s.end.x, s.end.y]);
				return;
			}
			const deg = (a) => (a * 180) / Math.PI;
			const [from, to] = [s.startAngle, s.startAngle + s.sweep];
			const [a, b] = s.sweep > 0 ? [from, to] : [to, from];
			paths[k] = new makerjs.paths.Arc([s.centre.x, s.centre.y], s.radius, deg(a), deg(b));
		});
		models[i] = { paths, origin: [0, 60 * i] };
	}
	return { units: makerjs.unitType.Millimeter, models };
}

console.log(
	"\nexports of n straightedges        ms camber   makerjs   times faster      bytes   makerjs",
);
for (const n of [1, 100, 1000]) {
	const sheet = sheetOf(n);
	const model = modelOf(n);
	const pairs = [
		["svg", () => writeSvg(sheet, pens), () => makerjs.exporter.toSVG(model)],
		["dxf", () => writeDxf(sheet, pens, "r2000"), () => makerjs.exporter.toDXF(model)],
	];
	for (const [format, ours, theirs] of pairs) {
		const [a, b] = [timed(ours), timed(theirs)];
		console.log(
			`${format} n = ${String(n).padEnd(26)}${ms(a)}  ${ms(b)}${(b / a).toFixed(1).padStart(15)}${String(ours().length).padStart(11)}${String(theirs().length).padStart(10)}`,
		);
	}
}
