import { FITS, type WantedSessions } from '../review/session-table.ts';
import { LOG_USAGE } from '../words/usage/log.ts';
import type { CommandLine } from './command.ts';
import { optionWord } from './quantity.ts';
import { UsageError } from './usage-error.ts';

/** What of `log` is asked for. */
export interface LogRequest {
	id: string | null;
	/** A second session, to be laid beside the first. */
	other?: string | null;
	json: boolean;
	csv?: boolean;
	/** Whose trend is wanted; null: that of the newest session's bender. Absent: no trend. */
	trend?: string | null;
	wanted?: WantedSessions | null;
	/** A folder in which sessions went on that the home may not know of. */
	rescue?: string | null;
	home: string;
}

const FILTERS = ['find', 'since', 'bender', 'fits'];

/** @throws UsageError where options do not go together, or a value is none */
export function logRequest({ operands, options }: CommandLine): Omit<LogRequest, 'home'> {
	const [id = null, other = null] = operands;
	const [json, csv] = [options.json === true, options.csv === true];
	const filters = FILTERS.filter((name) => options[name] !== undefined).map((name) => `--${name}`);
	if (json && csv) throw new UsageError(LOG_USAGE.twoForms);
	const rescue = typeof options.rescue === 'string' ? options.rescue : null;
	if (options.trend !== undefined) {
		if (csv || filters.length > 0 || other !== null || (id !== null && options.trend !== true))
			throw new UsageError(LOG_USAGE.trend);
		return { id: null, json, rescue, trend: options.trend === true ? id : options.trend! };
	}
	if (id !== null && filters.length > 0) throw new UsageError(LOG_USAGE.narrowed(filters, id));
	if (other !== null && csv) throw new UsageError(LOG_USAGE.twoSessions);
	return { id, other, json, csv, rescue, wanted: filters.length > 0 ? wantedIn(options) : null };
}

function wantedIn(options: CommandLine['options']): WantedSessions {
	const { since, fits } = options;
	if (fits !== undefined && fits !== FITS.yes && fits !== FITS.no) throw new UsageError(LOG_USAGE.fits(String(fits)));
	return {
		by: { bender: optionWord(options, 'bender') ?? undefined, fits },
		...(since !== undefined && { since: firstDayOf(String(since)) }),
		words: optionWord(options, 'find') ?? '',
	};
}

/** The first day of a year or month, or that day, as `2026-10-01`. */
function firstDayOf(date: string): string {
	const [, year, month = '1', day = '1'] = /^(\d{4})(?:-(\d{1,2}))?(?:-(\d{1,2}))?$/.exec(date) ?? [];
	const at = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
	// The 31st of a short month would be taken for the 1st of the next.
	if (year === undefined || at.getUTCMonth() !== Number(month) - 1 || at.getUTCDate() !== Number(day))
		throw new UsageError(LOG_USAGE.since(date));
	return at.toISOString().slice(0, 10);
}
