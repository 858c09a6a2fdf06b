import type { ComparedBend, ComparedSession, Comparison } from '../review/compare.ts';
import { mayFit } from '../session/report/verdict.ts';
import type { SessionView } from '../session/report/views.ts';
import { trimmed } from '../units/format.ts';
import { inTen } from './chance.ts';
import { checkValueWords } from './doubt.ts';
import { foreignName } from './foreign.ts';
import { localMinute, type WallClock } from './local-time.ts';
import { angle, angleGiveOrTake, dial, fine, tape } from './numbers.ts';
import { markWords, STATUS_WORDS } from './session-list.ts';

/** A row of the comparison: what it is of, and the older and the newer session. */
export type CompareRow = [what: string, older: string, newer: string];

const NOT_THERE = '-';

/** Head, bends, checks and the finished tube, a table each. */
export function compareTables({ sessions }: Comparison, clock: WallClock): CompareRow[][] {
	const views = sessions.map(({ view }) => view);
	const row = <T>(what: string, of: readonly T[], cell: (each: T) => string): CompareRow => [
		what,
		...(of.map(cell) as [string, string]),
	];
	const bends = Math.max(...sessions.map((session) => session.bends.length));
	return [
		[
			row('', views, ({ id }) => foreignName(id)),
			row('begun', views, ({ started }) => localMinute(started, clock)),
			row('came to', views, (view) => `${STATUS_WORDS[view.status]}${markWords(view)}`),
			row('bender', views, ({ job }) => foreignName(job.tooling.bender)),
			row('die', views, ({ job }) => foreignName(job.tooling.die)),
			row('heat', views, ({ heat }) => (heat === undefined ? NOT_THERE : foreignName(heat))),
		],
		...Array.from({ length: bends }, (_, i) => [
			row(`Bend ${i + 1}`, views, () => ''),
			...BEND_ROWS.map(([what, cell]) => row(what, sessions, (session) => bendCell(session, i, cell))),
		]),
		...(views.every(({ checks }) => checks.length === 0) ? [] : [checkRows(views, row)]),
		[
			row('The tube', views, () => ''),
			row('far end off', views, (view) => unlessOpen(view, fine(view.asBuilt.endOffset, view.job))),
			row('its direction off', views, (view) => unlessOpen(view, angle(view.asBuilt.endAngle))),
			row('fits', views, fitCell),
		],
	];
}

const orNone = <T>(value: T | null, words: (value: T) => string): string => (value === null ? NOT_THERE : words(value));

const BEND_ROWS: readonly [what: string, cell: (bend: ComparedBend, view: SessionView) => string][] = [
	['wanted', ({ target }) => angle(target)],
	['mark', ({ mark }, { job }) => orNone(mark, (value) => tape(value, job))],
	['first stop', ({ stop }) => orNone(stop, dial)],
	['held at', ({ held }) => orNone(held, dial)],
	['springback', ({ springback }) => orNone(springback, angle)],
	['pulls', ({ pulls }) => String(pulls)],
	['set-ups', ({ setUps }) => String(setUps)],
	['made', ({ made }) => orNone(made, angleGiveOrTake)],
];

function bendCell({ view, bends }: ComparedSession, i: number, cell: (typeof BEND_ROWS)[number][1]): string {
	const bend = bends[i];
	return bend === undefined ? NOT_THERE : cell(bend, view);
}

type RowOf = (what: string, of: readonly SessionView[], cell: (view: SessionView) => string) => CompareRow;

function checkRows(views: readonly SessionView[], row: RowOf): CompareRow[] {
	const names = [...new Set(views.flatMap(({ checks }) => checks.map(({ name }) => name)))];
	return [
		row('Checks', views, () => ''),
		...names.map((name) => row(foreignName(name), views, (view) => checkCell(view, name))),
	];
}

function checkCell({ checks, job }: SessionView, name: string): string {
	const reading = checks.find((check) => check.name === name)?.reading ?? null;
	const kind = job.checks.find((check) => check.name === name)?.kind;
	if (reading === null) return NOT_THERE;
	return kind === undefined ? trimmed(reading, 3) : checkValueWords(reading, kind, job);
}

const unlessOpen = ({ status }: SessionView, words: string): string => (status === 'done' ? words : NOT_THERE);

function fitCell(view: SessionView): string {
	const { fits, chance } = view.asBuilt;
	if (view.status !== 'done' || fits === null) return NOT_THERE;
	const word = fits ? 'fits' : mayFit(fits, chance) ? 'may fit' : 'does not fit';
	return chance === null ? word : `${word}: ${inTen(chance)}`;
}

/** Two sessions that are not of one job. */
export function twoJobsWords(a: SessionView, b: SessionView): string {
	const jobs = `"${foreignName(a.job.name)}" and "${foreignName(b.job.name)}"`;
	return `These sessions are of two jobs, ${jobs}. Give two of one job: pullbook log --find "${foreignName(a.job.name)}" lists them.`;
}

/** What of the job is not the same in both; null where all of it is. */
export function changedWords({ changed }: Comparison): string | null {
	if (changed.length === 0) return null;
	const shown = changed.slice(0, 6).join(', ');
	const more = changed.length > 6 ? ` and ${changed.length - 6} more` : '';
	return `The job was changed between them: ${shown}${more}.`;
}

export const twoSessionsOf = (job: string): string => `${foreignName(job)}: two sessions`;
