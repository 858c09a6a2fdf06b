import { fileNameFor } from '../../job/draft/file-text.ts';
import { draftFaults } from '../../job/draft/preview.ts';
import type { Fault } from '../../job/facts/index.ts';
import { faultWords } from '../../words/job/fault.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import type { Choice } from '../shell/prompt.ts';
import { wrapped } from '../text/line.ts';
import { questionAt } from './fault-place.ts';
import { draftIn, type JobForm } from './form.ts';
import { growing, growthPicture, growthSections, lengthsShortcut } from './growth.ts';
import { endsWords, summary } from './job-words.ts';
import { aside, asked, MORE } from './part-lists.ts';

/** The job as it stands: what it comes to, what to change of it, and + to save it. */
export function overviewView(form: JobForm): HomeView {
	const draft = draftIn(form);
	const faults = draftFaults(draft, form.shop);
	const so = growing(form, '');
	const to = form.from === null ? { file: fileNameFor(draft.file.name ?? '') } : { path: form.from };
	const save = { label: 'save it', step: { step: 'formSave', form, to, over: false } as const };
	return {
		title: 'The job',
		where: draft.file.name ?? 'a new job',
		prompt: {
			label: 'What to change',
			choices: parts(form),
			...(faults.length === 0 ? { plus: save } : {}),
			star: MORE,
			back: { label: 'back', step: { step: 'formBack' } },
			empty: `Write the number of a line to change it and press Enter${faults.length === 0 ? '; + saves the job' : ''}; / goes back.`,
		},
		body: (room) => [
			...faults.map((fault) => ({ rank: 0, lines: wrapped(`! ${faultWords(fault)}`, room.columns, 'wrong', 2) })),
			{ rank: 0, lines: wrapped(elsewhere(form, faults), room.columns) },
			...growthSections(so, { ...room, rows: room.rows - OTHER_CHOICES }),
		],
		...(so === null ? {} : { picture: (look) => growthPicture(so, look) }),
		...lengthsShortcut(form, so),
	};
}

/** What no question asks for, such as a key that no job has. */
function elsewhere({ from }: JobForm, faults: readonly Fault[]): string {
	const beyond = faults.some(({ at }) => questionAt(at) === null);
	return beyond && from !== null ? `What no line here changes is mended in a text editor: ${from}` : '';
}

/** Rows that the overview's choices want more than a question does. */
const OTHER_CHOICES = 4;

function parts(form: JobForm): Choice<HomeStep>[] {
	const { file } = draftIn(form);
	const { bends = [], points } = file.shape ?? {};
	const checks = file.checks?.length ?? 0;
	const shape =
		points === undefined ? `${bends.length} ${bends.length === 1 ? 'bend' : 'bends'}` : `${points.length} points`;
	return [
		asked(form, `name: ${file.name ?? ''}`, { at: 'name' }),
		aside(`tube and die: ${summary(file).join('; ')}`, { aside: 'tube' }),
		aside(`shape: ${shape}${endsWords(file)}`, { aside: 'shape' }),
		aside('trims, tolerances, dial and other figures', { aside: 'fields' }),
		aside(`checks: ${checks === 0 ? 'none' : checks}`, { aside: 'checks' }),
		asked(form, `notes: ${file.notes ?? 'none'}`, { at: 'notes' }),
	];
}
