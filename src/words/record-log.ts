/** What a session's record says of the lines of its log: every pull, corrections, and what else happened. */
import type { CorrectionStory } from '../review/story.ts';
import type { Answered } from '../session/log/answered.ts';
import type { Event } from '../session/log/events.ts';
import type { ReadingKind } from '../session/protocol/kinds.ts';
import type { PullView } from '../session/report/set-ups.ts';
import { stages } from '../session/report/stages.ts';
import type { SessionView } from '../session/report/views.ts';
import { formatAngle } from '../units/format.ts';
import { answeredWords } from './answered.ts';
import { foreign } from './foreign.ts';
import { localMinute, type WallClock } from './local-time.ts';
import { TAKEN_BACK } from './story-bend.ts';
import { briefCorrectionWords } from './story-correction.ts';

/** What became of a pull besides its readings. */
export function pullRemark(pull: PullView): string {
	const opened = stages(pull).slice(1);
	const remarks = [
		...(pull.void ? ['taken back: the numbers do not count'] : []),
		...opened.map((readings) => `opened to ${readings.map((x) => formatAngle(x, 2)).join(', ')}`),
	];
	return remarks.join('; ');
}

/** Events that a reader who was not there would ask about. */
const TOLD: ReadonlySet<Event['type']> = new Set<Event['type']>([
	'doubt-settled',
	'measuring-skipped',
	'check-skipped',
	'plan-chosen',
	'relief-chosen',
	'bend-reopened',
	'tube-scrapped',
	'record-voided',
	'reading-amended',
	'heat-told',
	'note-written',
	'session-left',
	'session-resumed',
]);

/** What was told of how the tube lay, or measured on it unasked: the numbers that were asked for do not hold then. */
const TOLD_OF: ReadonlySet<ReadingKind> = new Set<ReadingKind>(['mark', 'rotation', 'length']);

function isTold(event: Event): boolean {
	if (event.type !== 'reading-taken') return TOLD.has(event.type);
	return event.reading.evidence !== undefined || TOLD_OF.has(event.reading.of);
}

/** The lines of the log that are no plain reading: notes, what was told otherwise than asked for, opened, set aside or taken back. */
export function eventRows(lines: readonly Answered[], job: SessionView['job'], clock: WallClock): string[][] {
	return lines
		.filter(({ events, void: gone }) => gone || events.some(isTold))
		.map((line) => [
			`${line.entry}`,
			foreign(localMinute(line.at, clock)),
			`${answeredWords(line, job)}${line.void ? TAKEN_BACK : ''}`,
		]);
}

/** The corrections that changed what bends still to come were given: the line of the log that each followed, and what changed. */
export function correctionRows(corrections: readonly CorrectionStory[], job: SessionView['job']): string[][] {
	return corrections.flatMap((each) => {
		const words = briefCorrectionWords(each, job);
		return words === null ? [] : [[`${each.entry}`, words]];
	});
}
