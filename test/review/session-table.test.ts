import { describe, expect, test } from 'vitest';
import {
	markValues,
	type Narrowing,
	narrowed,
	type Sorting,
	sorted,
	type TableSession,
} from '../../src/review/session-table.ts';
import { searchedText } from '../../src/words/session-list.ts';

const row = (id: string, parts: Partial<TableSession>): TableSession => ({
	id,
	job: 'Bow rail',
	bender: 'bay one',
	started: '2031-03-02 09:40',
	status: 'done',
	fits: true,
	...parts,
});

/** Newest first, as they are kept. */
const ROWS = [
	row('e', { job: 'Aft arch', status: 'open', fits: null, started: '2031-03-02 09:40' }),
	row('d', { bender: 'bay two', heat: 'H 4471' }),
	row('c', { fits: false, started: '2031-03-01 08:00' }),
	row('b', { job: 'Cleat', heat: 'H 12', started: '2031-02-28 17:30' }),
	row('a', { bender: 'bay two', fits: false, started: '2030-03-01 17:30' }),
];
const textOf = ({ job, bender, heat }: TableSession) => `${job} ${bender} ${heat ?? ''}`.toLowerCase();
const ids = (rows: readonly TableSession[]) => rows.map(({ id }) => id).join('');

describe('sessions', () => {
	test.each<[Narrowing, string, string]>([
		[{}, '', 'edcba'],
		[{ job: 'Bow rail' }, '', 'dca'],
		[{ job: 'Bow' }, '', ''],
		[{ job: 'bow RAIL' }, '', 'dca'],
		[{ bender: 'bay two' }, '', 'da'],
		[{ heat: 'H 4471' }, '', 'd'],
		[{ date: '2031-03' }, '', 'edc'],
		[{ date: '2031-03-01' }, '', 'c'],
		[{ fits: 'yes' }, '', 'db'],
		[{ fits: 'no' }, '', 'ca'],
		[{ bender: 'bay two', fits: 'no' }, '', 'a'],
		[{}, 'RAIL  two', 'da'],
		[{}, 'two rail', 'da'],
		[{ fits: 'no' }, 'h 44', ''],
		[{}, '2031-03', 'edc'],
		[{}, 'bow 2031-03-01', 'c'],
		[{}, '2031', ''],
	])('with %j and %j are %s', (by, words, wanted) => {
		expect(ids(narrowed(ROWS, { by, words }, textOf))).toBe(wanted);
	});

	test.each([
		['2031-03-02', 'ed'],
		['2031-03-01', 'edc'],
		['2031-02-01', 'edcb'],
		['2032-01-01', ''],
	])('begun since %s are %s', (since, wanted) => {
		expect(ids(narrowed(ROWS, { by: {}, since, words: '' }, textOf))).toBe(wanted);
	});

	test('neither fit nor do not fit as long as they are not finished', () => {
		const rows = [row('a', { status: 'scrapped', fits: false }), row('b', { status: 'open', fits: null })];
		for (const fits of ['yes', 'no']) expect(narrowed(rows, { by: { fits }, words: '' }, textOf)).toEqual([]);
	});

	test('are searched by what the list says of them, in both lists alike', () => {
		const searched = (parts: Partial<TableSession> & { imported?: boolean; mayFit?: true }) =>
			searchedText({ ...row('20310302-094000-ab', {}), ...parts });
		expect(searched({ die: 'Six', heat: 'H-7' })).toContain('six');
		expect(searched({ heat: 'H-7' })).toContain('h-7');
		expect(searched({ fits: false })).toContain('does not fit');
		expect(searched({ fits: false, mayFit: true })).toContain('may fit');
		expect(searched({ status: 'open', fits: null })).toContain('interrupted');
		expect(searched({ status: 'scrapped', fits: false })).not.toContain('fit');
		expect(searched({ imported: true })).toContain('imported');
		expect(searched({})).not.toContain('imported');
	});

	test.each<[Sorting, string]>([
		['newest', 'edcba'],
		['oldest', 'abcde'],
		['job', 'edcab'],
		['bender', 'ecbda'],
	])('sorted %s are %s, those alike as they were', (by, wanted) => {
		expect(ids(sorted(ROWS, by))).toBe(wanted);
	});

	test('are counted as they are narrowed: capitals or not', () => {
		expect(markValues([...ROWS, row('x', { bender: 'Bay ONE' })], 'bender')).toEqual([
			{ value: 'bay one', count: 4 },
			{ value: 'bay two', count: 2 },
		]);
	});

	test('are counted by what they can be narrowed to', () => {
		expect(markValues(ROWS, 'job')).toEqual([
			{ value: 'Bow rail', count: 3 },
			{ value: 'Aft arch', count: 1 },
			{ value: 'Cleat', count: 1 },
		]);
		expect(markValues(ROWS, 'heat').map(({ value }) => value)).toEqual(['H 4471', 'H 12']);
		expect(markValues(ROWS, 'fits')).toEqual([
			{ value: 'yes', count: 2 },
			{ value: 'no', count: 2 },
		]);
		expect(markValues(ROWS, 'date').map(({ value, count }) => `${value} ${count}`)).toEqual([
			'2031-03 3',
			'2031-02 1',
			'2030-03 1',
		]);
		expect(markValues(ROWS, 'date', { date: '2031-03' })[0]).toEqual({ value: '2031-03-02', count: 2 });
	});
});
