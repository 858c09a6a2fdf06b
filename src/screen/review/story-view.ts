import type { Story } from '../../review/story.ts';
import { verdictOf } from '../../session/report/verdict.ts';
import { formatLength } from '../../units/format.ts';
import { bentAsWords } from '../../words/bent-as.ts';
import { foreign, foreignName } from '../../words/foreign.ts';
import { about, angle, angleGiveOrTake, exactAngle, fine, readingSpread } from '../../words/numbers.ts';
import { CHOICE } from '../../words/screen/usual.ts';
import { SIMULATED } from '../../words/session-list.ts';
import { verdictWords } from '../../words/verdict.ts';
import type { HomeStep, HomeView } from '../home/home-view.ts';
import { TO_HOME } from '../home/pages/usual.ts';
import type { Section } from '../session/pages/page.ts';
import type { Choice } from '../shell/prompt.ts';
import { type Line, line, wrapped } from '../text/line.ts';
import type { ListAt, ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { chapters, corrected, HELP_KEY, nameOf, PRINT, to, usual } from './usual.ts';

const AT: ReviewPage = { review: 'story' };

/** One session as a whole: what came of it, and its pages to turn to. */
export function storyView(opened: Opened, list: ListAt | undefined): HomeView {
	const { story, id } = opened;
	const own = usual(AT, opened);
	const pages = chapters(opened).slice(1);
	return {
		...own,
		title: `Session ${foreignName(id)}`,
		keys: [HELP_KEY, ['p', PRINT]],
		shortcuts: { ...own.shortcuts, p: { step: 'record', id } },
		prompt: {
			...own.prompt,
			label: CHOICE,
			choices: [
				...pages.map((at): Choice<HomeStep> => ({ ...chapterWords(at, opened), step: to(at) })),
				{ label: 'all of it as one text', step: { step: 'read', id } },
			],
			back: list === undefined ? TO_HOME : { label: 'back', step: to(list) },
			empty: 'Press + to read it page by page, or write the number of a choice and press Enter.',
		},
		body: ({ columns }) => body(opened, story, columns),
	};
}

function body({ problem }: Opened, story: Story, columns: number): Section[] {
	const { view } = story;
	const { job } = view;
	const as = bentAsWords(job);
	const heat = view.heat === undefined ? '' : `, heat ${foreignName(view.heat)}`;
	const size = `${formatLength(job.tube.od, job.units)} x ${formatLength(job.tube.wall, job.units)}`;
	const tube = `${size} ${foreignName(job.tube.material.name)}${heat}, bender ${foreignName(job.tooling.bender)}, die ${foreignName(job.tooling.die)}`;
	return [
		{ rank: 0, lines: problem === null ? [] : wrapped(`! ${problem}`, columns, 'wrong', 2) },
		{ rank: 0, lines: view.simulated ? wrapped(SIMULATED, columns, 'alert') : [] },
		{ rank: 0, lines: outcome(story, columns) },
		{ rank: 1, lines: cornerOff(story, columns) },
		{ rank: 2, lines: wrapped(tube, columns, 'quiet') },
		{ rank: 2, lines: as === null ? [] : wrapped(as, columns, 'alert') },
	];
}

const STATUS = { open: 'Interrupted: it can be resumed.', done: 'Finished.', scrapped: 'Scrapped' } as const;

function outcome({ state, view, scrapped }: Story, columns: number): Line[] {
	if (scrapped !== null) return wrapped(`Scrapped: ${foreign(scrapped)}.`, columns, 'strong');
	const { job, status, asBuilt } = view;
	const verdict = status === 'done' ? verdictOf(state) : null;
	const off = `${fine(asBuilt.endOffset, job)} and ${angle(asBuilt.endAngle)}`;
	if (verdict === null)
		return [line(STATUS[status], 'strong'), ...wrapped(`As far as made: far end off by ${off}.`, columns)];
	const give = `${readingSpread(verdict.sd.endOffset, 'length', job)} and ${about(verdict.sd.endAngle)}`;
	const { shape: allowed, direction } = job.tolerance;
	return [
		...wrapped(verdictWords(verdict.fits, verdict.chance), columns, 'strong'),
		...wrapped(
			`Far end off by ${off} (${fine(allowed, job)} and ${exactAngle(direction)} allowed), give or take ${give}.`,
			columns,
		),
	];
}

/** The corner that is farthest from its place, which may be what does not fit. */
function cornerOff({ state, view: { job, status } }: Story, columns: number): Line[] {
	const verdict = status === 'done' ? verdictOf(state) : null;
	if (verdict === null) return [];
	const { bend, off } = verdict.shape;
	return wrapped(
		`Bend ${bend} lies ${fine(off, job)} off its place (${fine(job.tolerance.shape, job)} allowed).`,
		columns,
	);
}

/** What a page of the story holds; `brief`: where that has no room on one line. */
function chapterWords(at: ReviewPage, { story, states }: Opened): Pick<Choice<HomeStep>, 'label' | 'brief'> {
	switch (at.review) {
		case 'bend': {
			const { made, measured, steps } = story.bends[at.bend - 1]!;
			const pulls = steps.filter(({ step, void: gone }) => step === 'pull' && !gone).length;
			const came = `${pulls === 1 ? '1 pull' : `${pulls} pulls`}${measured || pulls === 0 ? '' : ', never measured'}`;
			const told = (words: string) => `bend ${at.bend}: ${made === null ? 'not finished' : words}; ${came}`;
			return made === null
				? { label: told('') }
				: { label: told(`made ${angleGiveOrTake(made)}`), brief: told(`made ${angle(made.angle)}`) };
		}
		case 'corrections':
			return { label: `corrections (${corrected(story).length})` };
		case 'checks': {
			const read = story.checks.filter(({ reading }) => reading !== null).length;
			return { label: `checks (${read} of ${story.checks.length} read) and notes (${story.notes.length})` };
		}
		case 'tube':
			return { label: 'the tube as drawn over the tube as made' };
		case 'line':
			return { label: `step through it, line by line (${states.length - 1})` };
		case 'plot':
			return { label: 'plots: springback, where stops landed, errors, pulls, scatter', brief: nameOf(at) };
		case 'taught':
			return { label: 'what it taught, and what to do next time' };
		default:
			return { label: nameOf(at) };
	}
}
