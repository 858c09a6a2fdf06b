import type { Fault } from '../../../job/facts/index.ts';
import type { BentAs } from '../../../tube/job.ts';
import { pieceBrief } from '../../../words/batch.ts';
import { bentAsBrief } from '../../../words/bent-as.ts';
import { countOf, faultWords } from '../../../words/job/fault.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import type { Section } from '../../session/pages/page.ts';
import type { Choice } from '../../shell/prompt.ts';
import { chopped, wrapped } from '../../text/line.ts';
import type { JobRow, SessionRow } from '../home-port.ts';
import type { HomeState } from '../home-state.ts';
import type { HomeStep, HomeView } from '../home-view.ts';
import { stateOf } from './main.ts';
import { helpKeys, moreFrom, TO_HOME } from './usual.ts';

/** What can be done with a job: bent as drawn or otherwise, gone on with, changed, copied; one with faults, mended. */
export function jobPage({ jobs, sessions }: HomeState, path: string): HomeView {
	const job = jobs.find((row) => row.path === path);
	if (job === undefined) return gonePage(path);
	if (job.faults !== undefined) return faultyPage(job, job.faults);
	return soundPage(
		job,
		sessions.find(({ id }) => id === job.open),
	);
}

/** Hand and end, in the order in which they are wanted most. */
const WAYS: readonly [words: string, as: BentAs][] = [
	['as drawn', { mirror: false, from: 'start' }],
	["the opposite part: the drawing's mirror image", { mirror: true, from: 'start' }],
	["as drawn, begun at the drawing's far end", { mirror: false, from: 'far' }],
	["the opposite part, begun at the drawing's far end", { mirror: true, from: 'far' }],
];

/** `left`: its session that was interrupted. */
function soundPage(job: JobRow, left: SessionRow | undefined): HomeView {
	const { name, summary, path, open, sample } = job;
	const bend = (as: BentAs): HomeStep => ({ step: 'open', target: path, resume: false, as });
	const goOn: HomeStep | null = open === undefined ? null : { step: 'open', target: open, resume: true };
	const choices: Choice<HomeStep>[] = [
		...(goOn === null
			? []
			: [{ label: `go on where it was left${bentAsBrief(left?.bentAs)}`, step: goOn, advised: true }]),
		...WAYS.map(([label, as], at) => ({
			group: goOn === null ? 'Bend it' : 'Begin another tube',
			label,
			step: bend(as),
			...(goOn === null && at === 0 ? { advised: true } : {}),
		})),
		...(sample ? [] : [change(path)]),
		{ group: 'Its drawing', label: 'copy it to a new job', step: { step: 'form', path, copy: true } },
	];
	const help = helpKeys({ page: 'job', path });
	return {
		title: name,
		prompt: {
			label: CHOICE,
			choices,
			plus: goOn === null ? { label: 'bend it as drawn', step: bend(WAYS[0]![1]) } : { label: 'go on', step: goOn },
			star: moreFrom({ page: 'job', path }),
			back: TO_HOME,
			empty: CHOOSE_OR_BACK,
		},
		keys: [...help.keys, ['p', 'print its shop sheet']],
		shortcuts: { ...help.shortcuts, p: { step: 'paper', path, sample: sample === true } },
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(`${summary}; ${stateOf(job)}.`, columns) },
			{ rank: 1, lines: chopped(path, columns, 'quiet') },
		],
	};
}

const change = (path: string): Choice<HomeStep> => ({
	group: 'Its drawing',
	label: 'change the job',
	step: { step: 'form', path, copy: false },
});

/** Every fault with its place, and what to do about it. */
function faultyPage({ path, name }: JobRow, faults: readonly Fault[]): HomeView {
	const mend: HomeStep = { step: 'form', path, copy: false };
	// A fault of the whole, or at a line of the text: there are no parts yet that could be asked for.
	const inForm = faults.every(({ at }) => !/^(job$|line \d)/.test(at));
	return {
		title: name,
		prompt: {
			label: CHOICE,
			choices: [
				...(inForm ? [{ label: 'mend it here, from the first fault on', step: mend, advised: true }] : []),
				{ label: 'look at the file again', step: { step: 'again', path } },
			],
			...(inForm ? { plus: { label: 'mend it', step: mend } } : {}),
			star: moreFrom({ page: 'job', path }),
			back: TO_HOME,
			empty: CHOOSE_OR_BACK,
		},
		...helpKeys({ page: 'job', path }),
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(`It cannot be bent yet: ${countOf(faults)}.`, columns, 'strong') },
			...faults.map(
				(fault, at): Section => ({ rank: at, lines: wrapped(`! ${faultWords(fault)}`, columns, 'wrong', 2) }),
			),
			{ rank: 0, lines: inForm ? [] : wrapped('Mend it in a text editor, then look at it again.', columns) },
			{ rank: 0, lines: chopped(path, columns, 'quiet') },
		],
	};
}

function gonePage(path: string): HomeView {
	return {
		title: 'The job is gone',
		prompt: { label: '', back: TO_HOME, empty: 'Press / to go back to the list.' },
		body: ({ columns }) => [{ rank: 0, lines: chopped(path, columns) }],
	};
}

/** The program was started for a job that was interrupted before: go on, or begin another tube as asked for? */
export function offerPage(job: JobRow): HomeView {
	const open: HomeStep = { step: 'open', target: job.open ?? job.path, resume: true };
	return {
		title: job.name,
		prompt: {
			label: CHOICE,
			choices: [
				{ label: 'go on where it was left', step: open, advised: true },
				{ label: 'begin another tube', step: { step: 'open', target: job.path, resume: false } },
			],
			plus: { label: 'go on', step: open },
			star: moreFrom({ page: 'offer', job }),
			back: TO_HOME,
			empty: 'Press + to go on where it was left, or write the number of a choice and press Enter.',
		},
		...helpKeys({ page: 'offer', job }),
		body: ({ columns }) => [
			{
				rank: 0,
				lines: wrapped(
					`A session of this job${bentAsBrief(job.latest?.bentAs)}${pieceBrief(job.latest ?? {})} was interrupted. Nothing of it is lost.`,
					columns,
				),
			},
		],
	};
}
