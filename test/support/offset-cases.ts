import {
	circle,
	closed,
	type Path,
	reversed,
	selfCrossings,
	signedArea,
	type Vertex,
	vertex,
} from "../../src/geometry/index.js";

/** Numbers from 0 to under 1 in an order that a seed fixes. */
export type Random = () => number;

/** The 32-bit generator mulberry32 (public domain, from memory). */
export function random(seed: number): Random {
	let state = seed | 0;
	return () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

/** A bar with notches 3.5 wide and 1.8 deep in its lower edge, one at each of the frets. */
export function beam(notches = 22, scale = 647.7): Path {
	const points = [vertex(0, 0)];
	for (let i = 1; i <= notches; i++) {
		const x = 5 + scale * (1 - 2 ** (-i / 12));
		points.push(vertex(x - 1.75, 0), vertex(x - 1.75, 1.8));
		points.push(vertex(x + 1.75, 1.8), vertex(x + 1.75, 0));
	}
	return closed(...points, vertex(480, 0), vertex(480, 40), vertex(0, 40));
}

/** A block of 60 × 25 with an arc of the radius hollowed into its lower edge. */
export function hollowGauge(radius: number): Path {
	const sweep = 2 * Math.asin(30 / radius);
	return closed(vertex(0, 0, -Math.tan(sweep / 4)), vertex(60, 0), vertex(60, 25), vertex(0, 25));
}

/** A round hole: a circle run clockwise. */
export function hole(x: number, y: number, radius: number): Path {
	return reversed(circle({ x, y }, radius));
}

/** A comb of n segments or a few more: teeth of unlike height, every fourth one round. */
export function comb(segments: number, width = 0.8): Path {
	const points: Vertex[] = [vertex(0, 0)];
	const teeth = Math.ceil((segments - 3) / 4);
	points.push(vertex(2 * width * teeth, 0));
	for (let i = teeth - 1; i >= 0; i--) {
		const x = 2 * width * i;
		const top = 8 + Math.sin(i);
		const bulge = i % 4 === 0 ? 0.4 : 0;
		points.push(vertex(x + 1.5 * width, 5), vertex(x + 1.5 * width, top, bulge));
		points.push(vertex(x + 0.5 * width, top), vertex(x + 0.5 * width, 5));
	}
	return closed(...points);
}

/**
 * A star-shaped contour of 4 to 12 corners, about half of them rounded and a quarter of the
 * edges bent; simple, counter-clockwise.
 */
export function randomContour(next: Random): Path {
	for (;;) {
		const path = bent(rounded(starCorners(next), next), next);
		if (signedArea(path) > 50 && selfCrossings(path).length === 0) return path;
	}
}

function starCorners(next: Random): Vertex[] {
	const n = 4 + Math.floor(next() * 9);
	return Array.from({ length: n }, (_, i) => {
		const angle = ((i + 0.15 + 0.7 * next()) / n) * 2 * Math.PI;
		const radius = 15 + 45 * next();
		return vertex(radius * Math.cos(angle), radius * Math.sin(angle));
	});
}

function rounded(corners: readonly Vertex[], next: Random): Vertex[] {
	const n = corners.length;
	return corners.flatMap((corner, i) => {
		const before = corners[(i + n - 1) % n]!;
		const after = corners[(i + 1) % n]!;
		const [ux, uy] = [before.x - corner.x, before.y - corner.y];
		const [vx, vy] = [after.x - corner.x, after.y - corner.y];
		const [lu, lv] = [Math.hypot(ux, uy), Math.hypot(vx, vy)];
		const angle = Math.acos(Math.max(-1, Math.min(1, (ux * vx + uy * vy) / lu / lv)));
		if (next() >= 0.55 || angle < 0.2 || angle > Math.PI - 0.1) return [corner];
		const radius = 0.3 + 8 * next() * next();
		const cut = radius / Math.tan(angle / 2);
		if (cut >= 0.45 * Math.min(lu, lv)) return [corner];
		const sweep = (Math.PI - angle) * Math.sign(uy * vx - ux * vy);
		return [
			vertex(corner.x + (ux / lu) * cut, corner.y + (uy / lu) * cut, Math.tan(sweep / 4)),
			vertex(corner.x + (vx / lv) * cut, corner.y + (vy / lv) * cut),
		];
	});
}

function bent(points: readonly Vertex[], next: Random): Path {
	return closed(
		...points.map((p, i) => {
			const q = points[(i + 1) % points.length]!;
			if (p.bulge !== 0 || next() >= 0.25 || Math.hypot(p.x - q.x, p.y - q.y) <= 2) return p;
			return vertex(p.x, p.y, (next() * 2 - 1) * 0.6);
		}),
	);
}

/** Steps on a grid of 0.5: widths 0.5 to 2.5, heights 1 to 4.5, so that offsets just meet. */
export function notchedGrid(steps: readonly (readonly [width: number, height: number])[]): Path {
	const total = steps.reduce((sum, [width]) => sum + width, 0);
	const points = [vertex(0, 0), vertex(total / 2, 0)];
	let x = total;
	for (const [width, height] of [...steps].reverse()) {
		points.push(vertex(x / 2, height / 2), vertex((x - width) / 2, height / 2));
		x -= width;
	}
	// Corners between steps of one height are none, nor are vertices given twice.
	const single = points.filter((p, i) => {
		const before = points[(i + points.length - 1) % points.length]!;
		return p.x !== before.x || p.y !== before.y;
	});
	return closed(
		...single.filter((p, i) => {
			const before = single[(i + single.length - 1) % single.length]!;
			const after = single[(i + 1) % single.length]!;
			return !(before.y === p.y && p.y === after.y) && !(before.x === p.x && p.x === after.x);
		}),
	);
}

/** Steps for `notchedGrid`. */
export function randomSteps(next: Random): (readonly [number, number])[] {
	const count = 3 + Math.floor(next() * 6);
	return Array.from({ length: count }, () => [
		1 + Math.floor(next() * 5),
		2 + Math.floor(next() * 8),
	]);
}

/** Distances by which gaps and tongues of a grid of 0.5 just close, nearly close or stay. */
export const GRID_DISTANCES = [
	0.25, -0.25, 0.5, -0.5, 0.26, -0.26, 0.6, -0.6, 0.1, 0.75, -1,
] as const;

/** Kerfs, cutters and anything in between, either way. */
export function randomDistance(next: Random): number {
	const usual = [0.075, 0.1, 1.5875];
	const size = next() < 0.4 ? usual[Math.floor(next() * 3)]! : 0.075 * (5 / 0.075) ** next();
	return next() < 0.5 ? size : -size;
}

/** Joints that are straight but for rounding, and an arc so flat that it is nearly a line: for −0.1. */
export const NEARLY_TANGENT = closed(
	vertex(139.53344818369226, 64.86700145777544, 0.13325352727106057),
	vertex(137.79946247680334, 69.3776850940061, -0.5922959634102881),
	vertex(97.52909738866947, 124.38417661282827, 0.28598042167070725),
	vertex(96.29058648221601, 124.88137899901106, 0),
	vertex(-37.11550514904822, 101.24806341971161, 0.1481092115052728),
	vertex(-44.56137648982572, 97.47129636681359, 0),
	vertex(-99.36615170708683, 45.01621282722966, 0.297132767457515),
	vertex(-88.66061981577823, -23.427000007615973, 0.16595718435053736),
	vertex(-88.36279982957919, -23.993412708681497, 0),
	vertex(-18.130785752937257, -90.45279590677497, 0.08153389675985565),
	vertex(-15.455300645232182, -92.26400291943222, -0.00019371723756194114),
	vertex(47.474942564272176, -121.30735704588145, 0.2779244837140556),
	vertex(48.435805848397365, -121.20145126807992, -0.4238766233436763),
	vertex(150.60275423448735, -43.22009152372473, 0),
);

/** Small arcs at joints that are straight but for rounding; runs clockwise: a hole, for 0.1. */
export const SMALL_ARCS = closed(
	vertex(-1.428983228630015, 12.640398541632292, -0.03173602444369478),
	vertex(-1.432046355436146, 12.635956212856263, -0.4162634686566889),
	vertex(-3.487287812541293, 10.026362405153609, -0.4172345523302632),
	vertex(-3.7774331783520507, 9.99339748555748, 0),
	vertex(-7.23432470118569, 12.774130204950824, 0.26116647018430766),
	vertex(-7.420722801022878, 12.805455305039171, 0.35171810276806353),
	vertex(-11.628819788800424, 11.295928047187498, -0.6802725414013276),
	vertex(-11.775853164553684, 11.463403703278907, 0),
	vertex(-9.314806497055304, 16.25792563208814, 0.11841202811038228),
	vertex(-9.294464837945998, 16.34158952217817, 0),
	vertex(-9.282090632206382, 20.790876614229578, 0),
	vertex(-4.544759123097192, 19.649434770559658, -0.05831547522716827),
	vertex(-4.495809796443239, 19.631403696556383, 0),
	vertex(0.9977038997826657, 16.844772819280234, -0.4350990684816115),
	vertex(1.028461606420601, 16.738039597419707, 0),
);
