import { crc32 as zlibCrc32 } from 'node:zlib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { crc32, crc32Hex } from '../../src/journal/crc32.ts';

it('gives the published check value', () => {
	// Source: Catalogue of parametrised CRC algorithms (G. Cook), CRC-32/ISO-HDLC: check 0xcbf43926 for the digits 1 to 9.
	expect(crc32(Buffer.from('123456789'))).toBe(0xcbf43926);
	expect(crc32Hex(Buffer.from('123456789'))).toBe('cbf43926');
});

it('is zero, written in eight digits, for no bytes', () => {
	expect(crc32Hex(Buffer.alloc(0))).toBe('00000000');
});

// An independent implementation; early Node 20 has none.
it.runIf(zlibCrc32)('agrees with zlib for any bytes', () => {
	fc.assert(fc.property(fc.uint8Array({ maxLength: 2000 }), (bytes) => crc32(bytes) === zlibCrc32(bytes)));
});
