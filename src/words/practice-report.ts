import type { Pieces } from '../session/batch/pieces.ts';
import type { Ask } from '../session/protocol/asks.ts';
import type { DoneNote, Output } from '../session/protocol/notes.ts';
import type { Job } from '../tube/job.ts';
import { madeWords, scrappedWords } from './batch.ts';
import { foreign, foreignName } from './foreign.ts';
import { about, angle, fine, readingSpread, readingValue } from './numbers.ts';
import { invitation, verdictWords } from './verdict.ts';

/** A bend's heading before its first set-up; null at any other ask. */
export function headingWords(ask: Ask): string | null {
	if (ask.ask !== 'set' || ask.seat > 1) return null;
	const drawn = angle(ask.target) === angle(ask.design) ? '' : ` (drawing ${angle(ask.design)})`;
	return `Bend ${ask.bend} of ${ask.bends}: ${angle(ask.target)}${drawn}`;
}

/** What a correction brings; null where nothing is left to correct: the end tells the rest. */
export function correctedWords(output: Output, job: Job): string | null {
	if (!('note' in output) || output.note !== 'corrected' || output.remaining.length === 0) return null;
	const [now, drawn] = [output.predicted, output.without].map(({ endOffset }) => fine(endOffset, job));
	return `corrected: the far end should come out ${now} from its place; by the drawing's numbers ${drawn}.`;
}

export const ANGLES_LEGEND =
	'Angles in degrees. Believed: what the program thinks it is. Truly: what the simulated tube has; no shop knows that.';

export const LEFT_EARLY =
	'Left before its end. A simulated bender forgets its tube, so you cannot go on with this session.';

/** How the tube came out. */
export function endingWords(done: DoneNote, job: Job): string {
	const { scrapped, endOffset, endAngle, sd, fits, chance, tellsMost } = done;
	if (scrapped || endOffset === null || endAngle === null || sd === null) return 'The tube was scrapped.';
	const end = `Far end ${fine(endOffset, job)} from its place, ${angle(endAngle)} from its direction.`;
	const give = `Give or take ${readingSpread(sd.endOffset, 'length', job)} and ${about(sd.endAngle)}.`;
	return [end, give, verdictWords(fits, chance), invitation(fits, chance, tellsMost) ?? ''].join(' ').trim();
}

/** What a practice begins with, and where it is kept. */
export const PRACTICE = {
	auto: (job: string, seed: number): string => `${foreignName(job)}: practice on a simulated bender, seed ${seed}`,
	about:
		'The operator is simulated too; he reads with errors and now and then keys a wrong number. No session learns from this one.',
	byHand: (seed: number, log: string): string => `Practice on a simulated bender, seed ${seed}. ${PRACTICE.log(log)}`,
	log: (path: string): string => `Log: ${foreign(path)}`,
	keptIn: (home: string): string => `Practice sessions are kept in ${home}.`,
} as const;

export const ANGLES_HEADS = [
	'bend',
	'drawing',
	'target',
	'believed',
	'give or take',
	'truly',
	'pulls',
	'set-ups',
] as const;

/** What was read at a check. */
export const checkReadWords = (name: string, reading: number | null, job: Job): string =>
	`check ${foreignName(name)}: ${reading === null ? 'not read' : readingValue(reading, 'check', name, job)}`;

/** How a practiced batch came out. */
export const practicedWords = (pieces: Pieces): string => `The batch: ${madeWords(pieces)}${scrappedWords(pieces)}.`;
export const BATCH_HEADS = ['bend', 'drawing', 'mean', 'each piece, believed'] as const;
export const NOT_MADE = 'not made';
