import { createHash } from "node:crypto";
import { beforeAll, describe, expect, it } from "vitest";
import { make } from "../src/make.js";
import { sha256 } from "../src/manifest.js";
import { making } from "./support/job-text.js";

type Made = Extract<Awaited<ReturnType<typeof make>>, { ok: true }>;

const TEXT = making(
	"radius-gauge: {at: [nut, 12], gauge-width: 60 mm, stock: {material: steel, thickness: 1/32 in}}",
	"slot-strip: {name: strip, slots: tang}",
).replace("make:", "date: 1 March\nmachine: {kind: mill, tolerance: 0.03 mm}\nmake:");

describe("the manifest", () => {
	let made: Made;
	let manifest: {
		[key: string]: unknown;
		files: { name: string; bytes: number; sha256: string; format: string; parts: string[] }[];
		tools: {
			tool: string;
			name: string;
			stock: object;
			settings: Record<string, unknown>;
			parts: { name: string; notes: string[]; claims: { id: string; at: unknown[] }[] }[];
		}[];
	};
	let text: string;

	beforeAll(async () => {
		const result = await make(TEXT, { proof: false });
		if (!result.ok) throw new Error(JSON.stringify(result.problems));
		made = result;
		text = new TextDecoder().decode(made.files.at(-1)!.bytes);
		manifest = JSON.parse(text);
	});

	it("says who wrote it, in which form, for which job and machine", () => {
		expect(manifest).toMatchObject({
			writer: "camber",
			format: 1,
			job: "Test neck",
			date: "1 March",
			units: "mm, rad",
			machine: { kind: "mill", tolerance: 0.03, kerf: 0 },
			cautions: made.cautions,
		});
	});

	it("lists every file beside it with its length and SHA-256", () => {
		const drawings = made.files.slice(0, -1);
		expect(manifest.files.map(({ name }) => name)).toEqual(drawings.map(({ name }) => name));
		drawings.forEach(({ bytes, format, parts }, i) => {
			const digest = createHash("sha256").update(bytes).digest("hex");
			expect(manifest.files[i]).toMatchObject({
				bytes: bytes.length,
				sha256: digest,
				format,
				parts,
			});
		});
	});

	it("lists every tool with its sheet and all its settings, given and default", () => {
		const [gauge, strip] = manifest.tools;
		expect(gauge).toMatchObject({
			tool: "radius-gauge",
			name: "radius-gauge",
			stock: { material: "steel", thickness: 0.79375 },
			settings: {
				at: [{ kind: "nut" }, { kind: "fret", fret: 12 }],
				faces: ["concave"],
				"gauge-width": 60,
				"gauge-hole": 5,
			},
		});
		expect(strip).toMatchObject({
			name: "strip",
			stock: { material: "acrylic", thickness: 3 },
			settings: { slots: "tang", "edge-margin": 5, "end-margin": 10, distances: true },
		});
	});

	it("lists every part with its claims as they are", () => {
		const parts = made.tools.flatMap((tool) => tool.parts);
		const listed = manifest.tools.flatMap((tool) => tool.parts);
		expect(listed.map(({ name }) => name)).toEqual(parts.map(({ name }) => name));
		parts.forEach((part, i) => {
			const { claims, notes } = listed[i]!;
			expect(notes).toEqual(part.notes);
			expect(claims).toHaveLength(part.claims.length);
			part.claims.forEach((claim, k) => {
				expect(claims[k]).toMatchObject({ id: claim.id, kind: claim.kind, feature: claim.feature });
				expect(claims[k]).toHaveProperty("nominal", expect.closeTo(claim.nominal, 8));
				claim.at.forEach(({ x, y }, j) => {
					expect(claims[k]!.at[j]).toEqual([expect.closeTo(x, 8), expect.closeTo(y, 8)]);
				});
			});
		});
		expect(listed.flatMap(({ claims }) => claims).length).toBeGreaterThan(40);
	});

	it("holds no number of more than nine decimals and no negative zero", () => {
		expect(text).not.toMatch(/\d\.\d{10}/u);
		expect(text).not.toMatch(/-0[,\s\]]/u);
		expect(text).not.toMatch(/\d[eE][-+]?\d+[,\s\]]/u);
	});

	it("ends in a line end and reads as JSON", () => {
		expect(text.endsWith("}\n")).toBe(true);
		expect(made.files.at(-1)).toMatchObject({ name: "manifest.json", format: "json" });
	});
});

describe("sha256", () => {
	// NIST, FIPS 180-2, appendix B.1 and B.2 (from memory); the empty message is widely published.
	it.each([
		["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
		[
			"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
			"248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
		],
		["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
	])("of %j is the published one", async (text, digest) => {
		expect(await sha256(new TextEncoder().encode(text))).toBe(digest);
	});
});
