import type { Draft } from '../../job/draft/draft.ts';
import { fileNameFor } from '../../job/draft/file-text.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Choice, FieldEntry } from '../shell/prompt.ts';
import { line, wrapped } from '../text/line.ts';
import { asking, changedFile, draftIn, type JobForm } from './form.ts';
import { overviewView } from './overview.ts';
import { asideView, asked, checksView, fieldsView, shapeView, tubeView } from './part-lists.ts';
import { questionView } from './question-view.ts';

/** The page of a job that is being written. */
export function formView(form: JobForm, entry: FieldEntry): HomeView {
	const { aside } = form;
	if (aside === null) return draftIn(form).at === 'overview' ? overviewView(form) : questionView(form, entry);
	switch (aside.aside) {
		case 'tube':
			return tubeView(form);
		case 'shape':
			return shapeView(form);
		case 'fields':
			return fieldsView(form);
		case 'checks':
			return checksView(form);
		case 'taken':
			return takenView(form, aside.path);
		case 'named':
			return namedView(form);
		case 'leave':
			return leaveView();
		case 'more':
			return asideView('More', 'Number of your choice', [HELP_CHOICE, LEAVE_CHOICE]);
		case 'help':
			return helpView();
		default:
			return itemView(form, aside.aside, aside.item);
	}
}

function shown(form: JobForm): HomeStep {
	return { step: 'formShown', form };
}

/** What can be done with a bend, a point or a check. */
function itemView(form: JobForm, what: 'bend' | 'point' | 'check', item: number): HomeView {
	const { file } = draftIn(form);
	const open = (put: Draft['put']): Partial<Draft> => {
		if (what === 'bend') return { at: 'straight', item, put, part: { piece: 'bend' } };
		return what === 'point' ? { at: 'x', item, put } : { at: 'checkKind', item, put };
	};
	const choices: Choice<HomeStep>[] = [
		{ label: `change ${what} ${item + 1}`, step: shown(asking(form, open('instead'))) },
		...(what === 'check' ? [] : [{ label: `put another before it`, step: shown(asking(form, open('before'))) }]),
		{ label: `take ${what} ${item + 1} out`, step: shown(changedFile(form, without(file, what, item))) },
		...(what === 'bend' ? [bendDieChoice(form, item)] : []),
	];
	return asideView(`${what[0]!.toUpperCase()}${what.slice(1)} ${item + 1}`, 'Number of your choice', choices);
}

function bendDieChoice(form: JobForm, item: number): Choice<HomeStep> {
	const { shape, tooling } = draftIn(form).file;
	const own = tooling?.die === undefined ? "the job's" : `the job's, ${tooling.die}`;
	return asked(form, `its die: ${shape?.bends?.[item]?.die ?? own}`, { at: 'bendDie', item, put: 'instead' });
}

function without(file: Draft['file'], what: 'bend' | 'point' | 'check', item: number): Draft['file'] {
	const { shape, checks = [], ...rest } = file;
	if (what === 'check') {
		const left = checks.toSpliced(item, 1);
		return { ...rest, ...(shape === undefined ? {} : { shape }), ...(left.length === 0 ? {} : { checks: left }) };
	}
	const key = what === 'bend' ? 'bends' : 'points';
	return { ...file, shape: { ...shape, [key]: (shape?.[key] ?? []).toSpliced(item, 1) } };
}

/** There is a file of that name: nothing is written over it unasked. */
function takenView(form: JobForm, path: string): HomeView {
	const choices: Choice<HomeStep>[] = [
		{ label: 'save it under another name', step: { step: 'formAside', aside: { aside: 'named' } } },
		{ label: 'write over the file', step: { step: 'formSave', form, to: { path }, over: true } },
	];
	return {
		...asideView('There is a file of that name', 'Number of your choice', choices),
		body: ({ columns }) => [{ rank: 0, lines: wrapped(`${path} is there already.`, columns, 'alert', 2) }],
	};
}

function namedView(form: JobForm): HomeView {
	return {
		title: 'Save under another name',
		prompt: {
			label: 'Name of the file',
			text: (words) =>
				/[\p{L}\p{N}]/u.test(words)
					? { step: 'formSave', form, to: { file: fileNameFor(words.replace(/\.json$/i, '')) }, over: false }
					: 'Write a name of letters or digits; / goes back.',
			back: { label: 'back', step: { step: 'formBack' } },
			empty: '',
		},
		body: () => [{ rank: 0, lines: [line('It goes into the folder of jobs in use; .json is added.')] }],
	};
}

function leaveView(): HomeView {
	return {
		title: 'Leave without saving?',
		prompt: {
			label: '',
			plus: { label: 'leave it', step: { step: 'page', page: { page: 'home' } } },
			back: { label: 'go on with it', step: { step: 'formBack' } },
			empty: 'Press + to leave the job unsaved, / to go on with it.',
		},
		body: ({ columns }) => [{ rank: 0, lines: wrapped('What was answered is not kept then.', columns, 'alert') }],
	};
}

const HELP_CHOICE: Choice<HomeStep> = { label: 'help', step: { step: 'formAside', aside: { aside: 'help' } } };
const LEAVE_CHOICE: Choice<HomeStep> = {
	label: 'leave without saving',
	step: { step: 'formAside', aside: { aside: 'leave' } },
};

const HELP = [
	'One question at a time; the drawing and the marks grow with every answer, and with every key of one.',
	'Lengths as on the drawing: 31 1/2, 9-3/8, 2\' 6", 362 mm, 12,5, or sums as 12 7/16 - 1.',
	'A straight is measured from where one bend ends to where the next begins, tangent to tangent.',
	'An offset leads the tube over and on beside its own line: two bends by rise and run, or by rise and angle.',
	'/ takes the last answer back, as far as you like. Nothing is written before + in the overview.',
] as const;

function helpView(): HomeView {
	return {
		title: 'Help: a job on the screen',
		prompt: { label: '', back: { label: 'back', step: { step: 'formBack' } }, empty: 'Press / to go back.' },
		body: ({ columns }) => HELP.map((text) => ({ rank: 0, lines: wrapped(text, columns, 'plain', 2) })),
	};
}
