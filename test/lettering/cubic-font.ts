import opentype from "opentype.js";

/** A CFF font of H (or another letter in its place) and a ring O, 1000 units to the em. */
export function cubicFont(tall = "H"): ArrayBuffer {
	const ring = new opentype.Path();
	for (const [radius, turn] of [
		[500, 1],
		[250, -1],
	] as const) {
		// whole, as the font file holds it: 276 for 276.14 and 138 for 138.07
		const k = Math.round((4 / 3) * (Math.SQRT2 - 1) * radius);
		const y = (value: number) => 500 + turn * value;
		ring.moveTo(500 + radius, y(0));
		ring.curveTo(500 + radius, y(k), 500 + k, y(radius), 500, y(radius));
		ring.curveTo(500 - k, y(radius), 500 - radius, y(k), 500 - radius, y(0));
		ring.curveTo(500 - radius, y(-k), 500 - k, y(-radius), 500, y(-radius));
		ring.curveTo(500 + k, y(-radius), 500 + radius, y(-k), 500 + radius, y(0));
		ring.close();
	}
	const post = new opentype.Path();
	post.moveTo(0, 0);
	post.lineTo(300, 0);
	post.lineTo(300, 1000);
	post.lineTo(0, 1000);
	post.close();
	const glyph = (name: string, unicode: number, path: opentype.Path) =>
		new opentype.Glyph({ name, unicode, advanceWidth: 1100, path });
	return new opentype.Font({
		familyName: "Ring",
		styleName: "Regular",
		unitsPerEm: 1000,
		ascender: 1000,
		descender: -200,
		glyphs: [
			new opentype.Glyph({ name: ".notdef", advanceWidth: 500, path: new opentype.Path() }),
			glyph(tall, tall.charCodeAt(0), post),
			glyph("O", 79, ring),
		],
	}).toArrayBuffer();
}
