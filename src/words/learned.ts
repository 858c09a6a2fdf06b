import type { Known } from '../session/protocol/facts/index.ts';
import type { ScatterKind } from '../springback/scatter.ts';
import { counted } from './counted.ts';
import { foreignName } from './foreign.ts';
import { knownWords } from './known.ts';

/** What the page of benders says of what was learned. */
export const LEARNED = {
	of: (die: string, tube: string): string => `die ${foreignName(die)}, ${tube}`,
	/** Of many sessions only the newest weigh; of few, others help. `weigh`: how many do. */
	rests: (taught: { sessions: number; pulls: number }, weigh: number, known: Known | null): string => {
		const on = `learned in ${counted(taught.sessions, 'session')}, ${counted(taught.pulls, 'pull')}`;
		if (weigh < taught.sessions) return `${on}, of which the newest ${weigh} weigh`;
		return known === null ? on : `${on}; known ${knownWords(known)}`;
	},
	scatter: 'scatter in degrees (and readings that tell it):',
	scatterOf: (kind: ScatterKind, { sd, count }: { sd: number; count: number }): string =>
		`${SCATTERS[kind]} ${sd.toFixed(2)} (${count})`,
	wrong: ({ part, count }: { part: number; count: number }): string =>
		`wrong numbers: ${Math.round(100 * part)} in 100 (told by ${counted(count, 'reading')})`,
	heads: 'bend  springback',
} as const;

const SCATTERS: Readonly<Record<ScatterKind, string>> = {
	stop: 'stopping',
	seat: 'seating',
	dial: 'reading the dial',
	finder: 'the angle finder',
};

/** Springback at an angle and its band, in the columns of `LEARNED.heads`. */
export function springbackRow(angle: number, { back, low, high }: { back: number; low: number; high: number }): string {
	const [middle, from, to] = [back, low, high].map((degrees) => degrees.toFixed(1).padStart(4));
	return `${String(angle).padStart(6)}  ${middle} (${from} to ${to})`;
}

/** What the numbers are, in lines that fit 60 columns. */
export const LEARNED_LEGEND: readonly string[] = [
	'Springback here: how many degrees past the finished angle',
	'the dial has to go, take-up included. 9 tubes of 10 lie',
	'within the band.',
];
