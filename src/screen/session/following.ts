import type { Ask, SetAsk } from '../../session/protocol/asks.ts';
import type { Output, SessionNote, WarningsNote } from '../../session/protocol/notes.ts';
import { NOTHING } from '../shell/prompt.ts';
import { dieChangesIn, isCorrectionNews } from './news.ts';
import { ASK, oldNumbersPossible, type Page, type SessionState } from './session-state.ts';

/** What was shown in this sitting already, and is not shown again. */
export interface ShownAlready {
	cautions: boolean;
	/** Warnings as they were told. */
	warnings: readonly string[];
}

export const NOTHING_SHOWN: ShownAlready = { cautions: false, warnings: [] };

/** The warnings of a session as they are remembered. */
export const warningsIn = (outputs: readonly Output[]): WarningsNote | null =>
	outputs.find((output): output is WarningsNote => 'note' in output && output.note === 'warnings') ?? null;

/** The state after what the session put out: its notes become pages to be seen before the ask. */
export function afterOutputs(
	state: SessionState,
	outputs: readonly Output[],
	seen: ShownAlready = NOTHING_SHOWN,
): SessionState {
	const pages = outputs.flatMap((output) =>
		isToldAlready(state, outputs, output) ? [] : pagesOf(output, state, outputs, seen),
	);
	const sets = outputs.filter((output): output is SetAsk => 'ask' in output && output.ask === 'set');
	const [page = ASK, ...queue] = pages;
	const corrected = state.corrected || outputs.some((output) => 'note' in output && output.note === 'corrected');
	return { ...state, page, queue, set: sets.at(-1) ?? state.set, corrected, entry: NOTHING, details: {} };
}

/** A session that goes on tells its last correction again: that is news only while it can still be chosen. */
function isToldAlready({ ask }: SessionState, [first]: readonly Output[], output: Output): boolean {
	const again = first !== undefined && 'note' in first && first.note === 'session' && first.resumed;
	return again && 'note' in output && output.note === 'corrected' && !oldNumbersPossible(ask);
}

function startPageOf(note: SessionNote, warnings: WarningsNote | null, seen: ShownAlready): Page {
	const isNew = warnings !== null && !seen.warnings.includes(JSON.stringify(warnings));
	return { page: 'start', note, cautions: !seen.cautions, warnings: isNew ? warnings : null, layout: false };
}

/** The state with the tube laid out on its first page, which then is the only one that informs; null where no such two pages follow each other. */
export function joined(state: SessionState): SessionState | null {
	const { page, queue } = state;
	if (page.page !== 'start' || queue[0]?.page !== 'layout') return null;
	return { ...state, page: { ...page, layout: true }, queue: queue.slice(1) };
}

/** The straight tube is laid out before anything is bent. */
const LAYOUT: readonly Page[] = [{ page: 'layout' }];

function isFirst(ask: Ask | null): boolean {
	return ask?.ask === 'set' && ask.bend === 1 && ask.seat === 1;
}

function pagesOf(
	output: Output,
	{ ask, display, job }: SessionState,
	all: readonly Output[],
	seen: ShownAlready,
): Page[] {
	if ('ask' in output) return output.ask === 'set' ? dieChangesIn(output) : [];
	switch (output.note) {
		case 'session':
			return [startPageOf(output, warningsIn(all), seen), ...(display.checklist && isFirst(ask) ? LAYOUT : [])];
		case 'corrected':
			return isCorrectionNews(output, job, all) ? [{ page: 'corrected', note: output }] : [];
		case 'done':
			return [{ page: 'done', note: output }];
		case 'warnings':
		case 'refused':
			return [];
	}
}
