// The table belongs to the reflected polynomial 0xEDB88320 of ISO 3309 and ITU-T V.42. zlib.crc32 is missing from early Node 20.
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
	let rest = byte;
	for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
	return rest >>> 0;
});

/** CRC-32 (ISO 3309) of the bytes, as an unsigned 32-bit number. */
export function crc32(bytes: Uint8Array): number {
	let crc = 0xffffffff;
	for (let i = 0; i < bytes.length; i++) crc = (crc >>> 8) ^ TABLE[(crc ^ bytes[i]!) & 0xff]!;
	return (crc ^ 0xffffffff) >>> 0;
}

/** CRC-32 as eight lower-case hexadecimal digits. */
export function crc32Hex(bytes: Uint8Array): string {
	return crc32(bytes).toString(16).padStart(8, '0');
}
