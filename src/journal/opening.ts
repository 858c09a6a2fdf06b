import { givenIn } from '../session/batch/given.ts';
import { growthOf } from '../session/log/start.ts';
import type { State } from '../session/log/state.ts';
import { lastAnnounced, standing } from '../session/outputs.ts';
import { sessionWarnings } from '../session/plan/job-warnings.ts';
import type { Output } from '../session/protocol/notes.ts';
import { bentAsField } from '../tube/bent-as.ts';
import type { GrowthByDie } from '../tube/dies.ts';

/** How a session comes to be open. */
export type OpenedAs = { resumed: false; growthBefore?: GrowthByDie } | { resumed: true; changed: readonly string[] };

/** What a shell shows first: which session it is, what to be warned of in a new one, the correction in force, what is asked. */
export function openingOf(state: State, log: string, others: readonly string[], opened: OpenedAs): Output[] {
	const { id, job } = state.start;
	const changed = opened.resumed ? [...opened.changed] : [];
	const before = opened.resumed ? undefined : opened.growthBefore;
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
			...(before !== undefined && { alike: isSame(before, growthOf(state.start)) }),
			...bentAsField(job),
		},
		...(opened.resumed ? [] : warningsNote(state)),
		...lastAnnounced(state),
		standing(state, log),
	];
}

/** Whether every die's growth is the same. */
const isSame = (one: GrowthByDie, other: GrowthByDie): boolean =>
	one.value === other.value &&
	Object.entries(other.dies ?? {}).every(([die, { value }]) => one.dies?.[die]?.value === value);

function warningsNote(state: State): Output[] {
	const warnings = sessionWarnings(state);
	return warnings.length > 0 ? [{ note: 'warnings', warnings }] : [];
}
