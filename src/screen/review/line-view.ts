import { ask } from '../../session/ask.ts';
import { tubeAtWork } from '../../session/estimate/tube-at-work.ts';
import { answered } from '../../session/log/answered.ts';
import { answeredWords } from '../../words/answered.ts';
import { askedNextWords } from '../../words/asked-next.ts';
import { bendsWords, LINE } from '../../words/review/pages.ts';
import { TAKEN_BACK } from '../../words/story-bend.ts';
import { drawTube } from '../drawing/tube-drawing.ts';
import type { HomeView } from '../home/home-view.ts';
import { line, wrapped } from '../text/line.ts';
import type { ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { HELP_KEY, toReview, usual } from './usual.ts';

/** The session as it was after one line of its log: what was answered, what was made by then, and what was asked next. */
export function lineView(opened: Opened, at: Extract<ReviewPage, { review: 'line' }>): HomeView {
	const { states, story, time } = opened;
	const last = states.length - 1;
	const index = Math.min(last, Math.max(0, at.at));
	const state = states[index]!;
	const { job } = story.view;
	const answer = answered(state).at(-1);
	const takenBack = answer !== undefined && (story.state.entries[index - 1]?.void ?? false);
	const go = (line: number) => toReview({ review: 'line', at: Math.min(last, Math.max(0, line)) });
	const [before, after] = [go(index - 1), go(index + 1)];
	const own = usual(at, opened);
	const { shape } = tubeAtWork(state, state.plan.current);
	return {
		...own,
		title: LINE.title(index, last),
		prompt: {
			...own.prompt,
			...(index < last ? { plus: { label: LINE.next, step: after } } : {}),
		},
		keys: [...LINE.keys, HELP_KEY],
		moves: {
			left: before,
			right: after,
			up: before,
			down: after,
			'4': before,
			'6': after,
			'7': go(0),
			'1': go(last),
			home: go(0),
			end: go(last),
			pageUp: go(index - 10),
			pageDown: go(index + 10),
		},
		body: ({ columns }) => [
			{
				rank: 0,
				lines:
					answer === undefined
						? [line(LINE.begun(opened.started))]
						: wrapped(
								`${time(answer.at)}  ${answeredWords(answer, job)}${takenBack ? TAKEN_BACK : ''}`,
								columns,
								takenBack ? 'plain' : 'strong',
								10,
							),
			},
			{ rank: 0, lines: wrapped(askedNextWords(ask(state), job), columns) },
			{ rank: 1, lines: wrapped(bendsWords(state), columns, 'plain', 7) },
		],
		picture:
			({ ascii }) =>
			(columns, rows) =>
				drawTube(
					shape,
					state.phase.at === 'done' ? state.bends.length + 1 : state.bend,
					columns,
					rows,
					ascii,
					state.design.shape,
				).rows.map((row) => line(row)),
	};
}
