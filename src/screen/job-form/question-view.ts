import { currentAnswer } from '../../job/draft/current.ts';
import type { Draft } from '../../job/draft/draft.ts';
import type { Question } from '../../job/draft/question.ts';
import { questionOf } from '../../job/draft/questions.ts';
import { understood } from '../../units/understood.ts';
import type { Units } from '../../units/units.ts';
import { faultWords } from '../../words/job/fault.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Section } from '../session/pages/page.ts';
import type { FieldEntry, Prompt } from '../shell/prompt.ts';
import { line, wrapped } from '../text/line.ts';
import { draftIn, type JobForm, mended } from './form.ts';
import { growing, growthPicture, growthSections, hasShape, lengthsShortcut } from './growth.ts';
import { pointsWords, summary } from './job-words.ts';
import { MORE } from './part-lists.ts';

/** The question that is open, with the tube as far as it has grown. */
export function questionView(form: JobForm, entry: FieldEntry): HomeView {
	const draft = draftIn(form);
	const units = draft.file.units ?? 'in';
	const question = questionOf(draft, form.shop);
	// Of a job that is being changed one sees what stands there, and can leave it.
	const now = draft.whole ? currentAnswer(draft) : null;
	const typed = typedAnswer(question, entry.field);
	const fault = mended(form);
	const so = growing(form, typed);
	return {
		title: question.title,
		where: draft.file.name ?? 'a new job',
		prompt: promptFor(question, units, now),
		body: (room) => [
			helpSection(question, room.columns),
			{ rank: 0, lines: fault === null ? [] : wrapped(`! ${faultWords(fault)}`, room.columns, 'wrong', 2) },
			{ rank: 0, lines: now === null ? [] : [line(`Now: ${nowWords(question, now)}`)] },
			soFarSection(draft, room.columns),
			...growthSections(so, room),
		],
		...(hasShape(draft) ? { picture: (look) => growthPicture(so, look) } : {}),
		...(question.kind === 'text' ? {} : lengthsShortcut(form, so)),
	};
}

/** The answer that the field stands for, of a list by its number. */
function typedAnswer({ kind, options }: Question, field: string): string {
	const text = field.trim();
	if (kind !== 'choice') return text;
	return /^\d+$/.test(text) ? (options?.[Number(text) - 1]?.value ?? '') : '';
}

function helpSection({ help = '' }: Question, columns: number): Section {
	return { rank: 0, lines: help === '' ? [] : wrapped(help, columns, 'quiet') };
}

/** What was answered before: of a shape by its points these, as they were typed, else tube and die. */
function soFarSection(draft: Draft, columns: number): Section {
	const points = draft.whole ? '' : pointsWords(draft);
	if (points !== '') return { rank: 1, lines: wrapped(points, columns) };
	return { rank: 4, lines: summary(draft.file).map((text) => line(text, 'quiet')) };
}

function nowWords({ options }: Question, now: string): string {
	return options?.find(({ value }) => value === now)?.label ?? now;
}

function promptFor(question: Question, units: Units, now: string | null): Prompt<HomeStep> {
	const { label, kind, options } = question;
	// What can be left out keeps that as its key; to leave what stands there, one goes back.
	const usual = now !== null && question.usual?.value !== '' ? { label: 'as it is', value: now } : question.usual;
	const back = { label: 'back', step: { step: 'formBack' } as const };
	const star = MORE;
	const plus = usual === undefined ? {} : { plus: { label: usual.label, step: given(usual.value) } };
	if (kind === 'text') {
		const text = (words: string) =>
			words === '' && usual === undefined
				? 'Write it on the keyboard and press Enter; / goes back.'
				: given(words === '' && question.usual === undefined ? (now ?? '') : words);
		return { label, text, back, empty: '' };
	}
	if (kind === 'choice') {
		const choices = (options ?? []).map(({ label: words, value }) => ({
			label: words,
			step: given(value),
			...(value === usual?.value ? { advised: true } : {}),
		}));
		return { label, choices, ...plus, star, back, empty: 'Write the number of a choice and press Enter; / goes back.' };
	}
	const unit = kind === 'length' ? `, ${units}` : kind === 'angle' ? ', degrees' : '';
	return {
		label: `${label}${unit}`,
		read: given,
		understood: (text) => understood(text, kind, units),
		...plus,
		star,
		back,
		empty: `Write the number and press Enter${usual === undefined ? '' : `, or + for: ${usual.label}`}; / goes back.`,
	};
}

function given(text: string): HomeStep {
	return { step: 'formAnswer', text };
}
