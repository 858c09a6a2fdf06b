import type { Story } from '../../review/story.ts';
import { verdictOf } from '../../session/report/verdict.ts';
import { formatLength } from '../../units/format.ts';
import { bentAsWords } from '../../words/bent-as.ts';
import { foreign, foreignName } from '../../words/foreign.ts';
import { about, angle, angleGiveOrTake, fine, readingSpread } from '../../words/numbers.ts';
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
import { chapters, corrected, HELP_KEY, nameOf, to, usual } from './usual.ts';

const AT: ReviewPage = { review: 'story' };

/** One session as a whole: what came of it, and its pages to turn to. */
export function storyView(opened: Opened, list: ListAt | undefined): HomeView {
	const { story, id } = opened;
	const own = usual(AT, opened);
	const pages = chapters(opened).slice(1);
	return {
		...own,
		title: `Session ${foreignName(id)}`,
		keys: [HELP_KEY],
		prompt: {
			...own.prompt,
			label: CHOICE,
			choices: [
				...pages.map((at): Choice<HomeStep> => ({ label: chapterWords(at, opened), step: to(at) })),
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
		{ rank: 1, lines: wrapped(tube, columns, 'quiet') },
		{ rank: 1, lines: as === null ? [] : wrapped(as, columns, 'alert') },
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
	return [
		...wrapped(verdictWords(verdict.fits, verdict.chance), columns, 'strong'),
		...wrapped(`Far end off by ${off}, give or take ${give}.`, columns),
	];
}

function chapterWords(at: ReviewPage, { story, states }: Opened): string {
	switch (at.review) {
		case 'bend': {
			const bend = story.bends[at.bend - 1]!;
			const pulls = bend.steps.filter(({ step, void: gone }) => step === 'pull' && !gone).length;
			const made = bend.made === null ? 'not finished' : `made ${angleGiveOrTake(bend.made)}`;
			return `bend ${at.bend}: ${made}; ${pulls === 1 ? '1 pull' : `${pulls} pulls`}${bend.measured || pulls === 0 ? '' : ', never measured'}`;
		}
		case 'corrections':
			return `corrections (${corrected(story).length})`;
		case 'checks': {
			const read = story.checks.filter(({ reading }) => reading !== null).length;
			return `checks (${read} of ${story.checks.length} read) and notes (${story.notes.length})`;
		}
		case 'tube':
			return 'the tube as drawn over the tube as made';
		case 'line':
			return `step through it, line by line (${states.length - 1})`;
		default:
			return nameOf(at);
	}
}
