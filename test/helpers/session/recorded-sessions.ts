/**
 * Whole sessions as they were once answered, in the line mode's words: what was answered, and a digest of each output's numbers. They hold
 * what the program asks and tells against what it did before its texts and rooms were put in order.
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { loadJob } from '../../../src/job/load.ts';
import type { Job } from '../../../src/tube/job.ts';
import { begin, give, type Run } from './session-run.ts';

export const SESSIONS = join(import.meta.dirname, '../../fixtures/sessions');

export interface Recorded {
	job: string;
	answers: unknown[];
	/** One a step, the opening first: of all that was put out by it. */
	digests: string[];
}

export const recordedJob = (name: string): Job => loadJob(join(SESSIONS, 'jobs', `${name}.json`)).job;

/** Texts for people: they may be put otherwise. */
const TEXTS = new Set(['why', 'reason', 'cautions', 'includes', 'words', 'says', 'finish', 'log']);

/** Rounded so far that no other order of the same sums shows. */
const FINE = 1e4;

export function digestOf({ outputs }: Run): string {
	const plain = JSON.stringify(outputs, (key, value) => {
		if (TEXTS.has(key)) return undefined;
		if (typeof value === 'number') return Math.round(value * FINE) / FINE + 0;
		return value !== null && typeof value === 'object' && !Array.isArray(value)
			? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
			: value;
	});
	return createHash('sha256').update(plain).digest('base64url').slice(0, 8);
}

/** The digests of a session that is answered so now. */
export function replayed({ job, answers }: Pick<Recorded, 'job' | 'answers'>): string[] {
	let run = begin(recordedJob(job));
	const digests = [digestOf(run)];
	for (const answer of answers) {
		run = give(run, answer);
		digests.push(digestOf(run));
	}
	return digests;
}
