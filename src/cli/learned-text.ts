import { knownFrom } from '../session/known-from.ts';
import type { SpringbackPoint } from '../springback/learned-curve.ts';
import { trimmed } from '../units/format.ts';
import { convertLength } from '../units/units.ts';
import type { Learned, Scatter } from './learned.ts';

/** As wide as the table leaves in 60 columns. */
const PLOT_COLUMNS = 24;
/** Ends of the plot's scale, degrees: the smallest that takes all. */
const SCALES = [2, 4, 6, 10, 16, 24, 40, 60, 100, 180];

/** What was learned of one tube on a die: on how much it rests, and springback over the angle as a table with a plot, in ASCII. */
export function learnedText(learned: Learned): string[] {
	const { kin, units, taught, from, springback, scatter } = learned;
	const size = (mm: number) => trimmed(convertLength(mm, 'mm', units), units === 'in' ? 3 : 1);
	const end = SCALES.find((scale) => springback.every(({ high }) => high <= scale)) ?? 180;
	return [
		`die ${kin.die}, ${size(kin.od)} x ${size(kin.wall)} ${units} ${kin.material}`,
		`  learned in ${counted(taught.sessions, 'session')}, ${counted(taught.pulls, 'pull')}; known ${knownFrom(from)}`,
		...scatterLines(scatter),
		`  bend  back   9 of 10 within  0${`${end / 2}`.padStart(PLOT_COLUMNS / 2)}${`${end}`.padStart(PLOT_COLUMNS / 2)}`,
		...springback.map((point) => lineOf(point, end)),
	];
}

export function counted(count: number, what: string): string {
	return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function lineOf(point: SpringbackPoint, end: number): string {
	const { angle, back, low, high } = point;
	const cells = [
		String(angle).padStart(6),
		back.toFixed(1).padStart(6),
		`${low.toFixed(1).padStart(7)} to ${high.toFixed(1).padStart(4)}`,
	];
	return `${cells.join('')}  |${plot(point, end)}`.trimEnd();
}

/** The band as a bar, what is expected as an `o` in it. */
function plot({ back, low, high }: SpringbackPoint, end: number): string {
	const place = (value: number) => Math.min(PLOT_COLUMNS - 1, Math.max(0, Math.floor((value / end) * PLOT_COLUMNS)));
	const [from, to] = [place(low), place(high)];
	return Array.from({ length: to + 1 }, (_, i) => (i === place(back) ? 'o' : i >= from ? '-' : ' ')).join('');
}

const SCATTERS: Readonly<Record<string, string>> = {
	stop: 'stopping',
	seat: 'seating',
	dial: 'reading the dial',
	finder: 'the angle finder',
};

function scatterLines(scatter: Readonly<Record<string, Scatter>>): string[] {
	const told = Object.entries(SCATTERS).flatMap(([name, words]) => {
		const one = scatter[name];
		return one ? [`${words} ${one.sd.toFixed(2)} (${one.count})`] : [];
	});
	if (told.length === 0) return [];
	// Two on a line, so that it can be read in 60 columns.
	const lines = told.flatMap((_, i) => (i % 2 === 0 ? [told.slice(i, i + 2).join(', ')] : []));
	return lines.map((line, i) => `${i === 0 ? '  scatter, degrees (readings): ' : '    '}${line}`);
}
