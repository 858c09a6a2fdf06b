import { knownFrom } from '../session/protocol/facts/known.ts';
import type { SpringbackPoint } from '../springback/learned-curve.ts';
import { wrapBehind } from '../terminal/wrap.ts';
import { trimmed } from '../units/format.ts';
import { convertLength } from '../units/units.ts';
import { foreignName } from '../words/foreign.ts';
import { knownWords } from '../words/known.ts';
import type { LearnedHere } from './learned.ts';

/** As wide as the table leaves in 60 columns. */
const PLOT_COLUMNS = 26;
const TEXT_COLUMNS = 58;
/** Ends of the plot's scale, degrees: the smallest that takes all. */
const SCALES = [2, 4, 6, 8, 10, 12, 16, 20, 24, 30, 40, 60, 100, 180];

/** What was learned of one tube on a die: on how much it rests, and springback over the angle as a table with a plot, in ASCII. */
export function learnedText(learned: LearnedHere): string[] {
	const { kin, units, taught, springback, scatter, wrong } = learned;
	const size = (mm: number) => trimmed(convertLength(mm, 'mm', units), units === 'in' ? 3 : 1);
	const end = SCALES.find((scale) => springback.every(({ high }) => high <= scale)) ?? 180;
	const half = PLOT_COLUMNS / 2;
	return [
		`die ${foreignName(kin.die)}, ${size(kin.od)} x ${size(kin.wall)} ${units} ${foreignName(kin.material)}`,
		...wrapBehind(
			'  ',
			`learned in ${counted(taught.sessions, 'session')}, ${counted(taught.pulls, 'pull')}${restsOn(learned)}`,
			TEXT_COLUMNS,
		),
		...scatterLines(scatter),
		`  wrong numbers: ${Math.round(100 * wrong.part)} in 100 (told by ${counted(wrong.count, 'reading')})`,
		`  bend  springback          0${`${end / 2}`.padStart(half)}${`${end}`.padStart(half)}`,
		...springback.map((point) => lineOf(point, end)),
	];
}

/** Of many sessions only the newest weigh; of few, others help. */
function restsOn({ taught, from }: LearnedHere): string {
	const weigh = from.exact.sessions;
	if (weigh < taught.sessions) return `, of which the newest ${weigh} weigh`;
	return from.near.length > 0 ? `; known ${knownWords(knownFrom(from))}` : '';
}

/** What the numbers of `learnedText` are. */
export const LEARNED_LEGEND: readonly string[] = [
	'Springback here: how many degrees past the finished angle',
	'the dial has to go, take-up included. 9 tubes of 10 lie',
	'within the band.',
];

export function counted(count: number, what: string): string {
	return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function lineOf(point: SpringbackPoint, end: number): string {
	const { angle, back, low, high } = point;
	const [middle, from, to] = [back, low, high].map((degrees) => degrees.toFixed(1).padStart(4));
	return `${String(angle).padStart(6)}  ${middle} (${from} to ${to})  |${plot(point, end)}`;
}

/** The band as a bar, what is expected as an `o` in it. */
function plot({ back, low, high }: SpringbackPoint, end: number): string {
	const place = (value: number) => Math.min(PLOT_COLUMNS - 1, Math.max(0, Math.floor((value / end) * PLOT_COLUMNS)));
	const [from, to] = [place(low), place(high)];
	return Array.from({ length: to + 1 }, (_, i) => (i === place(back) ? 'o' : i >= from ? '-' : ' ')).join('');
}

/** In words, two on a line so that it can be read in 60 columns. */
const SCATTERS: readonly (readonly (readonly [keyof LearnedHere['scatter'], string])[])[] = [
	[
		['stop', 'stopping'],
		['seat', 'seating'],
	],
	[
		['dial', 'reading the dial'],
		['finder', 'the angle finder'],
	],
];

function scatterLines(scatter: LearnedHere['scatter']): string[] {
	const told = ([name, words]: (typeof SCATTERS)[number][number]) =>
		`${words} ${scatter[name].sd.toFixed(2)} (${scatter[name].count})`;
	return [
		'  scatter in degrees (and readings that tell it):',
		...SCATTERS.map((line) => `    ${line.map(told).join(', ')}`),
	];
}
