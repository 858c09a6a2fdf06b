import { readingsIn } from './answers.ts';
import type { Event, Reading } from './events.ts';
import { KINDS } from './reading-words.ts';
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
		text: entry.events.map(inWords).join('; '),
		void: entry.void,
		readings: readingsIn(entry.events),
	}));
}

const EVIDENCE = {
	farEndToMark: 'far end to the mark',
	leg: 'straight before',
	mark: 'mark as it really was',
	rotation: 'plane as it really lies',
} as const;

function readingInWords(reading: Reading): string {
	const what = reading.evidence ? EVIDENCE[reading.evidence] : KINDS[reading.of];
	const where = reading.name ? ` "${reading.name}"` : reading.bend ? ` of bend ${reading.bend}` : '';
	const asked = reading.stop === undefined ? '' : ` (stop asked for: ${show(reading.stop, 4)})`;
	return `${what}${where}: ${show(reading.value, 4)}${asked}`;
}

function inWords(event: Event): string {
	switch (event.type) {
		case 'tube-set':
			return `tube set at bend ${event.bend}`;
		case 'reading-taken':
			return readingInWords(event.reading);
		case 'reading-noted':
			return `${readingInWords(event.reading)}, first of two`;
		case 'reading-doubted':
			return `${readingInWords(event.reading)}, doubted: ${event.why}`;
		case 'doubt-settled': {
			const aside =
				event.setAside.length === 0 ? '' : `; ${event.setAside.map((x) => show(x, 4)).join(' and ')} set aside`;
			return `${readingInWords(event.reading)}, ${event.count === 2 ? 'confirmed' : 'taken as the likelier'}${aside}`;
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
			return `record ${event.entry} corrected: ${KINDS[event.of]} is ${show(event.value, 4)}`;
		case 'note-written':
			return `note: ${event.text}`;
		case 'session-left':
			return 'session left';
		case 'session-resumed':
			return 'session resumed';
	}
}
