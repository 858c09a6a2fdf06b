import type { Fault } from '../../../job/facts/index.ts';
import type { BentAs } from '../../../tube/job.ts';
import { faultWords } from '../../../words/job/fault.ts';
import { BENT_WAYS, FAULTY_JOB, GONE_JOB, JOB, OFFER } from '../../../words/screen/job.ts';
import { CHOICE, CHOOSE_OR_BACK, KEY_SAYS } from '../../../words/screen/usual.ts';
import type { Section } from '../../session/pages/page.ts';
import type { Choice } from '../../shell/prompt.ts';
import { chopped, wrapped } from '../../text/line.ts';
import type { JobRow, SessionRow } from '../home-port.ts';
import type { HomeState } from '../home-state.ts';
import type { HomeStep, HomeView } from '../home-view.ts';
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

/** `left`: its session that was interrupted. */
function soundPage(job: JobRow, left: SessionRow | undefined): HomeView {
	const { name, path, open, sample } = job;
	const bend = (as: BentAs): HomeStep => ({ step: 'open', target: path, resume: false, as });
	const goOn: HomeStep | null = open === undefined ? null : { step: 'open', target: open, resume: true };
	const choices: Choice<HomeStep>[] = [
		...(goOn === null ? [] : [{ label: JOB.goOn(left?.bentAs), step: goOn, advised: true }]),
		...BENT_WAYS.map(([label, as], at) => ({
			group: goOn === null ? JOB.bendIt : JOB.another,
			label,
			step: bend(as),
			...(goOn === null && at === 0 ? { advised: true } : {}),
		})),
		...(sample ? [] : [changeChoice(path)]),
		{ group: JOB.drawing, label: JOB.copy, step: { step: 'form', path, copy: true } },
	];
	const help = helpKeys({ page: 'job', path });
	return {
		title: name,
		prompt: {
			label: CHOICE,
			choices,
			plus: goOn === null ? { label: JOB.asDrawn, step: bend(BENT_WAYS[0]![1]) } : { label: KEY_SAYS.goOn, step: goOn },
			star: moreFrom({ page: 'job', path }),
			back: TO_HOME,
			empty: CHOOSE_OR_BACK,
		},
		keys: [...help.keys, ['p', JOB.print]],
		shortcuts: { ...help.shortcuts, p: { step: 'paper', path, sample: sample === true } },
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(JOB.said(job), columns) },
			{ rank: 1, lines: chopped(path, columns, 'quiet') },
		],
	};
}

const changeChoice = (path: string): Choice<HomeStep> => ({
	group: JOB.drawing,
	label: JOB.change,
	step: { step: 'form', path, copy: false },
});

/** Every fault with its place, and what to do about it. */
function faultyPage({ path, name }: JobRow, faults: readonly Fault[]): HomeView {
	const mend: HomeStep = { step: 'form', path, copy: false };
	// A fault of the whole, or at a line of the text: there are no parts yet that could be asked for.
	const inForm = faults.every(({ at }) => at !== 'job' && at !== 'text');
	return {
		title: name,
		prompt: {
			label: CHOICE,
			choices: [
				...(inForm ? [{ label: FAULTY_JOB.mendHere, step: mend, advised: true }] : []),
				{ label: FAULTY_JOB.lookAgain, step: { step: 'again', path } },
			],
			...(inForm ? { plus: { label: FAULTY_JOB.mend, step: mend } } : {}),
			star: moreFrom({ page: 'job', path }),
			back: TO_HOME,
			empty: CHOOSE_OR_BACK,
		},
		...helpKeys({ page: 'job', path }),
		body: ({ columns }) => [
			{ rank: 0, lines: wrapped(FAULTY_JOB.said(faults), columns, 'strong') },
			...faults.map(
				(fault, at): Section => ({ rank: at, lines: wrapped(`! ${faultWords(fault)}`, columns, 'wrong', 2) }),
			),
			{ rank: 0, lines: inForm ? [] : wrapped(FAULTY_JOB.elsewhere, columns) },
			{ rank: 0, lines: chopped(path, columns, 'quiet') },
		],
	};
}

function gonePage(path: string): HomeView {
	return {
		title: GONE_JOB.title,
		prompt: { label: '', back: TO_HOME, empty: GONE_JOB.empty },
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
				{ label: OFFER.goOn, step: open, advised: true },
				{ label: OFFER.another, step: { step: 'open', target: job.path, resume: false } },
			],
			plus: { label: KEY_SAYS.goOn, step: open },
			star: moreFrom({ page: 'offer', job }),
			back: TO_HOME,
			empty: OFFER.empty,
		},
		...helpKeys({ page: 'offer', job }),
		body: ({ columns }) => [
			{
				rank: 0,
				lines: wrapped(OFFER.said(job.latest), columns),
			},
		],
	};
}
