import type { KeptRow } from '../journal/kept-row.ts';
import type { Measure, Trend, TrendSession, TrendShift } from '../review/trend.ts';
import type { Rule } from '../review/trend-chart.ts';
import { foreignName } from './foreign.ts';
import type { WallClock } from './local-time.ts';
import { about, angle, exactAngle } from './numbers.ts';
import { NONE_KEPT } from './session-list.ts';

/** Whose sessions a trend is of. */
export type TrendOf = { bender: string } | { job: string };

const MONTHS = 'January February March April May June July August September October November December'.split(' ');

/** What a measure is called, and what a value above the center means. */
export const MEASURE_WORDS: Readonly<Record<Measure, { name: string; says: string }>> = {
	springback: { name: 'Springback at 45°', says: 'each session by its own readings, take-up included' },
	error: { name: 'Error made', says: 'made less wanted, mean of the bends; above 0 is over' },
	miss: { name: 'First-pull miss', says: 'measured less expected, mean of the first pulls' },
};
export const DEPARTURE_SAYS = 'above what earlier sessions of the same die and tube taught';

export const RULE_WORDS: Readonly<Record<Rule, string>> = {
	'beyond-limit': 'beyond the limit',
	'two-of-three': '2 of 3 far off on one side',
	'four-of-five': '4 of 5 off on one side',
	'eight-in-a-row': '8 in a row on one side',
	range: 'far from the one before',
};

/** What a chart of too few sessions says instead. */
export function fewWords(count: number, least: number): string {
	const sessions = count === 0 ? 'No session here tells' : count === 1 ? 'One session tells' : `${count} sessions tell`;
	return `${sessions} what is usual. Limits need ${least} that do: bend on, then look again.`;
}

/** What the last sessions are off by, as the line at home has it. */
export function shiftWords(bender: string, shift: TrendShift, clock: WallClock): string {
	const { by, before, since, cause } = shift;
	const more = `${angle(Math.abs(by))} ${by > 0 ? 'more' : 'less'} at 45°`;
	const why =
		cause === 'all-angles'
			? 'Die worn, other steel, or the pointer moved?'
			: 'Other steel, another wall, or a die worn?';
	return `Bender ${foreignName(bender)} springs back ${more} than ${thenWords(before, since, clock)}. ${why}`;
}

/** The time before a shift: `in October`, or with no other month between `before 2026-11-12`. */
function thenWords(before: TrendSession, since: TrendSession, clock: WallClock): string {
	const [then, now] = [clock(before.at)?.day, clock(since.at)?.day];
	if (then === undefined || now === undefined) return `before session ${foreignName(since.id)}`;
	if (then.slice(0, 7) === now.slice(0, 7)) return `before ${now}`;
	const month = MONTHS[Number(then.slice(5, 7)) - 1];
	return then.slice(0, 4) === now.slice(0, 4) ? `in ${month}` : `in ${month} ${then.slice(0, 4)}`;
}

/** The same on the page of a trend: with how far off it may be and where it began; or that there is none. */
export function shiftLines(shift: Trend['shift'], of: TrendOf, isNews: boolean, clock: WallClock): string[] {
	if (shift === null) return ['Springback has not moved, as far as these sessions tell.'];
	const { by, sd, since, found, cause } = shift;
	const how = cause === 'all-angles' ? 'at every angle alike' : 'and more the larger the angle';
	const moved = `Springback moved by ${by > 0 ? '+' : '-'}${angle(Math.abs(by))} at 45°, ${how}, give or take ${about(sd)}.`;
	const when = `From session ${foreignName(since.id)} on; session ${foreignName(found.id)} showed it.`;
	const news = 'bender' in of ? [shiftWords(of.bender, shift, clock)] : [];
	return isNews ? [...news, moved, when, WHERE_TO_LOOK] : [moved, when, 'Since then it is what is usual here.'];
}

const WHERE_TO_LOOK =
	'Look at the pointer first, then the die, then the tube. The next stops follow what the last tubes showed.';

/** Whose sessions they are, and how many. */
export function trendTitle(of: TrendOf, { count }: Trend): string {
	const whose = 'bender' in of ? `bender ${foreignName(of.bender)}` : `job ${foreignName(of.job)}`;
	const many = count === 1 ? 'one session' : `the newest ${count} sessions`;
	return `Trend of ${whose}, ${count === 0 ? 'no session with a bend taken yet' : many}`;
}

/** Nothing kept is of that name. */
export function noTrendWords(name: string, benders: readonly string[], jobs: readonly string[]): string {
	const list = (names: readonly string[]) => {
		const shown = names.slice(0, 8).map(foreignName).join(', ');
		return names.length > 8 ? `${shown} and ${names.length - 8} more` : shown;
	};
	if (jobs.length === 0) return NONE_KEPT;
	return `No kept session is of a job or bender "${foreignName(name)}". Benders: ${list(benders)}. Jobs: ${list(jobs)}.`;
}

/** A day and a job, as a row of a chart has them. */
export function sessionCells({ id, at, job }: TrendSession, clock: WallClock): [day: string, job: string] {
	return [clock(at)?.day ?? foreignName(id), foreignName(job)];
}

/** The benders that kept sessions were bent on do not include the one asked for. */
export function noBenderWords(name: string, benders: readonly string[]): string {
	if (benders.length === 0) return NONE_KEPT;
	return `No kept session is of bender "${foreignName(name)}". Benders with sessions: ${benders.map(foreignName).join(', ')}.`;
}

export const NOTHING_FOUND =
	'No kept session is like that. Leave out a word or a condition; pullbook log lists them all.';

/** Names of the jobs that these sessions are of, the newest first. */
export function jobsOf(rows: readonly KeptRow[]): string[] {
	return [...new Set(rows.flatMap(({ job }) => job?.name ?? []))];
}

/** What is usual by a chart. */
export const limitsWords = ({ center, low, high, rangeHigh, base }: ChartLimits): string =>
	`Center ${exactAngle(center)}, limits ${exactAngle(low)} and ${exactAngle(high)}, from ${base} sessions. Two in a row are at most ${exactAngle(rangeHigh)} apart.`;

type ChartLimits = Record<'center' | 'low' | 'high' | 'rangeHigh' | 'base', number>;
