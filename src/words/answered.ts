import type { Answered } from '../session/log/answered.ts';
import type { Event, Reading } from '../session/log/events.ts';
import { foreign, foreignName } from './foreign.ts';
import type { Wording } from './lengths.ts';
import { listed } from './listed.ts';
import { dial, notNothing, readingValue } from './numbers.ts';
import { EVIDENCE_OF, READINGS } from './readings.ts';
import { reasonWords } from './reason.ts';
import { askedForWords } from './set-up.ts';

/** One line of the log as a person reads it. What was typed stands as it was typed. `brief`: without why a reading is asked again. */
export function answeredWords(line: Answered, style: Wording, brief = false): string {
	return line.events.map((event) => eventWords(event, line, style, brief)).join('; ');
}

/** The same in the list of readings: a set-up and a pull with the mark and the turn that were asked for. */
export function listedWords(line: Answered, style: Wording): string {
	const asked = line.setUp ? `; ${askedForWords(line.setUp, style)}` : '';
	return `${answeredWords(line, style)}${asked}`;
}

function eventWords(event: Event, { corrects }: Answered, style: Wording, brief: boolean): string {
	switch (event.type) {
		case 'tube-set':
			return `tube set at bend ${event.bend}`;
		case 'tube-still':
			return `bend ${event.bend}: the tube never left the die`;
		case 'reading-taken':
			return readingWords(event.reading, style);
		case 'reading-noted':
			return `${readingWords(event.reading, style)}, first of two`;
		case 'reading-doubted': {
			const why = event.why === undefined ? reasonWords(event.reason, style) : foreign(event.why);
			return `${readingWords(event.reading, style)}, to be read again${brief ? '' : `: ${why}`}`;
		}
		case 'doubt-settled': {
			const { reading, count, setAside, kept } = event;
			const values = listed(setAside.map((value) => readingValue(value, reading.of, reading.name, style)));
			const aside = values === '' ? '' : `; ${values} set aside`;
			const counts = count === 1 ? 'which counts' : kept ? 'confirmed' : 'the middle of two that agree';
			return `${readingWords(reading, style)}, ${counts}${aside}`;
		}
		case 'measuring-skipped':
			return `bend ${event.bend} not measured: went on by the dial`;
		case 'check-skipped':
			return `check "${foreignName(event.name)}" skipped`;
		case 'plan-chosen':
			return event.plan === 'old' ? 'old numbers kept' : 'new numbers taken';
		case 'tube-taken-out':
			return 'tube taken out of the die';
		case 'bend-accepted':
			return `bend ${event.bend} taken`;
		case 'pull-chosen':
			return `bend ${event.bend}: pull it again`;
		case 'relief-chosen':
			return `bend ${event.bend} opened a little`;
		case 'bend-reopened':
			return `back to bend ${event.bend} to ${event.how === 'pull' ? 'pull it again' : 'open it a little'}`;
		case 'tube-scrapped':
			return `tube scrapped: ${foreign(event.why)}`;
		case 'record-voided':
			return `line ${event.entry} taken back`;
		case 'reading-amended': {
			const value = readingValue(event.value, event.of, corrects?.name, style);
			const was = corrects?.value === undefined ? value : readingValue(corrects.value, event.of, corrects.name, style);
			return `line ${event.entry} corrected: ${READINGS[event.of]} is ${value}${was === value ? '' : `, not ${was}`}`;
		}
		case 'draft-kept': {
			const { of, value } = event.draft;
			return of === 'loaded'
				? `held at ${dial(value)}, not yet read after release`
				: `greatest diameter ${notNothing(value, style)}, the least not yet read`;
		}
		case 'heat-told':
			return `this tube is of heat ${foreignName(event.heat)}`;
		case 'note-written':
			return `note: ${foreign(event.text)}`;
		case 'session-left':
			return 'session left';
		case 'session-resumed':
			return 'session resumed';
	}
}

function readingWords(reading: Reading, style: Wording): string {
	const { of, bend, name, evidence, stop } = reading;
	const value = readingValue(reading.value, of, name, style);
	if (evidence === undefined && bend !== undefined) {
		if (of === 'loaded') return `bend ${bend} held at ${value}${stop === undefined ? '' : ` (stop ${dial(stop)})`}`;
		if (of === 'pointer') return `dial ${value} with the tube snug`;
		if (of === 'released') return `${value} after release`;
		if (of === 'angle') return `bend ${bend} measured ${value}`;
	}
	const where = name ? ` "${foreignName(name)}"` : bend ? ` of bend ${bend}` : '';
	const what = evidence && bend ? EVIDENCE_OF[evidence](bend) : `${READINGS[of]}${where}`;
	return `${what}: ${value}`;
}
