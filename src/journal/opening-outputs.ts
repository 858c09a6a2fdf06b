import { givenIn } from '../session/batch/given.ts';
import { wouldMove } from '../session/batch/held.ts';
import type { State } from '../session/log/state.ts';
import { lastAnnounced, standing } from '../session/outputs.ts';
import { sessionWarnings } from '../session/plan/job-warnings.ts';
import type { Output } from '../session/protocol/notes.ts';
import { bentAsField } from '../tube/bent-as.ts';

/** How a session comes to be open. */
export type OpenedAs = { resumed: false; alike?: boolean } | { resumed: true; changed: readonly string[] };

/** What a shell shows first: which session it is, what to be warned of in a new one, the correction in force, what is asked. */
export function openingOutputs(state: State, log: string, others: readonly string[], opened: OpenedAs): Output[] {
	const { id, job } = state.start;
	const changed = opened.resumed ? [...opened.changed] : [];
	const alike = opened.resumed ? undefined : opened.alike;
	const off = alike ? wouldMove(state.start) : null;
	return [
		{
			note: 'session',
			id,
			log,
			resumed: opened.resumed,
			job: job.name,
			changed,
			others: [...others],
			...givenIn(state),
			...(alike !== undefined && { alike }),
			...(off !== null && { wouldMove: off }),
			...bentAsField(job),
		},
		...(opened.resumed ? [] : warningsNote(state)),
		...lastAnnounced(state),
		standing(state, log),
	];
}

function warningsNote(state: State): Output[] {
	const warnings = sessionWarnings(state);
	return warnings.length > 0 ? [{ note: 'warnings', warnings }] : [];
}
