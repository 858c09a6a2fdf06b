import type { Answered } from '../../../session/log/answered.ts';
import type { Reading } from '../../../session/log/events.ts';
import type { EvidenceKind } from '../../../session/protocol/kinds.ts';
import { EVIDENCE_MEASURE } from '../../../session/protocol/measured-in.ts';
import { parseNumber } from '../../../units/parse.ts';
import { answeredWords, listedWords } from '../../../words/answered.ts';
import { measureOf, shown } from '../../../words/numbers.ts';
import { EVIDENCE, readingName } from '../../../words/readings.ts';
import { CHOICE, CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import { line, wrapped } from '../../text/line.ts';
import type { SessionState, Step } from '../session-state.ts';
import { answer, BACK, bendNumber, numberField, type PageView } from './page.ts';

/** The entries that hold a reading which counts, newest first. */
export function amendable({ history }: SessionState): Answered[] {
	return history.filter((entry) => !entry.void && entry.readings?.length !== 0).toReversed();
}

/** Which earlier entry was wrong. */
export function amendPage(state: SessionState): PageView {
	const entries = amendable(state);
	return {
		title: 'Correct an earlier reading',
		prompt: {
			label: CHOICE,
			choices: entries.map((entry) => ({
				label: `line ${entry.entry}: ${listedWords(entry, state.job)}`,
				step: whichStep(entry),
			})),
			back: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

function whichStep(entry: Answered): Step {
	const readings = entry.readings ?? [];
	if (readings.length > 1) return { step: 'page', page: { page: 'amendWhich', entry } };
	return { step: 'page', page: { page: 'amendValue', entry, reading: readings[0] ?? null } };
}

/** Which of an entry's readings. */
export function amendWhichPage(state: SessionState, entry: Answered): PageView {
	const choices = (entry.readings ?? []).map((reading) => ({
		label: described(state, reading),
		step: { step: 'page' as const, page: { page: 'amendValue' as const, entry, reading } },
	}));
	return {
		title: `Correct line ${entry.entry}`,
		prompt: {
			label: CHOICE,
			choices,
			back: BACK,
			empty: CHOOSE_OR_BACK,
		},
		body: () => [],
	};
}

function described(state: SessionState, reading: Reading): string {
	const { of, value, name } = reading;
	return `${readingName(reading)}: ${shown(value, measureOf(of, state.job, name), state.job)}`;
}

/** The field in which a reading is corrected: what that changes is found out before it counts. */
export function amendField(state: SessionState, entry: Answered, reading: Reading | null) {
	const weigh = (value: number): Step => ({ step: 'weigh', amending: { entry, reading, value, would: null } });
	if (reading === null) return { read: (text: string) => weigh(parseNumber(text)) };
	return numberField(measureOf(reading.of, state.job, reading.name), state.job, weigh);
}

/** What it really was. */
export function amendValuePage(state: SessionState, entry: Answered, reading: Reading | null): PageView {
	return {
		title: `Correct line ${entry.entry}`,
		prompt: {
			label: 'What it really was',
			...amendField(state, entry, reading),
			back: BACK,
			empty: 'Write the right number and press Enter; / goes back.',
		},
		body: (room) => [
			{
				rank: 0,
				lines: wrapped(`Line ${entry.entry}: ${answeredWords(entry, state.job)}`, room.columns, 'strong', 2),
			},
			{ rank: 0, lines: reading === null ? [] : [line(described(state, reading))] },
		],
	};
}

const KINDS = Object.keys(EVIDENCE) as EvidenceKind[];

/** What kind of thing was measured besides what was asked. */
export function evidencePage(): PageView {
	return {
		title: 'Something else was measured',
		prompt: {
			label: CHOICE,
			choices: KINDS.map((kind) => ({
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
		title: 'Something else was measured',
		prompt: {
			label: `At which bend, 1 to ${bends}`,
			read: (text) => ({ step: 'page', page: { page: 'evidenceValue', kind, bend: bendNumber(text, bends) } }),
			back: BACK,
			empty: "Write the bend's number and press Enter; / goes back.",
		},
		body: () => [{ rank: 0, lines: [line(`Measured: ${EVIDENCE[kind]}`)] }],
	};
}

/** How much. */
export function evidenceValuePage(state: SessionState, kind: EvidenceKind, bend: number): PageView {
	return {
		title: 'Something else was measured',
		prompt: {
			label: 'What does it measure?',
			...numberField(EVIDENCE_MEASURE[kind], state.job, (reading) => answer({ do: 'evidence', kind, bend, reading })),
			back: BACK,
			empty: 'Write what it measures and press Enter; / goes back.',
		},
		body: () => [{ rank: 0, lines: [line(`Bend ${bend}, measured: ${EVIDENCE[kind]}`)] }],
	};
}
