import { describe, expect, it } from 'vitest';
import { wallClock } from '../../src/cli/wall-clock.ts';
import { localMinute } from '../../src/words/local-time.ts';

describe('a time as people read it', () => {
	// Examples of RFC 3339, section 5.8, each of which is one moment with the offset that it was written in; the last one our own.
	it.each([
		['1996-12-20T00:39:57Z', -8 * 60, '1996-12-19 16:39 -08:00', '16:39:57'],
		['1985-04-12T23:20:50.52Z', 0, '1985-04-12 23:20 +00:00', '23:20:50'],
		['1937-01-01T11:40:27.87Z', 20, '1937-01-01 12:00 +00:20', '12:00:27'],
		['2026-02-03T02:00:00Z', -(3 * 60 + 30), '2026-02-02 22:30 -03:30', '22:30:00'],
	])('%s with the clock %i minutes ahead', (iso, ahead, minute, second) => {
		const clock = (at: string) => wallClock(at, () => ahead);
		expect(localMinute(iso, clock)).toBe(minute);
		expect(clock(iso)?.time).toBe(second);
	});

	it('that is none stands as it is', () => {
		expect(localMinute('', wallClock)).toBe('');
		expect(localMinute('yesterday', wallClock)).toBe('yesterday');
	});
});
