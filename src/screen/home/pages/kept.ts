import { pieceBrief } from '../../../words/batch.ts';
import { bentAsBrief } from '../../../words/bent-as.ts';
import type { Choice } from '../../shell/prompt.ts';
import type { SessionRow } from '../home-port.ts';
import type { HomeStep } from '../home-view.ts';

export const STATUS = { open: 'interrupted', done: 'done', scrapped: 'scrapped', damaged: 'log damaged' } as const;

/** A kept session, to be looked at. */
export function keptChoice(row: SessionRow): Choice<HomeStep> {
	const { job, status, started, bendsDone, bends, fits, mayFit } = row;
	const fit = fits === null ? '' : fits ? ', fits' : mayFit ? ', may fit' : ', does not fit';
	const where = row.imported ? ', imported' : '';
	const how = `${job}${bentAsBrief(row.bentAs)}${pieceBrief(row)}: ${STATUS[status]}${fit}${where}`;
	return {
		label: `${started}  ${how}, ${bendsDone} of ${bends} bends`,
		brief: `${dayOf(started)} ${how}`,
		step: { step: 'review', id: row.id },
	};
}

export function dayOf(started: string): string {
	return started.slice(0, 10);
}
