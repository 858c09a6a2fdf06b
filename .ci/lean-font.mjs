// A font with only what printing asks of it. The PDF library takes in every table that it meets: the names of six thousand glyphs and a second table of
// pairs took it longer than all of the page.

/** Tables that are of no use: names of glyphs are for PostScript printers, and `GPOS` has the pairs of `kern` too. */
const DROPPED = ['kern'];
/** The version of `post` that names no glyphs (OpenType 1.9, "post - PostScript Table"), and how long it is. */
const NAMELESS = { version: 0x00030000, length: 32 };

/** Where a table stands in the directory of a font file, and in the file (OpenType 1.9, "Organization of an OpenType Font"). */
function tablesOf(font) {
	const count = font.readUInt16BE(4);
	return Array.from({ length: count }, (_, i) => {
		const at = 12 + 16 * i;
		const [offset, length] = [font.readUInt32BE(at + 8), font.readUInt32BE(at + 12)];
		return { tag: font.toString('latin1', at, at + 4), sum: font.readUInt32BE(at + 4), offset, length };
	});
}

/** @param {Buffer} font a TrueType file @returns {Buffer} the same letters in fewer tables */
export function leanFont(font) {
	const kept = tablesOf(font)
		.filter(({ tag }) => !DROPPED.includes(tag))
		.map((table) => {
			const bytes = Buffer.from(font.subarray(table.offset, table.offset + table.length));
			if (table.tag !== 'post') return { ...table, bytes };
			bytes.writeUInt32BE(NAMELESS.version, 0);
			return { ...table, bytes: bytes.subarray(0, NAMELESS.length) };
		});
	const head = Buffer.from(font.subarray(0, 12 + 16 * kept.length));
	head.writeUInt16BE(kept.length, 4);
	const parts = [head];
	let offset = head.length;
	for (const [i, { tag, sum, bytes }] of kept.entries()) {
		const at = 12 + 16 * i;
		head.write(tag, at, 'latin1');
		head.writeUInt32BE(sum, at + 4);
		head.writeUInt32BE(offset, at + 8);
		head.writeUInt32BE(bytes.length, at + 12);
		const padding = Buffer.alloc((4 - (bytes.length % 4)) % 4);
		parts.push(bytes, padding);
		offset += bytes.length + padding.length;
	}
	return Buffer.concat(parts);
}
