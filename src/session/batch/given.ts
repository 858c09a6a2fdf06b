import type { Start } from '../log/start.ts';
import type { State } from '../log/state.ts';

/** Which piece of how many, where given, and whether no tube was bent at all. */
export interface Given {
	quantity?: number;
	piece?: number;
	heat?: string;
	/** On a simulated bender; absent of a real one. */
	simulated?: true;
}

/** Of a session's first record: one that wants one tube says nothing of it. */
export function begunAs({ job, piece, simulated }: Pick<Start, 'job' | 'piece' | 'simulated'>): Omit<Given, 'heat'> {
	const { quantity = 1 } = job;
	return {
		...(quantity > 1 && { quantity }),
		...(piece !== undefined && { piece }),
		...(simulated !== undefined && { simulated: true }),
	};
}

/** With the heat of its tube: as it was told last, else as the piece before was, else as the job has it. */
export function givenIn(state: State): Given {
	const heat = heatOf(state);
	return { ...(heat !== null && { heat }), ...begunAs(state.start) };
}

/** Null where nobody said. */
export function heatOf({ start, entries }: Pick<State, 'start' | 'entries'>): string | null {
	const told = entries.flatMap(({ events }) =>
		events.flatMap((event) => (event.type === 'heat-told' ? [event.heat] : [])),
	);
	return told.at(-1) ?? start.heat ?? start.job.tube.heat ?? null;
}
