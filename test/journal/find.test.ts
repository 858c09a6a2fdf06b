import { describe, expect, it } from 'vitest';
import { damagedAfter, newestFirst, sessionsOfJob } from '../../src/journal/find.ts';
import type { KeptRow } from '../../src/journal/kept-row.ts';

const NOW = new Date('2026-03-01T12:00:00Z');

function row(id: string, touched: string, over: Partial<KeptRow> = {}): KeptRow {
	return {
		id,
		path: `/home/sessions/${id}.log`,
		job: { name: 'Fender bar', file: '/none/bar.json', units: 'in', bender: 'shop', die: '6 in' },
		at: touched,
		startId: id,
		touched,
		status: 'open',
		listed: null,
		problem: null,
		isDamaged: false,
		isImported: false,
		kin: null,
		pulls: 0,
		lesson: null,
		besides: [],
		figures: null,
		...over,
	};
}

const ids = (rows: readonly KeptRow[]) => sessionsOfJob(rows, '/none/bar.json', '', NOW).map(({ id }) => id);

describe('the sessions of a job', () => {
	it('come by their newest line; one dated in the future is not taken for the newest, and is there all the same', () => {
		const rows = [
			row('ahead', '2027-01-01T00:00:00.000Z'),
			row('old', '2026-01-01T00:00:00.000Z'),
			row('new', '2026-02-01T00:00:00.000Z'),
		];
		expect(ids(rows)).toEqual(['new', 'old', 'ahead']);
		expect(ids(rows.slice(0, 1))).toEqual(['ahead']);
	});

	it('the newest of a batch is not one that begins in the future', () => {
		const rows = [row('ahead', '2027-01-01T00:00:00.000Z'), row('new', '2026-02-01T00:00:00.000Z')];
		expect(newestFirst(rows, ({ at }) => at, NOW).map(({ id }) => id)).toEqual(['new', 'ahead']);
	});
});

describe('a damaged log that says no more whose it is', () => {
	const problem = { code: 'log-empty', log: '/home/sessions/a.log' } as const;
	const unknown = { job: null, isDamaged: true, problem };

	it('is in the way of what is older than it, and of nothing else', () => {
		const rows = [row('a', '2026-02-01T00:00:00.000Z', unknown)];
		expect(damagedAfter(rows, '2026-01-31T00:00:00.000Z')).toBe(problem);
		expect(damagedAfter(rows, '2026-02-01T00:00:00.000Z')).toBeNull();
		expect(damagedAfter([row('b', '2026-02-01T00:00:00.000Z')], '')).toBeNull();
	});
});
