import { pieceBrief } from '../../../words/batch.ts';
import { bentAsBrief } from '../../../words/bent-as.ts';
import { fitWords, markWords, STATUS_WORDS } from '../../../words/session-list.ts';
import type { Choice } from '../../shell/prompt.ts';
import type { SessionRow } from '../home-port.ts';
import type { HomeStep } from '../home-view.ts';

/** A kept session, to be looked at. */
export function keptChoice(row: SessionRow): Choice<HomeStep> {
	const { job, status, started, bendsDone, bends } = row;
	const fit = fitWords(row);
	const how = `${job}${bentAsBrief(row.bentAs)}${pieceBrief(row)}: ${STATUS_WORDS[status]}${fit === '' ? '' : `, ${fit}`}${markWords(row)}`;
	return {
		label: `${started}  ${how}, ${bendsDone} of ${bends} bends`,
		brief: `${dayOf(started)} ${how}`,
		step: { step: 'review', id: row.id },
	};
}

export function dayOf(started: string): string {
	return started.slice(0, 10);
}
