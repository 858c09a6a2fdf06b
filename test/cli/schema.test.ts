import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readCommandLine } from '../../src/cli/args.ts';
import { runLayout } from '../../src/cli/layout.ts';
import { runLog } from '../../src/cli/log.ts';
import { runSchema } from '../../src/cli/schema.ts';
import { readJob } from '../../src/job/read.ts';
import { documentFaults, schemaFaults } from '../helpers/cli/documents.ts';
import { written } from '../helpers/cli/written.ts';
import { bendIn } from '../helpers/disk/kept-home.ts';
import { SAMPLE_JOBS } from '../helpers/disk/program.ts';
import { hatJob } from '../helpers/shop/hat.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';

const home = mkdtempSync(join(tmpdir(), 'pullbook-schema-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

function printed(name: string) {
	const { io, kept } = written();
	return { code: runSchema(name, io), schema: JSON.parse(kept.out) };
}

const jobOf = (file: string) => JSON.parse(readFileSync(file, 'utf8'));
const named = SAMPLE_JOBS.map((file) => [basename(file), file] as const);

describe('pullbook schema', () => {
	it.each(['log', 'layout', 'job'])('%s prints a JSON Schema with its title', (name) => {
		const { code, schema } = printed(name);
		expect(code).toBe(0);
		expect(schema).toMatchObject({
			$schema: 'https://json-schema.org/draft/2020-12/schema',
			title: `pullbook ${name}`,
			type: 'object',
		});
	});

	it('of another document, or none, says which there are, exit code 2', () => {
		expect(() => printed('cut')).toThrow('There is no schema "cut". There are log, layout, job.');
		expect(() => printed('cut')).toThrow(expect.objectContaining({ exitCode: 2 }));
		expect(() => readCommandLine(['schema'])).toThrow('pullbook schema needs');
	});
});

describe('a job file', () => {
	it.each(named)('%s keeps to its schema', (_, file) => {
		expect(documentFaults('job', jobOf(file))).toEqual([]);
	});

	it('that the reader takes, the schema takes; what it does not know, neither takes', () => {
		const rail = jobOf(SAMPLE_JOBS[0]!);
		for (const place of ['', 'tube', 'tooling', 'shape', 'tolerance', 'trim']) {
			const more = structuredClone(rail);
			if (place === '') more.colour = 'red';
			else more[place] = { ...more[place], colour: 'red' };
			expect(schemaFaults('job', more), place).not.toEqual([]);
			expect(readJob(more)).toHaveProperty('faults');
		}
		for (const part of ['pullbook', 'name', 'units', 'tube', 'shape']) {
			const { [part]: _, ...less } = rail;
			expect(schemaFaults('job', less), part).not.toEqual([]);
			expect(readJob(less)).toHaveProperty('faults');
		}
	});
});

describe('what the program prints', () => {
	it.each(named)('layout of %s keeps to its schema', async (_, file) => {
		for (const chalk of [false, true]) {
			const { io, kept } = written();
			const as = { mirror: true, from: 'far' } as const;
			await runLayout({ file, json: true, chalk, home, as, learn: false }, io);
			expect(documentFaults('layout', JSON.parse(kept.out))).toEqual([]);
		}
	});

	it.each([
		['finished, with checks', { day: 3, job: hatJob() }],
		['left', { day: 4, answers: 3, job: plainJob() }],
		[
			'of a tube with a heat, of two wanted',
			{ day: 5, job: plainJob({ quantity: 2, tube: { ...plainJob().tube, heat: 'H-7' } }) },
		],
	])('the log of a session %s keeps to its schema', async (_, bending) => {
		const { id } = bendIn(home, bending);
		const { io, kept } = written();
		expect(await runLog({ id, json: true, home }, io)).toBe(0);
		const document = JSON.parse(kept.out);
		expect(documentFaults('log', document)).toEqual([]);
		// A later version may say more: the schema lets it; the types that check this version do not.
		expect(schemaFaults('log', { ...document, later: 1 })).toEqual([]);
		expect(documentFaults('log', { ...document, later: 1 })).not.toEqual([]);
		expect(schemaFaults('log', { ...document, status: 'lost' })).not.toEqual([]);
	});
});
