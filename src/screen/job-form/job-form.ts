import { answerDraft } from '../../job/draft/answer.ts';
import { type Draft, draftOf, newDraft } from '../../job/draft/draft.ts';
import { draftFaults } from '../../job/draft/preview.ts';
import type { FormShop } from '../../job/draft/question.ts';
import type { Fault } from '../../job/facts/index.ts';
import { JOB_FORMAT } from '../../job/read.ts';
import { tooFarFromAJob, wrongAnswer } from '../../words/job-form/pages.ts';
import type { Lengths } from '../../words/lengths.ts';
import type { WorkshopPort } from '../benders/workshop-port.ts';
import type { Message } from '../session/session-state.ts';
import { isMendable, questionAt } from './fault-place.ts';

/** What of a job is looked at besides its questions and its overview. */
export type Aside =
	| { aside: 'bend' | 'point' | 'check'; item: number }
	| { aside: 'tube' | 'shape' | 'fields' }
	| { aside: 'checks' }
	| { aside: 'taken'; path: string }
	| { aside: 'named' }
	| { aside: 'leave' }
	| { aside: 'more' }
	/** `from`: what had asked for help; null: a question or the overview. */
	| { aside: 'help'; from: Aside | null };

/** A job that is being written on the screen. */
export interface JobForm {
	shop: FormShop;
	/** As it was at each question, the open one last: going back takes one off. */
	drafts: readonly Draft[];
	aside: Aside | null;
	/** The file that it came from, to be written over when the person says so; null: a new one. */
	from: string | null;
	/** Whether anything was answered that is not on the disk. */
	changed: boolean;
	/** The file had faults: each answer leads to the next of them. */
	mending?: true;
	/** How the lengths are shown that the job comes to; left out: by its own tape. */
	lengths?: Lengths;
}

export function shopOf(port: WorkshopPort): FormShop {
	const dies = port
		.benders()
		.flatMap(({ name, dies: of }) =>
			of.map(({ name: die, units, fields }) => ({ bender: name, die, clr: fields.clr ?? null, units })),
		);
	return { lookup: port.lookup, dies, lessons: port.lessons };
}

export function newForm(shop: FormShop): JobForm {
	return { shop, drafts: [newDraft()], aside: null, from: null, changed: false };
}

/**
 * A kept job opened to be changed; as a copy it is asked for its name first and goes into a file of its own. One with faults opens at the
 * first of them.
 * @throws NotMendable where the file is too far from a job for its questions
 */
export function formOf(shop: FormShop, raw: unknown, path: string, copy: boolean): JobForm {
	if (!isMendable(raw)) throw new NotMendable(path);
	const draft = draftOf({ ...raw, pullbook: raw.pullbook ?? JOB_FORMAT });
	const mending = draftFaults(draft, shop).length > 0 ? { mending: true as const } : {};
	const drafts = mending.mending ? [draft, atFault(draft, shop)] : [draft];
	if (!copy) return { shop, drafts, aside: null, from: path, changed: false, ...mending };
	return { shop, drafts: [draft, { ...draft, at: 'name' }], aside: null, from: null, changed: true };
}

/** The fault that the open question is to mend; null where nothing is being mended. */
export function faultToMend(form: JobForm): Fault | null {
	if (!form.mending) return null;
	const draft = draftIn(form);
	return draftFaults(draft, form.shop).find(({ at }) => questionAt(at, draft.file) !== null) ?? null;
}

/** The draft with the question open that mends the first fault which has one; as it is, where there is none. */
function atFault(draft: Draft, shop: FormShop): Draft {
	const [asked] = draftFaults(draft, shop).flatMap(({ at }) => questionAt(at, draft.file) ?? []);
	return asked === undefined ? draft : { ...draft, part: {}, ...asked };
}

/** A file whose parts are not of the kinds that a job's are. */
class NotMendable extends Error {
	readonly exitCode = 2;

	constructor(path: string) {
		super(tooFarFromAJob(path));
	}
}

export function draftIn({ drafts }: JobForm): Draft {
	return drafts.at(-1)!;
}

/** The form with another question open, without an answer. */
export function asking(form: JobForm, question: Partial<Draft>): JobForm {
	const draft = { ...draftIn(form), part: {}, ...question };
	return { ...form, aside: null, drafts: [...form.drafts, draft] };
}

/** The form with something of the file changed, back in the overview. */
export function changedFile(form: JobForm, file: Draft['file']): JobForm {
	return { ...asking(form, { file, at: 'overview' }), changed: true };
}

/** The form after an answer, and what is wrong with the answer. */
export function answeredForm(form: JobForm, text: string): { form: JobForm; message: Message | null } {
	const result = answerDraft(draftIn(form), text, form.shop);
	if ('faults' in result) {
		return { form, message: { kind: 'wrong', text: wrongAnswer(result.faults) } };
	}
	const { draft } = result;
	const next = form.mending && draft.at === 'overview' ? atFault(draft, form.shop) : draft;
	return { form: { ...form, drafts: [...form.drafts, next], changed: true }, message: null };
}

/** One question back; null: there is none before it. */
export function backInForm(form: JobForm): JobForm | null {
	const { aside } = form;
	if (aside !== null) return { ...form, aside: aside.aside === 'help' ? aside.from : (ABOVE[aside.aside] ?? null) };
	return form.drafts.length > 1 ? { ...form, drafts: form.drafts.slice(0, -1) } : null;
}

/** Where going back from an item leads: to the list that it stands in. */
const ABOVE: Partial<Record<Aside['aside'], Aside>> = {
	bend: { aside: 'shape' },
	point: { aside: 'shape' },
	check: { aside: 'checks' },
};
