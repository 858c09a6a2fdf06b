import { sessionsOfJob } from '../journal/find.ts';
import type { KeptRow } from '../journal/kept-row.ts';
import { clamp } from '../maths/scalar.ts';
import { bendersOf, isNamed } from '../review/by-bender.ts';
import { MEASURES, type MeasureChart, type Trend, trendOf } from '../review/trend.ts';
import { type ChartPoint, LEAST_BASE } from '../review/trend-chart.ts';
import { NEWS } from '../review/trend-runs.ts';
import { openSettings } from '../settings/settings.ts';
import { table } from '../terminal/table.ts';
import { angle } from '../words/numbers.ts';
import {
	DEPARTURE_SAYS,
	fewWords,
	jobsOf,
	limitsWords,
	MEASURE_WORDS,
	noTrendWords,
	RULE_WORDS,
	sessionCells,
	shiftLines,
	type TrendOf,
	trendTitle,
} from '../words/trend.ts';
import { type Io, print, printJson } from './io.ts';
import { countsIn } from './lessons-for.ts';
import { pageLines } from './page-lines.ts';
import { UsageError } from './usage-error.ts';
import { wallClock } from './wall-clock.ts';

export interface TrendRequest {
	/** A bender, a job or a job file; null: the bender of the newest session. */
	name: string | null;
	json: boolean;
	home: string;
}

/**
 * `pullbook log --trend`: springback, error and first pulls over the sessions of a job or a bender, with control limits. What is forgotten of a
 * bender does not count. `rows`: newest first.
 * @throws UsageError where no kept session is of that name
 */
export function runTrend({ name, json, home }: TrendRequest, rows: readonly KeptRow[], io: Io): number {
	const { of, sessions } = meant(name, rows);
	const trend = trendOf(sessions.filter(countsIn(openSettings(home))));
	if (json) printJson(io, trendDocument(of, trend));
	else print(io, trendText(of, trend));
	return 0;
}

function meant(name: string | null, rows: readonly KeptRow[]): { of: TrendOf; sessions: readonly KeptRow[] } {
	const bender = name ?? rows.find(({ job }) => job !== null)?.job?.bender;
	const bent = bender === undefined ? [] : rows.filter((row) => isNamed(row, bender));
	const [newest] = bent;
	if (newest?.job) return { of: { bender: newest.job.bender }, sessions: bent };
	const found = new Set(name === null ? [] : sessionsOfJob(rows, name, name).map(({ id }) => id));
	const sessions = rows.filter(({ id }) => found.has(id));
	const job = sessions[0]?.job?.name;
	if (job !== undefined) return { of: { job }, sessions };
	throw new UsageError(noTrendWords(name ?? '', bendersOf(rows), jobsOf(rows)));
}

/** The document of `--json`: every session since what is usual began, degrees unrounded, times in UTC. */
export function trendDocument(of: TrendOf, { count, springback, charts, shift }: Trend): object {
	const document = ({ usual, sessions, chart }: MeasureChart) => {
		if (chart === null) return { usual, limits: null, points: [] };
		const { points, ...limits } = chart;
		return { usual, limits, points: points.map((point, i) => ({ ...sessions[i]!, ...point })) };
	};
	return {
		of,
		sessions: count,
		springbackIs: springback,
		charts: Object.fromEntries(MEASURES.map((measure) => [measure, document(charts[measure])])),
		shift: shift && { ...shift, isNews: shift.ago < NEWS },
	};
}

/** So many of the newest sessions are printed. */
const NEWEST_PRINTED = 20;

function trendText(of: TrendOf, trend: Trend): string {
	const { shift, charts, springback } = trend;
	const isNews = shift !== null && shift.ago < NEWS;
	return [
		trendTitle(of, trend),
		'',
		...shiftLines(shift, of, isNews, wallClock).flatMap((line) => pageLines(line)),
		...MEASURES.flatMap((measure) => {
			const { name, says } = MEASURE_WORDS[measure];
			const about = measure === 'springback' && springback === 'departure' ? DEPARTURE_SAYS : says;
			return ['', ...pageLines(`${name}: ${about}`), ...chartLines(charts[measure])];
		}),
	].join('\n');
}

function chartLines({ usual, sessions, chart }: MeasureChart): string[] {
	if (chart === null) return pageLines(fewWords(usual, LEAST_BASE), '  ');
	const from = Math.max(0, chart.points.length - NEWEST_PRINTED);
	const rows = chart.points.slice(from).map((point, i) => {
		const [day, job] = sessionCells(sessions[from + i]!, wallClock);
		return [
			day,
			angle(point.value),
			trendStrip(point, chart),
			job,
			point.rules.map((rule) => RULE_WORDS[rule]).join(', '),
		];
	});
	const limits = limitsWords(chart);
	return [...pageLines(limits, '  '), ...table(rows, [0, 2, 3, 4])];
}

/** Cells of a strip from limit to limit. */
const STRIP = 21;

/** Where a value lies between the limits, as a line of characters: the limits, the center, the value; beyond a limit it stands outside. */
function trendStrip({ value }: ChartPoint, { low, high }: { low: number; high: number }): string {
	const part = high > low ? (value - low) / (high - low) : 0.5;
	const cell = clamp(Math.round(part * (STRIP - 1)), -1, STRIP);
	const line = [' ', '|', ...' '.repeat(STRIP - 2), '|', ' '];
	line[1 + (STRIP - 1) / 2] = ':';
	line[1 + cell] = 'o';
	return line.join('');
}
