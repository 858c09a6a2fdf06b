import { describe, expect, it } from 'vitest';
import type { Io } from '../../src/cli/io.ts';
import { shownReading } from '../../src/cli/reading-logs.ts';

function reading(isTTY: boolean, logs: number): string {
	const written: string[] = [];
	const stderr = { isTTY, write: (text: string) => written.push(text) > 0 } as unknown as Io['stderr'];
	const mayGoOn = shownReading({ stderr });
	for (let remaining = logs; remaining > 0; remaining--) expect(mayGoOn(remaining)).toBe(true);
	return written.join('');
}

describe('a long reading of kept sessions', () => {
	it('on a terminal says how far it is, how to stop it, and takes its line away', () => {
		const written = reading(true, 5000);
		expect(written).toMatch(
			/^pullbook: 5000 kept sessions have to be read.*Ctrl-C stops; what was read by then is kept\.\n/,
		);
		expect(written).toContain('\r0 of 5000 read');
		expect(written.endsWith('\r\x1b[K')).toBe(true);
		expect(written.split('\n')).toHaveLength(2);
	});

	it('in a pipe says only that it takes long', () => {
		expect(reading(false, 5000)).toMatch(/^pullbook: 5000 kept sessions .*\n$/);
	});

	it('of a few is not spoken of', () => {
		expect([reading(true, 100), reading(false, 100)]).toEqual(['', '']);
	});
});
