// Speed, side by side in one run: the command against bare node, the exports against makerjs,
// the offset against makerjs and clipper2-ts.
import { spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { Clipper, EndType, JoinType } from "clipper2-ts";
import makerjs from "makerjs";
import {
	closed,
	extents,
	loadLettering,
	make,
	offset,
	pointAt,
	promisedOf,
	prove,
	segments,
	vertex,
	writeDxf,
	writeSvg,
} from "../dist/index.js";

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

/**
 * Median time of one call, ms, over at least five calls and 300 ms, after 300 ms that warm up.
 * A call of many seconds may be run once alone: it warms up by itself.
 */
function timed(call, least = 5) {
	let begin = performance.now();
	while (least > 1 && performance.now() - begin < 300) call();
	const times = [];
	begin = performance.now();
	while (times.length < least || performance.now() - begin < 300) {
		const start = performance.now();
		call();
		times.push(performance.now() - start);
	}
	return median(times);
}

console.log(
	`${new Date().toISOString().slice(0, 10)}, node ${process.version}, ${cpus().length} x ${cpus()[0].model}\n`,
);

const THREE = "notched-straightedge,radius-gauge,slot-strip";
const BARE = ["--no-proof", "--no-report"];
const making = (...more) => ["bin/camber.js", "make", JOB, "-o", OUT, ...more];
const three = ["--no-sheets", "--only", THREE];
const commands = [
	["bare node -e 0", ["-e", "0"]],
	["camber --version", ["bin/camber.js", "--version"]],
	["make, three tools, 17 files", making(...three, ...BARE)],
	["the same with proof", making(...three, "--no-report")],
	["the same with proof and report", making(...three)],
	["make, four tools and their bed", making("--only", `${THREE},kerf-coupon`)],
	["make, three tools on paper, 8 PDFs", making("--paper", "A4", "--only", THREE, ...BARE)],
	["the same with proof", making("--paper", "A4", "--only", THREE, "--no-report")],
	["make, one tool, no proof", making("--no-sheets", "--only", "notched-straightedge", ...BARE)],
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

const share = (walls[3] - walls[2]) / walls[3];
console.log(`share of proof in the three tools' run: ${(100 * share).toFixed(0)} %`);

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

await proofTimes();

/** Time to measure one file again, each anew. */
async function proofTimes() {
	const promised = promisedOf(new TextDecoder().decode(made.files.at(-1).bytes), "manifest.json");
	const letters = await loadLettering();
	console.log("\nproof of one file, warm                   ms     bytes    claims");
	for (const name of [
		"notched-straightedge",
		"radius-gauge-nut-concave",
		"slot-strip",
		"sheet-1",
	]) {
		for (const format of ["svg", "dxf"]) {
			const file = promised.files.find((f) => f.name === `heron-baritone-${name}.${format}`);
			const { bytes } = made.files.find((f) => f.name === file.name);
			const times = [];
			let claims = 0;
			for (let i = 0; i < 25; i++) {
				const start = performance.now();
				claims = (await prove(bytes, file, letters)).measured.length;
				times.push(performance.now() - start);
			}
			const figures = `${String(bytes.length).padStart(10)}${String(claims).padStart(10)}`;
			console.log(`${`${name} ${format}`.padEnd(36)}${ms(median(times.slice(5)))}${figures}`);
		}
	}
}

/** A path as a makerjs model. */
function modelOfPath(path) {
	const paths = {};
	segments(path).forEach((s, k) => {
		if (s.kind === "line") {
			paths[k] = new makerjs.paths.Line([s.start.x, s.start.y], [s.end.x, s.end.y]);
			return;
		}
		const deg = (a) => (a * 180) / Math.PI;
		const [from, to] = [s.startAngle, s.startAngle + s.sweep];
		const [a, b] = s.sweep > 0 ? [from, to] : [to, from];
		paths[k] = new makerjs.paths.Arc([s.centre.x, s.centre.y], s.radius, deg(a), deg(b));
	});
	return { paths };
}

/** The same geometry as a makerjs model. */
function modelOf(n) {
	const models = {};
	for (let i = 0; i < n; i++) models[i] = { ...modelOfPath(outline.path), origin: [0, 60 * i] };
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

/** Width of the cut, mm, and how near to a true arc the chords of a faceted one are. */
const [KERF, CHORDS] = [0.16, 0.0002];

/** A bar with n notches 3.5 wide and 1.8 deep in its lower edge, its four corners rounded. */
function bar(n) {
	const [length, round] = [20 * n + 20, Math.tan(Math.PI / 8)];
	const notches = Array.from({ length: n }, (_, i) => 20 * (i + 1)).flatMap((x) => [
		vertex(x - 1.75, 0),
		vertex(x - 1.75, 1.8),
		vertex(x + 1.75, 1.8),
		vertex(x + 1.75, 0),
	]);
	return closed(
		vertex(1.5, 0),
		...notches,
		vertex(length - 1.5, 0, round),
		vertex(length, 1.5),
		vertex(length, 38.5, round),
		vertex(length - 1.5, 40),
		vertex(1.5, 40, round),
		vertex(0, 38.5),
		vertex(0, 1.5, round),
	);
}

/** A path as a polygon whose chords are within CHORDS of its arcs. */
function polygonOf(path) {
	return segments(path).flatMap((s) => {
		if (s.kind === "line") return [s.start];
		const step = 2 * Math.acos(1 - CHORDS / s.radius);
		const count = Math.ceil(Math.abs(s.sweep) / step);
		return Array.from({ length: count }, (_, i) => pointAt(s, i / count));
	});
}

console.log(
	`\noffset by ${KERF / 2} mm                   ms camber   makerjs   clipper2-ts   segments   clipper2-ts`,
);
/** The three offsets of one contour, its own conversions done before. */
function offsetsOf(contour) {
	const model = modelOfPath(contour);
	const polygon = [polygonOf(contour)];
	return {
		ours: () => offset([contour], KERF / 2).paths,
		arcs: () => makerjs.model.outline(model, KERF / 2),
		facets: () =>
			Clipper.inflatePathsD(polygon, KERF / 2, JoinType.Round, EndType.Polygon, 2, 6, CHORDS),
	};
}

// Compiled in full only after some hundred calls, more than a short run makes on a busy machine.
const { ours: first, facets: second } = offsetsOf(bar(22));
for (let i = 0; i < 500; i++) {
	first();
	second();
}
// makerjs compares all with all: few runs of it, and none of the longest contour.
for (const [notches, runs] of [
	[22, 3],
	[100, 1],
	[2498, 0],
]) {
	const contour = bar(notches);
	const { ours, arcs, facets } = offsetsOf(contour);
	const name = `${notches} notches, ${contour.points.length} segments`.padEnd(34);
	const [a, c] = [timed(ours), timed(facets)];
	const b = runs === 0 ? "-".padStart(8) : ms(timed(arcs, runs));
	console.log(
		`${name}${ms(a)}  ${b}${ms(c).padStart(14)}${String(ours()[0].points.length).padStart(11)}${String(facets()[0].length).padStart(14)}`,
	);
}
console.log(
	`clipper2-ts keeps no arcs: its contours are polygons, chords within ${CHORDS * 1000} µm of the arcs.`,
);
