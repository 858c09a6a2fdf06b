/** What became of each check of the job. */
import { checkFits } from '../session/advice/bend-alone.ts';
import type { Event } from '../session/log/events.ts';
import { readingsIn } from '../session/log/events.ts';
import type { Entry, State } from '../session/log/state.ts';
import type { CheckKind } from '../session/protocol/kinds.ts';
import type { Stamp } from './story-bend.ts';

/** One reading of a check; `aside`: it does not count. */
export interface CheckReading extends Stamp {
	value: number;
	aside: boolean;
}

export interface CheckStory {
	name: string;
	kind: CheckKind;
	/** In the job's unit, degrees or a ratio, by its kind. */
	design: number;
	tolerance: number;
	/** The reading in force; null where there is none. */
	reading: number | null;
	/** Whether that lies inside, trim that was still on left out; null without one. */
	inside: boolean | null;
	skipped: boolean;
	/** Every one that was told, those that do not count too. */
	readings: readonly CheckReading[];
}

export function checkStories(state: State): CheckStory[] {
	return state.design.checks.map(({ check: { name, kind, tolerance }, design }) => {
		const now = state.checks[name];
		const reading = now?.reading ?? null;
		return {
			name,
			kind,
			design,
			tolerance,
			reading,
			inside: reading === null ? null : checkFits(state, name, reading),
			skipped: now?.skipped ?? false,
			readings: state.entries.flatMap((entry) => readingsInEntry(state, entry, name)),
		};
	});
}

function readingsInEntry(state: State, { entry, at, void: gone, events }: Entry, name: string): CheckReading[] {
	const stamp = { entry, at, void: gone };
	return events.flatMap((event) => valuesIn(state, event, name).map((told) => ({ ...stamp, ...told })));
}

function valuesIn({ entries }: State, event: Event, name: string): { value: number; aside: boolean }[] {
	if (event.type === 'reading-amended') {
		const told = readingsIn(entries[event.entry - 1]?.events ?? []);
		const isIts = told.some((reading) => reading.of === 'check' && reading.name === name);
		return isIts && event.of === 'check' ? [{ value: event.value, aside: false }] : [];
	}
	if (event.type !== 'reading-taken' && event.type !== 'doubt-settled') return [];
	const { reading } = event;
	if (reading.of !== 'check' || reading.name !== name) return [];
	const aside = event.type === 'doubt-settled' ? event.setAside : [];
	return [...aside.map((value) => ({ value, aside: true })), { value: reading.value, aside: false }];
}
