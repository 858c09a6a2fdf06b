import { currentAnswer } from '../../job/draft/current.ts';
import type { Draft } from '../../job/draft/draft.ts';
import type { Question } from '../../job/draft/question.ts';
import { questionOf } from '../../job/draft/questions.ts';
import { understood } from '../../units/understood.ts';
import type { Units } from '../../units/units.ts';
import { faultWords } from '../../words/job/fault.ts';
import { optionBrief, optionWords } from '../../words/job-form/option-words.ts';
import { AS_IT_IS, inWhat, NEW_JOB, nowLine, WRITE_TEXT, writeNumber } from '../../words/job-form/pages.ts';
import { pointsWords, summary } from '../../words/job-form/part-lists.ts';
import { askedWords, titleWords } from '../../words/job-form/questions.ts';
import { CHOOSE_OR_BACK, KEY_SAYS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Section } from '../session/pages/page.ts';
import type { FieldEntry, Prompt } from '../shell/prompt.ts';
import { choiceNumbered } from '../shell/prompt.ts';
import { line, wrapped } from '../text/line.ts';
import { growing, growthPicture, growthSections, hasShape } from './growing.ts';
import { draftIn, faultToMend, type JobForm } from './job-form.ts';
import { formKeys, MORE_KEY } from './part-lists.ts';

/** The question that is open, with the tube as far as it has grown. */
export function questionView(form: JobForm, entry: FieldEntry): HomeView {
	const draft = draftIn(form);
	const units = draft.file.units ?? 'in';
	const question = questionOf(draft, form.shop);
	const { label, help = '' } = askedWords(question.is);
	// Of a job that is being changed one sees what stands there, and can leave it.
	const now = draft.whole ? currentAnswer(draft) : null;
	const typed = typedAnswer(question, entry.field);
	const fault = faultToMend(form);
	const so = growing(form, typed);
	return {
		title: titleWords(question.is),
		where: [draft.file.name ?? NEW_JOB],
		prompt: promptFor(question, label, units, now),
		body: (room) => [
			{ rank: 0, lines: help === '' ? [] : wrapped(help, room.columns, 'quiet') },
			{ rank: 0, lines: fault === null ? [] : wrapped(`! ${faultWords(fault)}`, room.columns, 'wrong', 2) },
			{ rank: 0, lines: now === null ? [] : [line(nowLine(nowWords(question, now)))] },
			soFarSection(draft, room.columns),
			...growthSections(so, room),
		],
		...(hasShape(draft) ? { picture: (look) => growthPicture(so, look) } : {}),
		...(question.kind === 'text' ? {} : formKeys(form, so)),
	};
}

/** The answer that the field stands for, of a list by its number. */
function typedAnswer({ kind, options }: Question, field: string): string {
	const text = field.trim();
	if (kind !== 'choice') return text;
	return (options && choiceNumbered(options, text)?.value) ?? '';
}

/** What was answered before: of a shape by its points these, as they were typed, else tube and die. */
function soFarSection(draft: Draft, columns: number): Section {
	const points = draft.whole ? '' : pointsWords(draft);
	if (points !== '') return { rank: 1, lines: wrapped(points, columns) };
	return { rank: 4, lines: summary(draft.file).map((text) => line(text, 'quiet')) };
}

function nowWords({ options }: Question, now: string): string {
	const option = options?.find(({ value }) => value === now);
	return option === undefined ? now : optionWords(option.is);
}

function promptFor(question: Question, label: string, units: Units, now: string | null): Prompt<HomeStep> {
	const { kind, options } = question;
	// What can be left out keeps that as its key; to leave what stands there, one goes back.
	const usual = now !== null && question.usual?.value !== '' ? { label: AS_IT_IS, value: now } : usualOf(question);
	const short = question.usual && optionBrief(question.usual.is);
	const brief = short === undefined ? {} : { brief: short };
	const back = { label: KEY_SAYS.back, step: { step: 'formBack' } as const };
	const star = MORE_KEY;
	const plus = usual === undefined ? {} : { plus: { label: usual.label, ...brief, step: answerGiven(usual.value) } };
	if (kind === 'text') {
		const text = (typed: string) => {
			// Elsewhere + takes what is usual, so nobody means it as a name.
			const words = typed === '+' ? '' : typed;
			if (words === '' && usual === undefined) return WRITE_TEXT;
			return answerGiven(words === '' && question.usual === undefined ? (now ?? '') : words);
		};
		return { label, text, back, empty: '' };
	}
	if (kind === 'choice') {
		const choices = (options ?? []).map(({ is, value }) => ({
			label: optionWords(is),
			step: answerGiven(value),
			...(value === usual?.value ? { advised: true } : {}),
		}));
		return { label, choices, ...plus, star, back, empty: CHOOSE_OR_BACK };
	}
	return {
		label: inWhat(label, kind, units),
		read: answerGiven,
		understood: (text) => understood(text, kind, units),
		...plus,
		star,
		back,
		empty: writeNumber(usual?.label),
	};
}

const usualOf = ({ usual }: Question) => usual && { label: optionWords(usual.is), value: usual.value };

function answerGiven(text: string): HomeStep {
	return { step: 'formAnswer', text };
}
