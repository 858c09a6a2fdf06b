import { bentAsBrief } from '../../../words/bent-as.ts';
import type { Choice } from '../../shell/prompt.ts';
import type { SessionRow } from '../home-port.ts';
import type { HomeState } from '../home-state.ts';
import type { HomeStep, HomeView } from '../home-view.ts';
import { CHOOSE, helpKeys, moreFrom, TO_HOME } from './usual.ts';

/** The sessions that are kept, each to be looked at. */
export function keptPage({ sessions }: HomeState): HomeView {
	return {
		title: 'Kept sessions',
		prompt: {
			label: 'Number of your choice',
			choices: sessions.map(keptChoice),
			star: moreFrom({ page: 'kept' }),
			back: TO_HOME,
			empty: CHOOSE,
		},
		...helpKeys({ page: 'kept' }),
		body: () => [],
	};
}

const STATUS = { open: 'interrupted', done: 'done', scrapped: 'scrapped', damaged: 'log damaged' } as const;

export function keptChoice(row: SessionRow): Choice<HomeStep> {
	const { job, status, started, bendsDone, bends, fits, mayFit } = row;
	const fit = fits === null ? '' : fits ? ', fits' : mayFit ? ', may fit' : ', does not fit';
	const where = row.imported ? ', imported' : '';
	const how = `${job}${bentAsBrief(row.bentAs)}: ${STATUS[status]}${fit}${where}`;
	return {
		label: `${started}  ${how}, ${bendsDone} of ${bends} bends`,
		brief: `${dayOf(started)} ${how}`,
		step: { step: 'review', id: row.id },
	};
}

export function dayOf(started: string): string {
	return started.slice(0, 10);
}
