import type { CheckStory } from '../../review/story.ts';
import type { Job } from '../../tube/job.ts';
import { checkValueWords } from '../../words/doubt.ts';
import { foreign } from '../../words/foreign.ts';
import { STORY_CHECKS } from '../../words/review/story.ts';
import { TAKEN_BACK } from '../../words/story-bend.ts';
import { withText } from '../../words/warnings.ts';
import type { HomeView } from '../home/home-view.ts';
import { EMPTY, type Line, line, wrapped } from '../text/line.ts';
import type { ReviewPage } from './review-page.ts';
import type { Opened } from './review-port.ts';
import { numberedLines, scrolled, usual, windowOf } from './usual.ts';

/** What was read at each check, and what the operator wrote; what does not count is told as such. */
export function checksView(opened: Opened, at: Extract<ReviewPage, { review: 'corrections' | 'checks' }>): HomeView {
	const { checks, notes, view } = opened.story;
	const warnings = (view.warnings ?? []).map((warning) => withText(warning, view.job).text);
	return {
		...usual(at, opened),
		...scrolled(at, 3 * checks.length + notes.length + warnings.length),
		title: STORY_CHECKS.title,
		body: ({ columns, rows }) => {
			const lines = [
				...(checks.length === 0
					? [line(STORY_CHECKS.none)]
					: checks.flatMap((check) => checkStoryLines(check, view.job, columns))),
				...(notes.length === 0 ? [] : [EMPTY, line(STORY_CHECKS.notes, 'quiet')]),
				...notes.flatMap(({ entry, text, void: gone }) =>
					numberedLines(entry, `${foreign(text)}${gone ? TAKEN_BACK : ''}`, columns),
				),
				...(warnings.length === 0 ? [] : [EMPTY, line(STORY_CHECKS.warned, 'quiet')]),
				...warnings.flatMap((text) => wrapped(`! ${text}`, columns, 'alert', 2)),
			];
			return [{ rank: 0, lines: windowOf(lines, at.top, rows) }];
		},
	};
}

function checkStoryLines(check: CheckStory, job: Job, columns: number): Line[] {
	const others = check.readings.filter((each) => each.void || each.aside);
	return [
		...wrapped(STORY_CHECKS.check(check, job), columns, check.inside === true ? 'plain' : 'strong', 2),
		...others.flatMap(({ entry, value, aside }) => {
			const told = checkValueWords(value, check.kind, job);
			return numberedLines(entry, `${told}${aside ? STORY_CHECKS.setAside : TAKEN_BACK}`, columns, 'quiet');
		}),
	];
}
