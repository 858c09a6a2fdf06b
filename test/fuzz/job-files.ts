import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { layoutText } from '../../src/cli/layout-text.ts';
import { parseJobText } from '../../src/job/load.ts';
import { readJob } from '../../src/job/read.ts';
import { coldPrior, growthOf } from '../../src/session/log/start.ts';
import { jobEnds } from '../../src/session/plan/ends.ts';
import { jobWarnings } from '../../src/session/plan/job-warnings.ts';
import type { Job } from '../../src/tube/job.ts';
import { layout } from '../../src/tube/layout.ts';
import { harmless } from '../../src/words/foreign.ts';
import { faultWords, toldFault } from '../../src/words/job/fault.ts';
import { actsIn } from '../helpers/cli/hostile.ts';
import { begin } from '../helpers/session/session-run.ts';
import { type Change, changed, changes } from './changed-json.ts';
import { finite } from './finite.ts';
import type { Subject } from './subject.ts';

interface Case {
	/** A sample, changed; or any text. */
	sample?: string;
	changes?: Change[];
	text?: string;
}

const JOBS = join(import.meta.dirname, '..', '..', 'jobs');
const SAMPLES = Object.fromEntries(
	readdirSync(JOBS)
		.filter((name) => name.endsWith('.json'))
		.map((name) => [name, JSON.parse(readFileSync(join(JOBS, name), 'utf8'))]),
);

/** Sound jobs are laid out and begun: whatever is read is reckoned with. */
function reckonedWith(job: Job): void {
	const growth = growthOf(coldPrior(job));
	const document = layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
	finite(document);
	const text = layoutText(job, document, []);
	if (actsIn(harmless(text)).length > 0) throw new Error('the layout acts on a terminal');
	const run = begin(job);
	finite([run.state, run.outputs]);
}

export const jobFiles: Subject<Case> = {
	name: 'job-files',
	cases: fc.oneof(
		{ weight: 9, arbitrary: fc.record({ sample: fc.constantFrom(...Object.keys(SAMPLES)), changes: changes(4) }) },
		{ weight: 1, arbitrary: fc.record({ text: fc.oneof(fc.string({ unit: 'binary' }), fc.json()) }) },
	),
	holds({ sample, changes: list = [], text }, cover) {
		const json = text ?? JSON.stringify(changed(SAMPLES[sample ?? ''], list)) ?? '';
		const parsed = parseJobText(json);
		if (!('value' in parsed)) {
			cover(`no JSON: ${parsed.faults.length > 0}`);
			if (parsed.faults.length === 0) throw new Error('no JSON, and not said why');
			return;
		}
		const read = readJob(parsed.value);
		const faults = [...parsed.faults, ...('faults' in read ? read.faults : [])];
		for (const fault of faults) {
			cover(
				`fault: ${fault.at
					.replace(/\[.*/, '')
					.slice(0, 40)
					.replace(/[^\w.]/g, '?')}`,
			);
			if (toldFault(fault).right === '' || faultWords(fault).length > 2000)
				throw new Error(`a fault that does not say what to do: ${fault.at}`);
		}
		if ('faults' in read) {
			if (faults.length === 0) throw new Error('refused, and not said why');
			return;
		}
		cover('sound');
		reckonedWith(read.job);
	},
};
