/** How springback, error and first pulls went over the sessions of a job or a bender, and whether springback has moved. */
import type { KeptRow } from '../journal/kept-row.ts';
import { areSameKins } from '../springback/kin.ts';
import { type Chart, chartOf } from './trend-chart.ts';
import { type EndedRun, isNews, runsOf } from './trend-runs.ts';
import type { Departures, ShiftCause } from './trend-shift.ts';

/** What is charted, in degrees. */
export const MEASURES = ['springback', 'error', 'miss'] as const;
export type Measure = (typeof MEASURES)[number];

/** One session of a chart. */
export interface TrendSession {
	id: string;
	/** ISO time at which it began. */
	at: string;
	job: string;
}

/** The chart of one measure and the session of each of its points; `chart` is null where too few sessions tell what is usual. */
export interface MeasureChart {
	/** How many sessions tell of what is usual: where springback has just moved, those before it. */
	usual: number;
	sessions: readonly TrendSession[];
	chart: Chart | null;
}

/** Springback that has moved. */
export interface TrendShift {
	cause: ShiftCause;
	/** Degrees at 45 degrees, more springback positive, give or take `sd`. */
	by: number;
	sd: number;
	/** The last session before it, the first and the one that showed it. */
	before: TrendSession;
	since: TrendSession;
	found: TrendSession;
	/** How many sessions there are since it showed. */
	ago: number;
}

export interface Trend {
	/** How many sessions were looked at; there may be older ones. */
	count: number;
	charts: Readonly<Record<Measure, MeasureChart>>;
	/**
	 * `whole`: springback at 45 degrees as it is. `departure`: several dies or tubes, which do not spring back alike, so that each session counts
	 * by how far it departs from what those before it taught of the same.
	 */
	springback: 'whole' | 'departure';
	/** The newest shift of springback; null without any. */
	shift: TrendShift | null;
}

/** So many of the newest sessions are looked at. */
const LOOKED_BACK = 200;
/** A departure that is known no better than this tells nothing. */
const VAGUE_SD = 1;

type MeasuredSession = { session: TrendSession; value: number | null };

/** `rows`: the sessions meant, newest first. */
export function trendOf(rows: readonly KeptRow[]): Trend {
	const sessions = rowsThatTell(rows, LOOKED_BACK);
	const { departures, newest } = runsOf(sessions);
	// What is usual is what was before news; older than that, what was since.
	const begun = newest === null ? 0 : isNews(newest, sessions.length) ? newest.before : newest.from;
	const shown = sessions.slice(begun);
	const springback = areAlike(shown) ? 'whole' : 'departure';
	const measured = (measure: Measure): MeasuredSession[] =>
		shown.map((row, i) => ({
			session: sessionOf(row),
			value:
				measure === 'springback' && springback === 'departure'
					? departedBy(departures[begun + i] ?? null)
					: (row.figures?.[measure] ?? null),
		}));
	const usual = newest !== null && begun < newest.from ? newest.from - begun : undefined;
	return {
		count: sessions.length,
		charts: {
			springback: charted(measured('springback'), usual),
			error: charted(measured('error'), usual),
			miss: charted(measured('miss'), usual),
		},
		springback,
		shift: newest && shiftIn(sessions, newest),
	};
}

/** How many of the newest sessions are looked at for news: a start must not wait. */
const GLANCED = 120;

/** The shifts that are news, of each bender of the newest sessions, or of this one alone; `rows`: newest first. */
export function newsOf(rows: readonly KeptRow[], of: string | null = null): { bender: string; shift: TrendShift }[] {
	const byBender = new Map<string, KeptRow[]>();
	for (const row of rowsThatTell(rows, GLANCED)) {
		const bender = row.job?.bender ?? '';
		if (of !== null && bender !== of) continue;
		byBender.set(bender, [...(byBender.get(bender) ?? []), row]);
	}
	return [...byBender].flatMap(([bender, sessions]) => {
		const { newest } = runsOf(sessions);
		return newest !== null && isNews(newest, sessions.length) ? [{ bender, shift: shiftIn(sessions, newest) }] : [];
	});
}

/** The newest sessions that made anything, oldest first. */
function rowsThatTell(rows: readonly KeptRow[], most: number): KeptRow[] {
	const found: KeptRow[] = [];
	for (const row of rows) {
		if (found.length === most) break;
		if ((row.figures?.taken ?? 0) > 0) found.push(row);
	}
	return found.reverse();
}

function areAlike(rows: readonly KeptRow[]): boolean {
	const kins = rows.flatMap(({ kin, besides }) => (kin === null ? [] : [[kin, ...besides.map((each) => each.kin)]]));
	return kins.every((each) => areSameKins(each, kins[0]!));
}

function departedBy(departures: Departures | null): number | null {
	const departure = departures?.['all-angles'];
	if (departure === undefined || departure.information < VAGUE_SD ** -2) return null;
	return departure.score / departure.information;
}

/** `usual`: from how many of the first sessions limits are made at the most. */
function charted(measured: readonly MeasuredSession[], usual: number | undefined): MeasureChart {
	const points = measured.filter(({ value }) => value !== null);
	const values = points.map(({ value }) => value!);
	const most = measured.slice(0, usual).filter(({ value }) => value !== null).length;
	return { usual: most, sessions: points.map(({ session }) => session), chart: chartOf(values, most) };
}

function shiftIn(sessions: readonly KeptRow[], { cause, from, found, by, sd }: EndedRun): TrendShift {
	const at = (i: number) => sessionOf(sessions[i]!);
	return { cause, by, sd, before: at(from - 1), since: at(from), found: at(found), ago: sessions.length - 1 - found };
}

function sessionOf({ id, at, job }: KeptRow): TrendSession {
	return { id, at, job: job?.name ?? id };
}
