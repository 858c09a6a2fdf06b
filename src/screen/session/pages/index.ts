import { OVER } from '../../../words/session/done.ts';
import type { Page, SessionState } from '../session-state.ts';
import {
	amendPage,
	amendValuePage,
	amendWhichPage,
	evidenceBendPage,
	evidencePage,
	evidenceValuePage,
} from './amend.ts';
import { checkPage, leastPage } from './ask-check.ts';
import { decidePage, whyPage } from './ask-decide.ts';
import { confirmPage, measurePage } from './ask-measure.ts';
import { pullPage, releasedPage } from './ask-pull.ts';
import { setPage } from './ask-set.ts';
import { batchPage } from './batch.ts';
import { changeDiePage } from './change-die.ts';
import { correctedPage } from './corrected.ts';
import { cutsPage, donePage } from './done.ts';
import { helpPage } from './help.ts';
import { layOutPage } from './lay-out.ts';
import { againPage, measureAgainPage } from './measure-again.ts';
import { detailPage, morePage, undoPage } from './more.ts';
import type { PageView } from './page.ts';
import { reliefPage, reopenHowPage, reopenPage } from './reopen.ts';
import { shownPage, topicsPage } from './shown.ts';
import { atStartPage, startPage } from './start.ts';
import { heatPage, rescuePage, scrapPage, textPage } from './text.ts';
import { amendSurePage, walkPage } from './walk.ts';
import { whatIfPage } from './what-if.ts';

/** What a session's page shows and what it takes from the keyboard. */
export function viewOf(state: SessionState): PageView {
	return pageView(state, state.page);
}

function pageView(state: SessionState, of: Page): PageView {
	switch (of.page) {
		case 'ask':
			return askPage(state);
		case 'start':
			return startPage(state, of);
		case 'atStart':
			return atStartPage(state, of.from);
		case 'changeDie':
			return changeDiePage(state, of.change);
		case 'layout':
			return layOutPage(state);
		case 'help':
			return helpPage(state, of.from);
		case 'shown':
			return shownPage(state, of.from);
		case 'topics':
			return topicsPage(of.from);
		case 'corrected':
			return correctedPage(state, of.note);
		case 'done':
			return donePage(state, of.note);
		case 'cuts':
			return cutsPage(state, of.note);
		case 'batch':
			return batchPage(state, of.note);
		case 'released':
			return state.ask?.ask === 'pull' ? releasedPage(state, state.ask, of.loaded) : askPage(state);
		case 'least':
			return leastPage(state, of.greatest);
		case 'measureAgain':
			return measureAgainPage(state);
		case 'again':
			return againPage(state, of.of);
		case 'whatIf':
			return whatIfPage(state);
		case 'why':
			return whyPage(state);
		case 'more':
			return morePage(state);
		case 'undo':
			return undoPage(state);
		case 'detail':
			return detailPage(state, of.of);
		case 'text':
			if (of.purpose === 'heat') return heatPage(state, of.from);
			return of.purpose === 'rescue' ? rescuePage() : textPage(of.purpose);
		case 'scrap':
			return scrapPage(of.why);
		default:
			return pageBesides(state, of);
	}
}

type Besides = Extract<Page, { page: 'walk' | `amend${string}` | `evidence${string}` | `reopen${string}` | 'relief' }>;

function pageBesides(state: SessionState, of: Besides): PageView {
	const bends = bendsOf(state);
	switch (of.page) {
		case 'walk':
			return walkPage(state, of);
		case 'amendSure':
			return amendSurePage(state, of.amending);
		case 'amend':
			return amendPage(state);
		case 'amendWhich':
			return amendWhichPage(state, of.entry);
		case 'amendValue':
			return amendValuePage(state, of.entry, of.reading);
		case 'evidence':
			return evidencePage();
		case 'evidenceBend':
			return evidenceBendPage(of.kind, bends);
		case 'evidenceValue':
			return evidenceValuePage(state, of.kind, of.bend);
		case 'reopen':
			return reopenPage(state);
		case 'reopenHow':
			return reopenHowPage(state, of.bend);
		case 'relief':
			return reliefPage(of.bend, of.answer, of.open);
	}
}

/** How many bends the job has: corners between a shape's points, its ends left out. */
export function bendsOf({ job }: SessionState): number {
	return job.shape.kind === 'bends' ? job.shape.bends.length : job.shape.points.length - 2;
}

function askPage(state: SessionState): PageView {
	const { ask } = state;
	switch (ask?.ask) {
		case 'set':
			return setPage(state, ask);
		case 'pull':
			return pullPage(state, ask);
		case 'measure':
			return measurePage(state, ask);
		case 'confirm':
			return confirmPage(state, ask);
		case 'check':
			return checkPage(state, ask);
		case 'decide':
			return decidePage(state, ask);
		case undefined:
			return overPage();
	}
}

/** A session with nothing left to ask, opened only to be looked at. */
function overPage(): PageView {
	return {
		title: OVER.title,
		prompt: { label: '', plus: { label: OVER.plus, step: { step: 'leave' } }, empty: OVER.empty },
		body: () => [],
	};
}
