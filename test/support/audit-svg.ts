import { segments, selfCrossings } from "../../src/geometry/index.js";
import {
	type Expected,
	type Finding,
	gap,
	isMeasurable,
	openCuts,
	pathFault,
	repeatedVertices,
	WORK_ORDER,
} from "./compare-paths.js";
import { readSvg, type SvgFile, type SvgGroup } from "./read-svg.js";

/** Six decimals put a vertex within 0.71e-6 mm. */
const NEAR = 1e-6;
/**
 * The middle of a quarter turn rebuilt from rounded ends and radius: 0.71e-6·√2 from the ends
 * (their middle and, half as much, their distance) and 0.41 of half a unit from the radius.
 */
const NEAR_MIDDLE = 1.25e-6;

/**
 * All that is wrong with an SVG drawing: form, size, pens and contours, and, against what is
 * expected, its elements and their geometry. Cut contours are taken to be closed,
 * but for those that are expected open.
 */
export function auditSvg(text: string, expected?: Expected): Finding[] {
	let file: SvgFile;
	try {
		file = readSvg(text);
	} catch (error) {
		return [{ rule: "unreadable", detail: String(error) }];
	}
	const { groups, names, title, desc } = file;
	const found = [...size(file), ...groups.flatMap(pens), ...groups.flatMap(contours)];
	const open = groups.flatMap((g) => (g.attributes.id === "cut" ? g.paths : []));
	const gaps = open.filter(({ path }) => !path.closed);
	if (gaps.length > openCuts(expected)) {
		found.push(...gaps.map(({ feature }) => ({ rule: "open-contour", detail: feature })));
	}
	const ids = groups.map((g) => g.attributes.id ?? "");
	const order = WORK_ORDER.filter((operation) => ids.includes(operation));
	if (ids.join(" ") !== order.join(" ")) found.push({ rule: "groups", detail: ids.join(" ") });
	if (names.slice(0, 2).join(" ") !== "title desc" || title === "" || desc === "") {
		found.push({ rule: "title", detail: names.join(" ") });
	}
	if (names.slice(2).some((name) => name !== "g")) {
		found.push({ rule: "stray", detail: names.join(" ") });
	}
	return expected ? [...found, ...contents(file, expected)] : found;
}

function isSixDecimals(text: string | undefined): boolean {
	return /^-?\d+\.\d{6}$/.test(text ?? "");
}

function size({ attributes }: SvgFile): Finding[] {
	const { width = "", height = "", viewBox = "" } = attributes;
	const box = viewBox.split(" ");
	const found: Finding[] = [];
	if (box.length !== 4 || !box.every(isSixDecimals))
		found.push({ rule: "viewBox", detail: viewBox });
	if (width !== `${box[2]}mm` || height !== `${box[3]}mm`) {
		found.push({ rule: "size", detail: `${width} × ${height} for ${viewBox}` });
	}
	return found;
}

function pens({ attributes, names, paths, texts }: SvgGroup): Finding[] {
	const found: Finding[] = [];
	const { id, class: kind, fill, stroke } = attributes;
	if (id !== kind) found.push({ rule: "groups", detail: `${id} is of class ${kind}` });
	if (fill !== "none") found.push({ rule: "fill", detail: String(fill) });
	if (!/^#[0-9a-f]{6}$/i.test(stroke ?? "")) found.push({ rule: "stroke", detail: String(stroke) });
	if (!isSixDecimals(attributes["stroke-width"])) {
		found.push({ rule: "stroke-width", detail: String(attributes["stroke-width"]) });
	}
	if (names.some((name) => name !== "path" && name !== "text")) {
		found.push({ rule: "stray", detail: names.join(" ") });
	}
	for (const { attributes: a } of texts) {
		if (id !== "reference") found.push({ rule: "note-layer", detail: String(id) });
		if (![a["font-size"], a.textLength].every(isSixDecimals)) {
			found.push({ rule: "note", detail: `${a["font-size"]}, ${a.textLength}` });
		}
		if (a.lengthAdjust !== "spacingAndGlyphs" || a["font-family"] !== "sans-serif") {
			found.push({ rule: "note", detail: `${a.lengthAdjust}, ${a["font-family"]}` });
		}
	}
	for (const { data, radii } of paths) {
		const numbers = data.replace(/ 0 [01] [01] /g, " ").match(/[^\sA-Z]+/g) ?? [];
		if (!numbers.every(isSixDecimals)) found.push({ rule: "decimals", detail: data });
		if (radii.some((r) => !(r > 0))) found.push({ rule: "radius", detail: data });
	}
	return found;
}

function contours({ paths }: SvgGroup): Finding[] {
	const found: Finding[] = [];
	for (const { path, feature } of paths) {
		for (const i of repeatedVertices(path, 5e-7)) {
			found.push({ rule: "repeated-vertex", detail: `${feature}: ${i}` });
		}
		if (isMeasurable(path) && selfCrossings(path).length > 0) {
			found.push({ rule: "self-crossing", detail: feature });
		}
		const long = segments(path).some(
			(s) => s.kind === "arc" && Math.abs(s.sweep) > Math.PI / 2 + 1e-3,
		);
		if (isMeasurable(path) && long) found.push({ rule: "long-arc", detail: feature });
	}
	return found;
}

function contents({ groups }: SvgFile, { marks, notes }: Expected): Finding[] {
	const drawn = groups.flatMap((g) => g.paths.map((p) => ({ ...p, operation: g.attributes.id })));
	const list = (items: readonly { operation?: string | undefined }[]) =>
		items.map((item) => item.operation).join(" ");
	if (list(drawn) !== list(marks)) return [{ rule: "count", detail: list(drawn) }];
	const texts = groups.flatMap((g) => g.texts);
	if (texts.length !== notes.length) return [{ rule: "count", detail: `${texts.length} texts` }];
	const found: Finding[] = [];
	for (const [i, mark] of marks.entries()) {
		const { path, feature, part, radii } = drawn[i]!;
		if (feature !== mark.feature || part !== mark.part) {
			found.push({ rule: "feature", detail: `${feature} of ${part}` });
		}
		const fault = isMeasurable(path)
			? pathFault(mark.path, path, NEAR, NEAR_MIDDLE)
			: "not measurable";
		if (fault) found.push({ rule: "geometry", detail: `${feature}: ${fault}` });
		const wanted = segments(mark.path).flatMap((s) => (s.kind === "arc" ? [s.radius] : []));
		if (radii.some((r) => !wanted.some((w) => Math.abs(w - r) <= NEAR))) {
			found.push({ rule: "radius", detail: feature });
		}
	}
	for (const [i, note] of notes.entries()) {
		const { at, turn, attributes } = texts[i]!;
		const near = gap(at, note.at) <= NEAR && Math.abs(turn - note.turn) < 1e-6;
		const width = Math.abs(Number(attributes.textLength) - note.width) <= NEAR;
		if (!near || !width) found.push({ rule: "note", detail: note.text });
	}
	return found;
}
