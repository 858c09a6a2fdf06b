import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadJob } from '../../src/job/load.ts';
import { checkValue } from '../../src/tube/checks.ts';
import type { Job } from '../../src/tube/job.ts';
import { finishedShape } from '../../src/tube/resolve.ts';
import { warnings } from '../../src/tube/warnings.ts';

const FOLDER = new URL('../../jobs/', import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const load = (file: string): Job => loadJob(new URL(file, FOLDER).pathname).job;

describe.each(files)('sample job %s', (file) => {
	const job = load(file);
	const shape = finishedShape(job, { value: job.tooling.growth ?? 1 });

	it('has a name and says in its notes what the part is', () => {
		expect(file).toMatch(/^[a-z]+(-[a-z]+)*\.json$/);
		expect(job.notes.length).toBeGreaterThan(40);
	});

	it('can be bent without a warning, on a machine that springs back as much as most do', () => {
		// Take-up of 3 degrees and 7 % in proportion: common practice, no source.
		expect(warnings(job, shape, { value: job.tooling.growth ?? 1, from: 'job' }, (angle) => angle * 1.07 + 3)).toEqual(
			[],
		);
	});

	it('has checks whose design values are numbers of the right size', () => {
		const longest = shape.straights.reduce((sum, straight) => sum + straight, 0) * 2;
		for (const check of job.checks) {
			const value = checkValue(check, shape, job.tube);
			expect(Math.abs(value)).toBeLessThan(check.kind === 'angle' ? 180 : longest);
		}
	});
});

it('together show what a job file can say', () => {
	const jobs = files.map(load);
	const bends = jobs.map(({ shape }) => (shape.kind === 'bends' ? shape.bends.length : shape.points.length - 2));
	expect(bends).toEqual(expect.arrayContaining([1, 2, 3, 4, 8]));
	expect(jobs.some(({ units }) => units === 'mm')).toBe(true);
	expect(jobs.some(({ shape }) => shape.kind === 'points')).toBe(true);
	const kinds = new Set(jobs.flatMap(({ checks }) => checks.map(({ kind }) => kind)));
	expect([...kinds].sort()).toEqual(['angle', 'drop', 'out', 'ovality', 'overall', 'span', 'width']);
	expect(new Set(jobs.map(({ name }) => name)).size).toBe(jobs.length);
});
