import type { ScatterKind } from '../../springback/scatter.ts';
import { bendsNamed } from '../bend-name.ts';
import { foreignName } from '../foreign.ts';
import { exactAngle } from '../numbers.ts';

/** What the plots of kept sessions are called, and how they are read. */

const SEVERAL = '*: several.';

export const PLOT = {
	title: (name: string, index: number, count: number): string => `${name} (plot ${index} of ${count})`,
	next: 'next plot',
	key: ['4 6', 'plot before, after'],
	nothing: 'Nothing was measured that this plot could show.',
	sessions: 'sessions of this job',
	session: (ago: number): string => (ago === 0 ? 'this' : `-${ago}`),
} as const;

export const SPRINGBACK = {
	title: 'Springback',
	angle: 'angle of the bend, degrees',
	back: 'springback, degrees',
	says: (dies: readonly LetteredDie[]): string =>
		`Line and dots: what was expected before this tube; 9 pulls of 10 in the dots.${diesBesides(dies)} Figures: this session's pulls, by bend. ${SEVERAL}`,
} as const;

/** A die's line, by its letter. */
interface LetteredDie {
	letter: string;
	die: string;
	bends: readonly number[];
}

/** Which line is whose, where there are several. */
function diesBesides(dies: readonly LetteredDie[]): string {
	if (dies.length === 1) return '';
	const each = dies.map(({ letter, die, bends }) => `${letter}: die "${foreignName(die)}", ${bendsNamed(bends)}`);
	return ` ${each.join('; ')}.`;
}

export const LANDED = {
	title: 'Where stops landed',
	pulls: 'pulls that were measured, in order',
	off: 'landed past (+) or short (-) of what was expected, degrees',
	says: `Where each stop left the bend, by bend. 9 of 10 should lie in the dots. ${SEVERAL}`,
} as const;

export const ERRORS = {
	title: 'Error of each bend',
	off: 'made past (+) or short (-) of what was wanted, degrees',
	says: ({ under, over }: { under: number; over: number }): string =>
		`Each figure is a bend of that session. Dotted: no error, and the tolerance, -${exactAngle(under)} to +${exactAngle(over)}. ${SEVERAL}`,
} as const;

export const PULLS = {
	title: 'Pulls a bend',
	pulls: 'pulls',
	says: `Each figure is a bend of that session; the line is their mean. ${SEVERAL}`,
} as const;

const KINDS: Readonly<Record<ScatterKind, string>> = {
	stop: 'stopping',
	seat: 'seating',
	dial: 'dial',
	finder: 'angle finder',
};

export const SCATTER = {
	title: 'Scatter by kind',
	size: 'give or take, degrees',
	of: 'scatter of',
	kind: (kind: ScatterKind): string => KINDS[kind],
	/** One letter each for what is common in any shop, known before, known now. */
	marks: { common: 'c', before: 'b', now: 'n' },
	says: `n: as known now. b: before this session. c: common in any shop. ${SEVERAL}`,
} as const;
