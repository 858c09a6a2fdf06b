import type { Draft } from '../../job/draft/draft.ts';
import { fileNameFor } from '../../job/draft/file-text.ts';
import { FORM_HELP, ITEM, LEAVE, NAMED, TAKEN } from '../../words/job-form/pages.ts';
import { SHAPE_ROWS } from '../../words/job-form/part-lists.ts';
import { CHOICE, KEY_SAYS, MORE_TITLE } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { helpView } from '../home/plain-views.ts';
import type { Choice, FieldEntry } from '../shell/prompt.ts';
import { line, wrapped } from '../text/line.ts';
import { asking, changedFile, draftIn, type JobForm } from './job-form.ts';
import { overviewView } from './overview.ts';
import {
	asideView,
	askingChoice,
	checkListView,
	figureListView,
	helpOf,
	shapeListView,
	tubeListView,
} from './part-lists.ts';
import { questionView } from './question-view.ts';

/** The page of a job that is being written. */
export function formView(form: JobForm, entry: FieldEntry): HomeView {
	const { aside } = form;
	if (aside === null) return draftIn(form).at === 'overview' ? overviewView(form) : questionView(form, entry);
	switch (aside.aside) {
		case 'tube':
			return tubeListView(form);
		case 'shape':
			return shapeListView(form);
		case 'fields':
			return figureListView(form);
		case 'checks':
			return checkListView(form);
		case 'taken':
			return takenView(form, aside.path);
		case 'named':
			return namedView(form);
		case 'leave':
			return leaveView(form);
		case 'more':
			return formMoreView(form);
		case 'help':
			return helpView(FORM_HELP, { step: 'formBack' });
		default:
			return itemView(form, aside.aside, aside.item);
	}
}

function showForm(form: JobForm): HomeStep {
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
		{ label: ITEM.change(what, item + 1), step: showForm(asking(form, open('instead'))) },
		...(what === 'check' ? [] : [{ label: ITEM.before, step: showForm(asking(form, open('before'))) }]),
		{ label: ITEM.out(what, item + 1), step: showForm(changedFile(form, withoutPart(file, what, item))) },
		...(what === 'bend'
			? [askingChoice(form, SHAPE_ROWS.die(file, item), { at: 'bendDie', item, put: 'instead' })]
			: []),
	];
	return asideView(form, ITEM.title(what, item + 1), CHOICE, choices);
}

function withoutPart(file: Draft['file'], what: 'bend' | 'point' | 'check', item: number): Draft['file'] {
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
		{ label: TAKEN.otherName, step: { step: 'formAside', aside: { aside: 'named' } } },
		{ label: TAKEN.over, step: { step: 'formSave', form, to: { path }, over: true } },
	];
	return {
		...asideView(form, TAKEN.title, CHOICE, choices),
		body: ({ columns }) => [{ rank: 0, lines: wrapped(TAKEN.said(path), columns, 'alert', 2) }],
	};
}

function namedView(form: JobForm): HomeView {
	return {
		title: NAMED.title,
		prompt: {
			label: NAMED.label,
			text: (words) =>
				/[\p{L}\p{N}]/u.test(words)
					? { step: 'formSave', form, to: { file: fileNameFor(words.replace(/\.json$/i, '')) }, over: false }
					: NAMED.wrong,
			back: { label: KEY_SAYS.back, step: { step: 'formBack' } },
			empty: '',
		},
		body: () => [{ rank: 0, lines: [line(NAMED.said)] }],
	};
}

function leaveView(form: JobForm): HomeView {
	return {
		title: LEAVE.title,
		prompt: {
			label: '',
			plus: { label: LEAVE.plus, step: { step: 'page', page: { page: 'home' } } },
			back: { label: LEAVE.back, step: { step: 'formBack' } },
			empty: LEAVE.empty,
		},
		body: ({ columns }) => [{ rank: 0, lines: wrapped(LEAVE.said, columns, 'alert') }],
		...helpOf(form),
	};
}

function formMoreView(form: JobForm): HomeView {
	return asideView(form, MORE_TITLE, CHOICE, [
		{ label: KEY_SAYS.help, step: helpOf(form).shortcuts.h },
		{ label: LEAVE.choice, step: { step: 'formAside', aside: { aside: 'leave' } } },
	]);
}
