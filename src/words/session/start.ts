import { capital } from '../../units/format.ts';
import { pieceWords } from '../batch.ts';
import { foreignName } from '../foreign.ts';
import type { Wording } from '../lengths.ts';
import { tape } from '../numbers.ts';

/** What a session's first page says. */
export const START = {
	title: (piece: { number: number; wanted: number } | null, resumed: boolean): string => {
		if (resumed) return 'Session goes on';
		return piece === null ? 'New session' : capital(pieceWords(piece));
	},
	laidOut: 'laid out, go on',
	understood: 'understood, go on',
	empty: (warned: boolean): string => (warned ? 'Press + to bend all the same; * has leave.' : 'Press + to go on.'),
	allTheSame: 'The tube can be bent all the same if you know better.',
	alike: 'Same cut and marks as the piece before.',
	otherMarks: '! Mark this tube anew. The job or its die has changed since the piece before.',
	wouldMove: (off: number, style: Wording): string =>
		`By the springback so far, these marks may lie up to ${tape(off, style)} off. Do the checks read wrong? Bend a test piece: with its radius the marks come out right.`,
	heat: (heat: string): string => `Heat ${foreignName(heat)}. Another one? Press * and tell it.`,
	changed: (fields: readonly string[]): string =>
		`The job file has changed since, at ${fields.join(', ')}. This session keeps the job that it began with.`,
	others: (ids: readonly string[]): string => `Also unfinished for this job: ${ids.join(', ')}.`,
} as const;

/** Where the log of a session is. */
export const logAt = (path: string): string => `Log: ${path}`;

/** Another die goes in before the tube is set. */
export const CHANGE_DIE = {
	title: (first: boolean): string => (first ? 'Put in the die' : 'Change the die'),
	plus: 'it is in, go on',
	empty: 'Press + when the die is in.',
} as const;
