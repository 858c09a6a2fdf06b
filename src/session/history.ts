import { type Event, type Reading, readingsIn } from './events.ts';
import { EVIDENCE_OF, KINDS, readingUnit } from './reading-words.ts';
import { show } from './show.ts';
import type { State } from './state.ts';

/** One record in words, for the pages that list what was answered. */
export interface HistoryLine {
	entry: number;
	text: string;
	void: boolean;
	readings: Reading[];
}

/** What was answered so far, oldest first. */
export function history(state: State): HistoryLine[] {
	return state.entries.map((entry) => ({
		entry: entry.entry,
		text: entry.events.map((event) => inWords(state, event)).join('; '),
		void: entry.void,
		readings: readingsIn(entry.events),
	}));
}

function readingInWords(state: State, reading: Reading): string {
	const { of, bend, name, evidence } = reading;
	const where = name ? ` "${name}"` : bend ? ` of bend ${bend}` : '';
	const what = evidence && bend ? EVIDENCE_OF[evidence](bend) : `${KINDS[of]}${where}`;
	const asked = reading.stop === undefined ? '' : ` (stop asked for: ${show(reading.stop, 4)} degrees)`;
	const value = `${show(reading.value, 4)}${unit(state, reading)}`;
	return `${what}: ${value === '1 degrees' ? '1 degree' : value}${asked}`;
}

const unit = ({ start }: State, { of, name }: Pick<Reading, 'of' | 'name'>) => readingUnit(start.job, of, name);

function inWords(state: State, event: Event): string {
	switch (event.type) {
		case 'tube-set':
			return `tube set at bend ${event.bend}`;
		case 'reading-taken':
			return readingInWords(state, event.reading);
		case 'reading-noted':
			return `${readingInWords(state, event.reading)}, first of two`;
		case 'reading-doubted':
			return `${readingInWords(state, event.reading)}, doubted: ${event.why}`;
		case 'doubt-settled': {
			const values = event.setAside.map((x) => show(x, 4)).join(' and ');
			const aside = values === '' ? '' : `; ${values}${unit(state, event.reading)} set aside`;
			return `${readingInWords(state, event.reading)}, ${event.count === 2 ? 'confirmed' : 'taken as the likelier'}${aside}`;
		}
		case 'measuring-skipped':
			return `bend ${event.bend} not measured, gone on by the dial`;
		case 'check-skipped':
			return `check "${event.name}" skipped`;
		case 'plan-chosen':
			return event.plan === 'old' ? 'numbers of before the correction kept' : 'corrected numbers taken';
		case 'tube-taken-out':
			return 'tube was taken out of the die';
		case 'bend-accepted':
			return `bend ${event.bend} accepted`;
		case 'pull-chosen':
			return `bend ${event.bend} to be pulled again`;
		case 'relief-chosen':
			return `bend ${event.bend} opened a little`;
		case 'bend-reopened':
			return `gone back to bend ${event.bend} to ${event.how === 'pull' ? 'pull it again' : 'open it a little'}`;
		case 'tube-scrapped':
			return `tube scrapped: ${event.why}`;
		case 'record-voided':
			return `record ${event.entry} undone`;
		case 'reading-amended':
			return `record ${event.entry} corrected: ${KINDS[event.of]} is ${show(event.value, 4)}${unit(state, amendedIn(state, event))}`;
		case 'note-written':
			return `note: ${event.text}`;
		case 'session-left':
			return 'session left';
		case 'session-resumed':
			return 'session resumed';
	}
}

/** The reading that an amendment corrects, for the name of its check. */
function amendedIn(
	{ entries }: State,
	{ entry, of }: Extract<Event, { type: 'reading-amended' }>,
): Pick<Reading, 'of' | 'name'> {
	return readingsIn(entries[entry - 1]?.events ?? []).find((reading) => reading.of === of) ?? { of };
}
