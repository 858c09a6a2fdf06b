import type { KeptRow } from '../journal/kept-row.ts';
import { newsOf } from '../review/trend.ts';
import { openSettings } from '../settings/settings.ts';
import { shiftWords } from '../words/trend.ts';
import { countsIn } from './lessons-for.ts';
import { wallClock } from './wall-clock.ts';

/**
 * What is to be said at a start of benders that spring back otherwise than they used to, a sentence each; with a name, of that one alone. What is
 * forgotten does not count. `rows`: newest first.
 */
export function shiftNews(home: string, rows: readonly KeptRow[], bender: string | null = null): string[] {
	return newsOf(rows.filter(countsIn(openSettings(home))), bender).map((news) =>
		shiftWords(news.bender, news.shift, wallClock),
	);
}
