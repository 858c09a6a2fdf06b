/** Answers about what stands already: what else was measured on the tube, and a reading that was wrong. */
import { at } from '../maths/list.ts';
import { type Decision, refuse } from './decision.ts';
import { type Reading, readingsIn } from './log/events.ts';
import type { State } from './log/state.ts';
import type { Action } from './protocol/action.ts';
import type { RefusalFact } from './protocol/facts/index.ts';
import { noSuchNumber } from './reading/no-such-number.ts';
import { amendedEvent } from './reading/settle-doubt.ts';
import { takeReadings } from './reading/take.ts';
import { whyUnexpected } from './reading/unexpected.ts';

export function takeEvidence(state: State, action: Extract<Action, { do: 'evidence' }>): Decision {
	const bend = state.bends[action.bend - 1];
	if (!bend) return refuse({ code: 'no-such-bend', bend: action.bend, bends: state.bends.length });
	if (bend.seats === 0) return refuse({ code: 'not-set-yet', bend: action.bend });
	const isLength = action.kind !== 'rotation' && action.kind !== 'angle';
	const off = isLength ? offPiece(state, action.reading) : null;
	if (off) return refuse(off);
	const of = action.kind === 'leg' || action.kind === 'farEndToMark' ? 'length' : action.kind;
	const wrong = noSuchNumber(state, { of, value: action.reading });
	if (wrong !== null) return refuse(wrong);
	const reading: Reading = { of, value: action.reading, bend: action.bend, evidence: action.kind };
	return { events: takeReadings(state, [reading]) };
}

/** Why a distance cannot lie on the piece, or null. */
export function offPiece(state: State, value: number): RefusalFact | null {
	const { piece } = state;
	return value > 0 && value < piece ? null : { code: 'off-the-piece', value, piece };
}

export function takeAmendment(state: State, action: Extract<Action, { do: 'amend' }>): Decision {
	const entry = state.entries.find((e) => e.entry === action.entry);
	if (!entry) return refuse({ code: 'no-such-line', line: action.entry, lines: state.entries.length });
	if (entry.void) return refuse({ code: 'line-undone', line: action.entry });
	const readings = readingsIn(entry.events);
	const kinds = [...new Set(readings.map((reading) => reading.of))];
	if (kinds.length === 0) return refuse({ code: 'no-reading-there', line: action.entry, kinds });
	const of = action.of ?? (kinds.includes('loaded') ? 'loaded' : at(kinds, 0));
	if (!kinds.includes(of)) return refuse({ code: 'no-reading-there', line: action.entry, of, kinds });
	if (action.of === undefined && kinds.length > 1 && of !== 'loaded') {
		return refuse({ code: 'several-readings-there', line: action.entry, kinds });
	}
	const was = readings.find((reading) => reading.of === of);
	const reading = { ...was, of, value: action.reading, amends: action.entry };
	const why = noSuchNumber(state, reading);
	if (why !== null) return refuse(why);
	const doubted = whyUnexpected(stateBefore(state, action.entry), reading);
	if (doubted) return { events: [{ type: 'reading-doubted', reading, ...doubted, others: [], rest: [] }] };
	return { events: [amendedEvent(reading)] };
}

/** The state in which a record was answered. */
function stateBefore(state: State, entry: number): State {
	let before = state;
	while (before.entries.length >= entry && before.past) before = before.past;
	return before;
}
