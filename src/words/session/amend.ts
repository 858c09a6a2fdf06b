import type { AmendPreview, Moved } from '../../session/advice/amend-preview.ts';
import type { Answered } from '../../session/log/answered.ts';
import type { Reading } from '../../session/log/events.ts';
import type { EvidenceKind } from '../../session/protocol/kinds.ts';
import { answeredWords, listedWords } from '../answered.ts';
import type { Wording } from '../lengths.ts';
import { angle, dial, measureOf, shown, tape } from '../numbers.ts';
import { EVIDENCE, readingName } from '../readings.ts';
import { reasonWords } from '../reason.ts';

/** What the pages say on which an earlier reading is corrected, or something else is told that was measured. */

export const AMEND = {
	title: 'Correct an earlier reading',
	titleOf: (entry: number): string => `Correct line ${entry}`,
	label: 'What it really was',
	empty: 'Write the right number and press Enter; / goes back.',
} as const;

/** A line of the log to choose, and to stand over the field. */
export const lineListed = (line: Answered, style: Wording): string => `line ${line.entry}: ${listedWords(line, style)}`;
export const lineTold = (line: Answered, style: Wording): string => `Line ${line.entry}: ${answeredWords(line, style)}`;

/** A reading with what it is called. */
export const readingTold = (reading: Reading, style: Wording): string =>
	`${readingName(reading)}: ${valueTold(reading, style)}`;

export function valueTold({ of, value, name }: Reading, style: Wording): string {
	return shown(value, measureOf(of, style, name), style);
}

/** What was measured besides what was asked. */
export const EVIDENCE_PAGE = {
	title: 'Something else was measured',
	which: (bends: number): string => `At which bend, 1 to ${bends}`,
	measured: (kind: EvidenceKind): string => `Measured: ${EVIDENCE[kind]}`,
	measuredAt: (kind: EvidenceKind, bend: number): string => `Bend ${bend}, measured: ${EVIDENCE[kind]}`,
} as const;

/** Walking back through the readings. */
export const WALK = {
	title: 'Earlier readings',
	none: 'There is none.',
	label: (entry: number, reading: Reading): string => `Line ${entry}, ${readingName(reading)}: what it really was`,
	empty: 'Arrow up: an earlier one; arrow down: a later one. Write the right number and press Enter to correct it.',
	keys: { up: 'earlier', down: 'later', open: 'readings', openBrief: 'log' },
	marks: { aside: 'set aside', doubted: 'doubted', again: 'read again' },
} as const;

/** What a correction changes, before it counts. */
export const AMEND_SURE = {
	title: 'Correct it?',
	plus: 'correct it',
	empty: 'Press + to correct the reading, / to leave it as it was.',
	what: (entry: number, reading: Reading | null, value: number, style: Wording): string =>
		`Line ${entry}: ${correction(reading, value, style)}`,
	nothing: 'This changes no angle, mark or stop.',
	changes: 'This would change:',
	doubted: (doubted: NonNullable<AmendPreview['doubted']>, style: Wording): string =>
		`You will be asked for it again: ${reasonWords(doubted, style)}`,
	next: 'Then another question is open.',
} as const;

function correction(reading: Reading | null, value: number, style: Wording): string {
	if (reading === null) return String(value);
	return `${readingName(reading)}, not ${valueTold(reading, style)} but ${valueTold({ ...reading, value }, style)}`;
}

/** What becomes different, a line each: what it is of, before, after. */
export function changeRows(
	{ made, plan, stop }: AmendPreview,
	job: Wording,
): (readonly [of: string, before: string, after: string])[] {
	const row = (of: string, { before, after }: Moved, say: (value: number) => string) =>
		[of, say(before), say(after)] as const;
	return [
		...made.map((each) => row(`bend ${each.bend} made`, each.angle, angle)),
		...plan.flatMap(({ bend, mark, rotation, angle: target }) => [
			row(`bend ${bend} mark`, mark, (length) => tape(length, job)),
			...(angle(rotation.before) === angle(rotation.after) ? [] : [row(`bend ${bend} rotation`, rotation, angle)]),
			row(`bend ${bend} bend`, target, angle),
		]),
		...(stop === null ? [] : [row('stop of this pull', stop, dial)]),
	];
}
