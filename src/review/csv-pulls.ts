/** One session's pulls as rows of a table for other programs. */
import type { PullView } from '../session/report/set-ups.ts';
import type { SessionView } from '../session/report/views.ts';
import type { CsvColumn } from './csv-list.ts';

/** One pull, the bend it is of, and the session. */
export interface PullRow {
	view: SessionView;
	/** Counted from 1, as pulls are: those taken back count too. */
	bend: number;
	count: number;
	pull: PullView;
}

export function pullRows(view: SessionView): PullRow[] {
	return view.bends.flatMap(({ pulls }, i) => pulls.map((pull, n) => ({ view, bend: i + 1, count: n + 1, pull })));
}

const bendOfRow = ({ view, bend }: PullRow) => view.bends[bend - 1]!;

/** In their order, which stays: new ones come last. Angles in degrees, the mark in `units`; of several readings each, blanks between. */
export const PULL_COLUMNS: readonly CsvColumn<PullRow>[] = [
	['session', ({ view }) => view.id],
	['job', ({ view }) => view.job.name],
	['units', ({ view }) => view.job.units],
	['bend', ({ bend }) => bend],
	['design', (row) => bendOfRow(row).design],
	['target', (row) => bendOfRow(row).target],
	['pull', ({ count }) => count],
	['line', ({ pull }) => pull.entry],
	['set_up', ({ pull }) => pull.seat],
	['mark', ({ pull }) => pull.mark?.fromStart ?? null],
	['turn', ({ pull }) => pull.turn?.degrees ?? null],
	['turn_way', ({ pull }) => pull.turn?.way ?? null],
	['pointer', ({ pull }) => pull.pointer],
	['stop', ({ pull }) => pull.stop],
	['held', ({ pull }) => pull.loaded],
	['released', ({ pull }) => pull.released],
	['measured', ({ pull }) => pull.measured.join(' ')],
	['taken_back', ({ pull }) => pull.void],
	['made', (row) => bendOfRow(row).made?.angle ?? null],
	['made_sd', (row) => bendOfRow(row).made?.sd ?? null],
];
