import type { Batch } from '../../session/batch/batch.ts';
import type { DoneNote } from '../../session/protocol/notes.ts';
import type { Job } from '../../tube/job.ts';
import { capital } from '../../units/format.ts';
import { madeWords, pieceWords } from '../batch.ts';
import { bendName } from '../bend-name.ts';
import { foreignName } from '../foreign.ts';
import type { Ruled } from '../lengths.ts';
import { about, angle, fine, measureOf, readingSpread, shown } from '../numbers.ts';
import { MORE_TITLE } from '../screen/usual.ts';

/** What the last page of a tube says. */
export const DONE = {
	title: (scrapped: boolean): string => (scrapped ? 'Scrapped' : 'Done'),
	finish: 'finish',
	another: 'another of the same',
	batch: 'the batch so far',
	empty: (next: boolean, another: boolean): string => {
		if (next) return 'Press + for the next piece; * has finish.';
		return `Press + to finish${another ? '; * has another of the same' : ''}.`;
	},
	scrap: 'The tube is scrap; its readings are kept.',
	/** The last acceptance is taken back, and what was measured told before the bend is accepted again; a check that was skipped has its own question. */
	toTell: {
		check: 'To tell it, press / and + until its question is back.',
		evidence: 'To tell it, press / and +, then * and 3.',
	},
	cuts: (scrapped: boolean): string => (scrapped ? MORE_TITLE : 'Cuts and last looks'),
} as const;

/** A session with nothing left to ask, opened only to be looked at. */
export const OVER = { title: 'Nothing left to ask', plus: DONE.finish, empty: 'Press + to finish.' } as const;

/** Which piece it is, and how many are made. */
export function soFarWords(batch: Batch, piece: { number: number; wanted: number } | null): string {
	const which = piece === null ? '' : `${capital(pieceWords(piece))}; `;
	return `${which}${madeWords(batch.pieces)}.`;
}

/** The table of the bends: over its columns, and in the rows. */
export const BENDS_MADE = {
	heads: ['', 'drawn', 'wanted', 'made', 'give or take', 'pulls', 'set-ups'],
	row: ({ design, target, made, sd, pulls, seats }: DoneNote['bends'][number], bend: number): readonly string[] => [
		bendName(bend),
		angle(design),
		angle(target),
		made === null ? 'not made' : angle(made),
		sd === null ? '' : about(sd),
		String(pulls),
		String(seats),
	],
} as const;

/** A check, in its parts: what stands out is what was read. */
export function checkRead(
	{ name, design, reading }: DoneNote['checks'][number],
	job: Job,
): readonly [name: string, read: string, drawing: string] {
	const measure = measureOf('check', job, name);
	const read = reading === null ? 'not read' : shown(reading, measure, job);
	return [`check ${foreignName(name)}: `, read, ` (drawing ${shown(design, measure, job)})`];
}

/** How far the far end is off, and may be. */
export function endOff(
	{ endOffset, endAngle, sd }: { endOffset: number; endAngle: number; sd: { endOffset: number; endAngle: number } },
	job: Ruled,
): string {
	const give = `give or take ${readingSpread(sd.endOffset, 'length', job)}, ${readingSpread(sd.endAngle, 'angle', job)}`;
	return `Far end ${fine(endOffset, job)} and ${angle(endAngle)} off (${give}).`;
}

/** The corner that lies farthest off. */
export const cornerOff = ({ bend, off }: { bend: number; off: number }, job: Job): string =>
	`Corner ${bend} is ${fine(off, job)} off, the farthest (${fine(job.tolerance.shape, job)} allowed).`;
