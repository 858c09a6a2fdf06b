import type { Fault } from '../../job/facts/index.ts';
import type { BentAs } from '../../tube/job.ts';
import { pieceBrief } from '../batch.ts';
import { bentAsBrief } from '../bent-as.ts';
import { countOf } from '../job/fault.ts';
import { type JobStanding, standingWords } from './home.ts';

/** What the pages of one job say: what can be done with it, or what is wrong with its file. */

/** Hand and end, in the order in which they are wanted most. */
export const BENT_WAYS: readonly [words: string, as: BentAs][] = [
	['as drawn', { mirror: false, from: 'start' }],
	["the opposite part: the drawing's mirror image", { mirror: true, from: 'start' }],
	["as drawn, begun at the drawing's far end", { mirror: false, from: 'far' }],
	["the opposite part, begun at the drawing's far end", { mirror: true, from: 'far' }],
];

export const JOB = {
	bendIt: 'Bend it',
	another: 'Begin another tube',
	asDrawn: 'bend it as drawn',
	goOn: (as: BentAs | undefined): string => `go on where it was left${bentAsBrief(as)}`,
	drawing: 'Its drawing',
	change: 'change the job',
	copy: 'copy it to a new job',
	print: 'print its shop sheet',
	said: (job: JobStanding & { summary: string }): string => `${job.summary}; ${standingWords(job)}.`,
} as const;

export const FAULTY_JOB = {
	mendHere: 'mend it here, from the first fault on',
	mend: 'mend it',
	lookAgain: 'look at the file again',
	said: (faults: readonly Fault[]): string => `It cannot be bent yet: ${countOf(faults)}.`,
	elsewhere: 'Mend it in a text editor, then look at it again.',
} as const;

/** A job in the list that has faults. */
export function faultyWords(name: string, faults: readonly Fault[]): { label: string; brief: string } {
	const brief = `${name}: not usable, ${countOf(faults)}`;
	return { label: `${brief}, the first at ${faults[0]?.at}`, brief };
}

export const GONE_JOB = { title: 'The job is gone', empty: 'Press / to go back to the list.' } as const;

/** The program was started for a job that was interrupted before. */
export const OFFER = {
	goOn: 'go on where it was left',
	another: 'begin another tube',
	empty: 'Press + to go on where it was left, or write the number of a choice and press Enter.',
	said: (latest: { bentAs?: BentAs; piece?: number; quantity?: number } = {}): string =>
		`A session of this job${bentAsBrief(latest.bentAs)}${pieceBrief(latest)} was interrupted. Nothing of it is lost.`,
} as const;
