/** What happened in one kept session, as facts: what the screen shows, the log prints and the record on paper holds. */
import type { State } from '../session/log/state.ts';
import { type SessionView, sessionView } from '../session/report/views.ts';
import { type BendStory, bendStory, type Stamp } from './story-bend.ts';
import { type CheckStory, checkStories } from './story-checks.ts';
import { type CorrectionStory, correctionsOf } from './story-corrections.ts';

export type { BendDone, BendStep, BendStory, Stamp } from './story-bend.ts';
export type { CheckStory } from './story-checks.ts';
export type { CorrectionStory } from './story-corrections.ts';

/** A text that the operator wrote. */
export interface NoteStory extends Stamp {
	text: string;
}

export interface Story {
	/** The session as it stands at its end. */
	state: State;
	view: SessionView;
	bends: readonly BendStory[];
	checks: readonly CheckStory[];
	corrections: readonly CorrectionStory[];
	notes: readonly NoteStory[];
	/** Why the tube was given up; null where it was not. */
	scrapped: string | null;
}

/** `states`: the session as it began and after each line of its log. */
export function storyOf(states: readonly State[]): Story {
	const state = states.at(-1);
	if (state === undefined) throw new RangeError('A session without a state has no story.');
	const { phase } = state.finished ?? state;
	return {
		state,
		view: sessionView(state),
		bends: state.bends.map((_, i) => bendStory(state, i + 1)),
		checks: checkStories(state),
		corrections: correctionsOf(states),
		notes: notesIn(state),
		scrapped: phase.at === 'done' ? phase.scrapped : null,
	};
}

function notesIn({ entries }: State): NoteStory[] {
	return entries.flatMap(({ entry, at, void: gone, events }) =>
		events.flatMap((event) => (event.type === 'note-written' ? [{ entry, at, void: gone, text: event.text }] : [])),
	);
}
