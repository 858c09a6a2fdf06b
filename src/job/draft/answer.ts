import type { Fault } from '../facts/index.ts';
import { valued } from '../fault.ts';
import { readJob } from '../read.ts';
import { type Draft, type JobJson, type QuestionPlace, unitsOf } from './draft.ts';
import { valueAt } from './file-value.ts';
import type { DraftTaken, FormShop, Question } from './question.ts';
import { fileFieldOf, openQuestion, QUESTIONS, questionOf } from './questions.ts';
import { partBend } from './shape-parts.ts';

/**
 * Takes the answer to the open question: a number or a text as typed, an option's value; empty: left out, where that is usual. Gives the
 * draft with the next question open, or every fault that a job file would have there.
 */
export function answerDraft(
	draft: Draft,
	text: string,
	shop: FormShop,
): { draft: Draft } | { faults: readonly Fault[] } {
	const taken = take(draft, text.trim(), shop);
	if ('fault' in taken) return { faults: [taken.fault] };
	const { draft: next, place, tried = partBend(next) } = taken;
	const faults = place === null ? [] : faultsAt(place, tried, shop);
	return faults.length > 0 ? { faults } : { draft: nextQuestion(draft, next) };
}

/** The faults of a draft at that place, those left out that only say that something is still missing. */
function faultsAt(place: string, file: JobJson, { lookup }: FormShop): Fault[] {
	const read = readJob(file, lookup);
	if (!('faults' in read)) return [];
	return read.faults.filter(
		({ at, found }) =>
			found.code !== 'nothing' && (at === place || at.startsWith(`${place}.`) || at.startsWith(`${place}[`)),
	);
}

/** A question asked again leads back to the overview, as soon as the questions that belong to it are answered. */
function nextQuestion(before: Draft, next: Draft): Draft {
	if (!before.whole || related(before.at, next.at)) return next;
	return { ...next, at: 'overview', part: {} };
}

function related(a: QuestionPlace, b: QuestionPlace): boolean {
	if (a === 'overview' || b === 'overview') return false;
	return QUESTIONS[a].groups?.some((group) => QUESTIONS[b].groups?.includes(group)) ?? false;
}

function take(draft: Draft, text: string, shop: FormShop): DraftTaken {
	const question = questionOf(draft, shop);
	const unfit = unfitFor(question, text, draft);
	if (unfit !== null) return { fault: unfit };
	const { takesText, takesNumber } = openQuestion(draft);
	if (question.kind === 'choice' || question.kind === 'text') return takesText!(draft, text, shop);
	if (text === '') return takesNumber!(draft, undefined, shop);
	const read = valueAt(answeredPlace(draft), text, question.kind, unitsOf(draft));
	return 'fault' in read ? read : takesNumber!(draft, read.value, shop);
}

/** What cannot be an answer at all. */
function unfitFor({ kind, options, usual, is }: Question, text: string, draft: Draft): Fault | null {
	const at = answeredPlace(draft);
	if (text === '' && usual?.value !== '') return { at, found: { code: 'nothing' }, right: { code: 'answer', to: is } };
	if (kind === 'choice' && !options?.some(({ value }) => value === text))
		return { at, found: valued(text), right: { code: 'choice' } };
	return null;
}

/** The place of the open question in the job file. */
function answeredPlace({ at, item, field }: Draft): string {
	return (
		fileFieldOf(at) ??
		(at === 'field' ? field : at === 'x' || at === 'y' || at === 'z' ? `shape.points[${item}]` : 'job')
	);
}
