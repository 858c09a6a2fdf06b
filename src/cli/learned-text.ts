import { clamp } from '../maths/scalar.ts';
import { knownFrom } from '../session/protocol/facts/known.ts';
import type { SpringbackPoint } from '../springback/learned-curve.ts';
import type { ScatterKind } from '../springback/scatter.ts';
import { wrapBehind } from '../terminal/wrap.ts';
import { convertLength } from '../units/units.ts';
import { foreignName } from '../words/foreign.ts';
import { LEARNED, springbackRow } from '../words/learned.ts';
import { tubeSize } from '../words/tube-size.ts';
import type { LearnedHere } from './learned.ts';

/** As wide as the table leaves in 60 columns. */
const PLOT_COLUMNS = 26;
const TEXT_COLUMNS = 58;
/** What stands in front of the plot's scale. */
const HEAD_COLUMNS = 26;
/** Ends of the plot's scale, degrees: the smallest that takes all. */
const SCALES = [2, 4, 6, 8, 10, 12, 16, 20, 24, 30, 40, 60, 100, 180];

/** What was learned of one tube on a die: on how much it rests, and springback over the angle as a table with a plot, in ASCII. */
export function learnedText(learned: LearnedHere): string[] {
	const { kin, units, springback, scatter, wrong } = learned;
	const [od, wall] = [kin.od, kin.wall].map((mm) => convertLength(mm, 'mm', units)) as [number, number];
	const end = SCALES.find((scale) => springback.every(({ high }) => high <= scale)) ?? 180;
	const half = PLOT_COLUMNS / 2;
	return [
		LEARNED.of(kin.die, `${tubeSize({ od, wall })} ${units} ${foreignName(kin.material)}`),
		...wrapBehind('  ', restsOn(learned), TEXT_COLUMNS),
		...scatterLines(scatter),
		`  ${LEARNED.wrong(wrong)}`,
		`  ${LEARNED.heads.padEnd(HEAD_COLUMNS)}0${`${end / 2}`.padStart(half)}${`${end}`.padStart(half)}`,
		...springback.map((point) => pointLine(point, end)),
	];
}

function restsOn({ taught, from }: LearnedHere): string {
	return LEARNED.rests(taught, from.exact.sessions, from.near.length > 0 ? knownFrom(from) : null);
}

function pointLine(point: SpringbackPoint, end: number): string {
	return `${springbackRow(point.angle, point)}  |${plot(point, end)}`;
}

/** The band as a bar, what is expected as an `o` in it. */
function plot({ back, low, high }: SpringbackPoint, end: number): string {
	const place = (value: number) => clamp(Math.floor((value / end) * PLOT_COLUMNS), 0, PLOT_COLUMNS - 1);
	const [from, to] = [place(low), place(high)];
	return Array.from({ length: to + 1 }, (_, i) => (i === place(back) ? 'o' : i >= from ? '-' : ' ')).join('');
}

/** Two on a line, so that it can be read in 60 columns. */
const SCATTERS: readonly (readonly ScatterKind[])[] = [
	['stop', 'seat'],
	['dial', 'finder'],
];

function scatterLines(scatter: LearnedHere['scatter']): string[] {
	const told = (kind: ScatterKind) => LEARNED.scatterOf(kind, scatter[kind]);
	return [`  ${LEARNED.scatter}`, ...SCATTERS.map((line) => `    ${line.map(told).join(', ')}`)];
}
