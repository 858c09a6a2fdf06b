import { fileNameFor } from '../../job/draft/file-text.ts';
import { draftFaults } from '../../job/draft/preview.ts';
import type { Fault } from '../../job/facts/index.ts';
import { faultWords } from '../../words/job/fault.ts';
import { CHANGE, NEW_JOB, OVERVIEW } from '../../words/job-form/pages.ts';
import { OVERVIEW_ROWS } from '../../words/job-form/part-lists.ts';
import { KEY_SAYS } from '../../words/screen/usual.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Choice } from '../shell/prompt.ts';
import { wrapped } from '../text/line.ts';
import { questionAt } from './fault-place.ts';
import { growing, growthPicture, growthSections } from './growing.ts';
import { draftIn, type JobForm } from './job-form.ts';
import { aside, askingChoice, formKeys, MORE_KEY } from './part-lists.ts';

/** The job as it stands: what it comes to, what to change of it, and + to save it. */
export function overviewView(form: JobForm): HomeView {
	const draft = draftIn(form);
	const faults = draftFaults(draft, form.shop);
	const so = growing(form, '');
	const to = form.from === null ? { file: fileNameFor(draft.file.name ?? '') } : { path: form.from };
	const save = {
		label: OVERVIEW.save,
		brief: OVERVIEW.saveBrief,
		step: { step: 'formSave', form, to, over: false } as const,
	};
	return {
		title: OVERVIEW.title,
		where: [draft.file.name ?? NEW_JOB],
		prompt: {
			label: CHANGE,
			choices: parts(form),
			...(faults.length === 0 ? { plus: save } : {}),
			star: MORE_KEY,
			back: { label: KEY_SAYS.back, step: { step: 'formBack' } },
			empty: OVERVIEW.empty(faults.length === 0),
		},
		body: (room) => [
			...faults.map((fault) => ({ rank: 0, lines: wrapped(`! ${faultWords(fault)}`, room.columns, 'wrong', 2) })),
			{ rank: 0, lines: wrapped(faultsElsewhere(form, faults), room.columns) },
			...growthSections(so, { ...room, rows: room.rows - OTHER_CHOICES }),
		],
		...(so === null ? {} : { picture: (look) => growthPicture(so, look) }),
		...formKeys(form, so),
	};
}

/** What no question asks for, such as a key that no job has. */
function faultsElsewhere(form: JobForm, faults: readonly Fault[]): string {
	const { file } = draftIn(form);
	const beyond = faults.some(({ at }) => questionAt(at, file) === null);
	return beyond && form.from !== null ? OVERVIEW.elsewhere(form.from) : '';
}

/** Rows that the overview's choices want more than a question does. */
const OTHER_CHOICES = 4;

function parts(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	return [
		askingChoice(form, OVERVIEW_ROWS.name(file), { at: 'name' }),
		aside(OVERVIEW_ROWS.tube(file), { aside: 'tube' }),
		aside(OVERVIEW_ROWS.shape(file), { aside: 'shape' }),
		aside(OVERVIEW_ROWS.figures, { aside: 'fields' }),
		aside(OVERVIEW_ROWS.checks(file), { aside: 'checks' }),
		askingChoice(form, OVERVIEW_ROWS.notes(file), { at: 'notes' }),
	];
}
