import type { Answered } from '../../../session/log/answered.ts';
import type { Reading } from '../../../session/log/events.ts';
import type { EvidenceKind } from '../../../session/protocol/kinds.ts';
import { EVIDENCE_KINDS, EVIDENCE_MEASURE } from '../../../session/protocol/measured-in.ts';
import { parseNumber } from '../../../units/parse.ts';
import { measureOf } from '../../../words/numbers.ts';
import { EVIDENCE } from '../../../words/readings.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { MEASURED, WHICH_BEND } from '../../../words/session/again.ts';
import { AMEND, EVIDENCE_PAGE, lineListed, lineTold, readingTold } from '../../../words/session/amend.ts';
import { line, wrapped } from '../../text/line.ts';
import type { SessionState, SessionStep } from '../session-state.ts';
import { answer, BACK, bendNumber, numberField, type PageView } from './page.ts';

/** The entries that hold a reading which counts, newest first. */
export function amendable({ history }: SessionState): Answered[] {
	return history.filter((entry) => !entry.void && entry.readings?.length !== 0).toReversed();
}

/** Which earlier entry was wrong. */
export function amendPage(state: SessionState): PageView {
	const entries = amendable(state);
	return {
		title: AMEND.title,
		prompt: {
			label: CHOICE,
			choices: entries.map((entry) => ({
				label: lineListed(entry, state.job),
				step: whichStep(entry),
			})),
			back: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

function whichStep(entry: Answered): SessionStep {
	const readings = entry.readings ?? [];
	if (readings.length > 1) return { step: 'page', page: { page: 'amendWhich', entry } };
	return { step: 'page', page: { page: 'amendValue', entry, reading: readings[0] ?? null } };
}

/** Which of an entry's readings. */
export function amendWhichPage(state: SessionState, entry: Answered): PageView {
	const choices = (entry.readings ?? []).map((reading) => ({
		label: readingTold(reading, state.job),
		step: { step: 'page' as const, page: { page: 'amendValue' as const, entry, reading } },
	}));
	return {
		title: AMEND.titleOf(entry.entry),
		prompt: {
			label: CHOICE,
			choices,
			back: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

/** The field in which a reading is corrected: what that changes is found out before it counts. */
export function amendField(state: SessionState, entry: Answered, reading: Reading | null) {
	const weigh = (value: number): SessionStep => ({ step: 'weigh', amending: { entry, reading, value, would: null } });
	if (reading === null) return { read: (text: string) => weigh(parseNumber(text)) };
	return numberField(measureOf(reading.of, state.job, reading.name), state.job, weigh);
}

/** What it really was. */
export function amendValuePage(state: SessionState, entry: Answered, reading: Reading | null): PageView {
	return {
		title: AMEND.titleOf(entry.entry),
		prompt: {
			label: AMEND.label,
			...amendField(state, entry, reading),
			back: BACK,
			empty: AMEND.empty,
		},
		body: (room) => [
			{ rank: 0, lines: wrapped(lineTold(entry, state.job), room.columns, 'strong', 2) },
			{ rank: 0, lines: reading === null ? [] : [line(readingTold(reading, state.job))] },
		],
	};
}

/** What kind of thing was measured besides what was asked. */
export function evidencePage(): PageView {
	return {
		title: EVIDENCE_PAGE.title,
		prompt: {
			label: CHOICE,
			choices: EVIDENCE_KINDS.map((kind) => ({
				label: EVIDENCE[kind],
				step: { step: 'page', page: { page: 'evidenceBend', kind } },
			})),
			back: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

/** At which bend. */
export function evidenceBendPage(kind: EvidenceKind, bends: number): PageView {
	return {
		title: EVIDENCE_PAGE.title,
		prompt: {
			label: EVIDENCE_PAGE.which(bends),
			read: (text) => ({ step: 'page', page: { page: 'evidenceValue', kind, bend: bendNumber(text, bends) } }),
			back: BACK,
			empty: WHICH_BEND.empty,
		},
		body: () => [{ rank: 0, lines: [line(EVIDENCE_PAGE.measured(kind))] }],
	};
}

/** How much. */
export function evidenceValuePage(state: SessionState, kind: EvidenceKind, bend: number): PageView {
	return {
		title: EVIDENCE_PAGE.title,
		prompt: {
			label: MEASURED.label,
			...numberField(EVIDENCE_MEASURE[kind], state.job, (reading) => answer({ do: 'evidence', kind, bend, reading })),
			back: BACK,
			empty: MEASURED.empty,
		},
		body: () => [{ rank: 0, lines: [line(EVIDENCE_PAGE.measuredAt(kind, bend))] }],
	};
}
