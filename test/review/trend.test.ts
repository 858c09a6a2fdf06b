import { describe, expect, it } from 'vitest';
import { newsOf, trendOf } from '../../src/review/trend.ts';
import { NEWS } from '../../src/review/trend-runs.ts';
import { shiftWords } from '../../src/words/trend.ts';
import { KIN, row, rows } from '../helpers/session/shifted-rows.ts';

describe('the trend of sessions', () => {
	it('charts what the sessions tell, the oldest first, and leaves out what they do not', () => {
		const { charts, count, shift, springback } = trendOf(rows(20, 0));
		expect([count, shift, springback]).toEqual([20, null, 'whole']);
		expect(charts.springback.chart!.points.map(({ value }) => value).slice(0, 3)).toEqual([5.5, 5.7, 5.5]);
		expect(charts.springback.sessions[0]).toEqual({ id: 's00000', at: row(0).at, job: 'Rescue rail' });
		expect(charts.springback.chart!.points.flatMap(({ rules }) => rules)).toEqual([]);
		expect(charts.miss).toEqual({ usual: 0, sessions: [], chart: null });
	});

	it('has limits from before a shift as long as that is news, and marks what came after', () => {
		const { charts, shift } = trendOf(rows(20, 4));
		expect(shift).toMatchObject({ cause: 'all-angles', before: { id: 's00019' }, since: { id: 's00020' } });
		expect(shift!.by).toBeCloseTo(1.5, 0);
		const { points, base } = charts.springback.chart!;
		expect(base).toBe(20);
		expect(points.slice(20).every(({ rules }) => rules.includes('beyond-limit'))).toBe(true);
		expect(points.slice(0, 20).flatMap(({ rules }) => rules)).toEqual([]);
	});

	it('takes a shift for what is usual once it is no news', () => {
		const { charts, shift } = trendOf(rows(20, 20));
		expect(shift!.ago).toBeGreaterThanOrEqual(NEWS);
		expect(charts.springback.sessions[0]!.id).toBe('s00020');
		expect(charts.springback.chart!.points.flatMap(({ rules }) => rules)).toEqual([]);
	});

	it('of several tubes tells each by how far it departs from its like', () => {
		const other = { ...KIN, die: '4 in', clr: 101.6 };
		const mixed = rows(30, 0).map((each, i) =>
			i % 2 ? each : { ...each, kin: other, lesson: { ...each.lesson!, kin: other } },
		);
		const { springback, charts } = trendOf(mixed);
		expect(springback).toBe('departure');
		for (const { value } of charts.springback.chart!.points) expect(Math.abs(value)).toBeLessThan(1);
	});

	it('counts no session that made nothing, and none beyond the newest 200', () => {
		const none = { figures: { springback: null, error: null, miss: null, taken: 0, pulls: 1 } };
		expect(trendOf([row(40, 0, none), ...rows(12, 0)]).count).toBe(12);
		expect(trendOf(rows(300, 0)).count).toBe(200);
		expect(trendOf([])).toMatchObject({ count: 0, shift: null });
	});
});

const newestFirst = (a: { id: string }, b: { id: string }) => (a.id < b.id ? 1 : -1);

describe('the news at a start', () => {
	const clock = (iso: string) => ({ day: iso.slice(0, 10), time: iso.slice(11, 19), offset: '+00:00' });

	it('is none where nothing has moved, or it is older than six sessions', () => {
		expect(newsOf([])).toEqual([]);
		expect(newsOf(rows(30, 0))).toEqual([]);
		expect(newsOf(rows(30, 20))).toEqual([]);
	});

	it('is taken back where the next tubes do not bear it out, and stays for six where they do', () => {
		const then = (count: number, by: number, more: readonly number[]) =>
			newsOf([...rows(30, count, by), ...more.map((each, i) => row(30 + count + i, each))].sort(newestFirst)).length;
		let first = 1;
		while (then(first, 1.5, []) === 0) first++;
		expect(first).toBeLessThan(NEWS);
		// The same pulls, then springback as it was: whatever showed was no shift.
		expect(then(first, 1.5, [-0.2, -0.2])).toBe(0);
		for (let stays = 0; stays < NEWS; stays++) expect(then(first, 1.5, Array(stays).fill(1.5))).toBe(1);
		expect(then(first, 1.5, Array(NEWS).fill(1.5))).toBe(0);
	});

	it('tells of each bender by itself, with the month before it', () => {
		const shifted = rows(40, 4);
		const other = rows(40, 0).map((each) => ({ ...each, job: { ...each.job!, bender: 'yard' } }));
		const [news, ...more] = newsOf(shifted.flatMap((each, i) => [each, ...(other[i] ? [other[i]] : [])]));
		expect(more).toEqual([]);
		// Forty sessions of a day each, from October 1.
		expect(shiftWords(news!.bender, news!.shift, clock)).toBe(
			`Bender shop springs back ${news!.shift.by.toFixed(1)}° more at 45° than before 2026-11-10. Die worn, other steel, or the pointer moved?`,
		);
		const { shift } = newsOf(rows(31, 4))[0]!;
		expect(shiftWords('shop', shift, clock)).toContain(' than in October. Die worn,');
		expect(shiftWords('shop', { ...shift, by: -1.24 }, clock)).toContain('springs back 1.2° less at 45°');
		expect(shiftWords('shop', shift, () => null)).toContain(' than before session s00031.');
	});
});
