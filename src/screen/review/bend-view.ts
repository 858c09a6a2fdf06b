import type { BendStep, CorrectionStory } from '../../review/story.ts';
import { BEND } from '../../words/review/story.ts';
import { bendStepWords } from '../../words/story-bend.ts';
import { correctionWords } from '../../words/story-correction.ts';
import type { HomeView } from '../home/home-view.ts';
import { EMPTY, type Line, line, wrapped } from '../text/line.ts';
import type { ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { changingCorrections, numberedLines, scrolled, usual, windowOf } from './usual.ts';

/** One bend: wanted, made, and everything that was done at it, as the log has it. */
export function bendView(opened: Opened, at: Extract<ReviewPage, { review: 'bend' }>): HomeView {
	const { story } = opened;
	const bend = story.bends[at.bend - 1]!;
	const { job } = story.view;
	const after = changingCorrections(story).filter(
		({ correction }) => 'bend' in correction.after && correction.after.bend === at.bend,
	);
	return {
		...usual(at, opened),
		...scrolled(at, bend.steps.length + after.length),
		title: BEND.title(at.bend, story.bends.length),
		body: ({ columns, rows }) => {
			const head = [
				...wrapped(BEND.made(bend), columns, 'strong'),
				...wrapped(BEND.wanted(bend), columns),
				...(bend.measured || bend.steps.length === 0 ? [] : [line(BEND.notMeasured, 'alert')]),
			];
			const done = bend.steps.flatMap((step) => bendStepLines(step, bendStepWords(step, job), columns));
			const lines = [...done, ...correctionLines(after, opened, columns)];
			return [
				{ rank: 0, lines: head },
				{ rank: 0, lines: windowOf(lines, at.top, Math.max(3, rows - head.length - 1)) },
			];
		},
	};
}

/** The line of the log in front; what does not count stands out by its words. */
function bendStepLines({ entry, void: gone, step }: BendStep, words: string, columns: number): Line[] {
	return numberedLines(entry, words, columns, gone || step === 'aside' ? 'quiet' : 'plain');
}

function correctionLines(corrections: readonly CorrectionStory[], { story }: Opened, columns: number): Line[] {
	return corrections.flatMap((each) => [
		EMPTY,
		...correctionWords(each, story.view.job).flatMap((text, i) =>
			wrapped(text, columns, i === 0 && !each.void ? 'strong' : 'plain', 2),
		),
	]);
}

/** Every correction, also those that came of something else than a bend being taken. */
export function correctionsView(
	opened: Opened,
	at: Extract<ReviewPage, { review: 'corrections' | 'checks' }>,
): HomeView {
	const corrections = changingCorrections(opened.story);
	return {
		...usual(at, opened),
		...scrolled(at, corrections.length * 4),
		title: BEND.corrections,
		body: ({ columns, rows }) => [
			{ rank: 0, lines: windowOf(correctionLines(corrections, opened, columns).slice(1), at.top, rows) },
		],
	};
}
