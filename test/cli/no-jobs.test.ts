import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type JobFolder, listedJobs } from '../../src/cli/job-folder.ts';
import { workshopAt } from '../../src/cli/workshop.ts';
import { JobNotSaved } from '../../src/job/save.ts';
import { PROGRAM } from '../helpers/disk/program.ts';
import { Pty } from '../helpers/screen/pty.ts';

let folder = '';
let jobs: JobFolder = { own: '', samples: '' };
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), 'no-jobs-'));
	jobs = { own: join(folder, 'jobs'), samples: join(folder, 'samples') };
	mkdirSync(jobs.samples!);
});
afterEach(() => rmSync(folder, { recursive: true }));

describe('a folder without jobs', () => {
	it('shows the samples until the first job is written, which makes the folder', () => {
		const workshop = workshopAt(join(folder, 'home'), jobs);
		expect(listedJobs(jobs)).toEqual({ folder: jobs.samples, samples: true });
		expect(workshop.saveJob(workshop.jobPath('step.json'), '{}', false)).toBe(true);
		expect(listedJobs(jobs)).toEqual({ folder: jobs.own, samples: false });
		expect(workshop.saveJob(workshop.jobPath('step.json'), '{}', false)).toBe(false);
	});

	it('says so when the folder cannot be made', () => {
		writeFileSync(join(folder, 'file'), '');
		const workshop = workshopAt(join(folder, 'home'), { ...jobs, own: join(folder, 'file', 'jobs') });
		expect(() => workshop.saveJob(workshop.jobPath('step.json'), '{}', false)).toThrow(JobNotSaved);
	});

	it('says on the home screen what to do', { timeout: 60_000 }, async () => {
		const pty = new Pty(process.execPath, [PROGRAM, '--home', join(folder, 'home')], { cwd: folder });
		await pty.until('This folder has no jobs yet. Try a sample, or write a job');
		await pty.until(/^Samples$/m);
		pty.write('\x03');
		expect(await pty.ended).toEqual({ exitCode: 130, signal: 0 });
	});
});
