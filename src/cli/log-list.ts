import { type KeptRow, summaryOf } from '../journal/kept-row.ts';
import { bendersOf, isNamed } from '../review/by-bender.ts';
import { narrowed, type WantedSessions } from '../review/session-table.ts';
import { listText } from '../words/session-list.ts';
import { NOTHING_FOUND, noBenderWords } from '../words/trend.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { tellProblems } from './reading-logs.ts';
import { sessionRows } from './session-rows.ts';
import { UsageError } from './usage-error.ts';

export interface ListRequest {
	/** Null: all. */
	wanted: WantedSessions | null;
	form: 'text' | 'json' | 'csv';
}

/**
 * The kept sessions, or those wanted. Exit code 0, also where none is; 6 where the log of one of them is damaged.
 * @throws UsageError where no session is of the bender asked for
 */
export async function runList(all: readonly KeptRow[], { wanted, form }: ListRequest, io: Io): Promise<number> {
	const bender = wanted?.by.bender;
	if (bender !== undefined && !all.some((row) => isNamed(row, bender)))
		throw new UsageError(noBenderWords(bender, bendersOf(all)));
	const rows =
		wanted === null ? all : narrowed(sessionRows(all), wanted, ({ searched }) => searched).map(({ kept }) => kept);
	if (form === 'text') print(io, rows.length === 0 && all.length > 0 ? NOTHING_FOUND : listText(rows));
	else {
		if (form === 'json')
			printJson(
				io,
				rows.flatMap((row) => {
					const summary = summaryOf(row);
					return summary === null ? [] : [{ ...summary, ...(row.isImported && { imported: true }) }];
				}),
			);
		else {
			const [{ csvText }, { LIST_COLUMNS }] = await Promise.all([import('./csv.ts'), import('../review/csv-list.ts')]);
			io.stdout.write(csvText(LIST_COLUMNS, rows));
		}
		tellProblems(rows, tellOn(io));
	}
	return rows.some(({ isDamaged }) => isDamaged) ? EXIT.damaged : 0;
}
