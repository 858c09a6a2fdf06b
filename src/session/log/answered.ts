import type { AskedSet } from './asked.ts';
import { type Event, type Reading, readingsIn } from './events.ts';
import type { Entry, State } from './state.ts';

/** One line of the log: what was answered. */
export interface Answered {
	entry: number;
	/** ISO time. */
	at: string;
	void: boolean;
	events: readonly Event[];
	readings: Reading[];
	/** The check that it tells of was set aside later, since others speak against it. */
	aside?: true;
	/** The set-up that was asked for, where the tube was set or pulled. */
	setUp?: AskedSet;
	/** The reading that was corrected by it; `value`: as it was told first, absent where that line has none of its kind. */
	corrects?: Pick<Reading, 'of' | 'name'> & Partial<Pick<Reading, 'value'>>;
}

/** What was answered so far, oldest first. */
export function answered(state: State): Answered[] {
	return state.entries.map((line) => {
		const { entry, at, void: gone, events } = line;
		const amended = events.find((event) => event.type === 'reading-amended');
		const was = amended && readingsIn(state.entries[amended.entry - 1]?.events ?? []);
		const corrects = amended && (was?.find(({ of }) => of === amended.of) ?? { of: amended.of });
		return {
			entry,
			at,
			void: gone,
			events,
			readings: readingsIn(events),
			...(corrects ? { corrects } : {}),
			...setUpAt(state, line),
			...asideAt(state, line),
		};
	});
}

/** The newest reading of a check that was contradicted is the one that was set aside. */
function asideAt({ checks, entries }: State, { entry }: Entry): { aside?: true } {
	const isNewestOf = (name: string) => {
		const told = entries.filter(
			(each) => !each.void && readingsIn(each.events).some((reading) => reading.name === name),
		);
		return told.at(-1)?.entry === entry;
	};
	const aside = Object.entries(checks).some(([name, { contradicted }]) => contradicted === true && isNewestOf(name));
	return aside ? { aside } : {};
}

function setUpAt({ entries }: State, { entry, asked }: Entry): { setUp?: AskedSet } {
	if (asked === null) return {};
	const sets = entries.flatMap((each) => (each.entry <= entry && each.asked?.ask === 'set' ? [each.asked] : []));
	const setUp = sets.findLast(({ bend }) => bend === asked.bend);
	return setUp ? { setUp } : {};
}
