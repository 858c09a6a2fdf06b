import { describe, expect, it } from 'vitest';
import { answerEvents } from '../../../src/session/answers.ts';
import { evolve, undoable } from '../../../src/session/log/fold.ts';
import { halfAnswerOf } from '../../../src/session/log/half-answer.ts';
import { nextEntry, type State } from '../../../src/session/log/state.ts';
import type { Action } from '../../../src/session/protocol/action.ts';
import { begin, give } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';

const pull = give(begin(hatJob()), { ready: true }).state;

function act(state: State, action: Action, note?: string): State {
	const decision = answerEvents({ action, ...(note === undefined ? {} : { note }) }, state);
	if ('refused' in decision) throw new Error(decision.refused.reason[0]!.code);
	return evolve(state, { entry: nextEntry(state), at: '2026-01-01T00:00:01.000Z', events: decision.events });
}

const held: Action = { do: 'draft', draft: { of: 'loaded', value: 18.5 } };

describe('a number in hand whose answer is not whole yet', () => {
	it('is kept, changes nothing that is asked or believed, and is nothing to undo', () => {
		const drafted = act(pull, held);
		expect(halfAnswerOf(drafted)).toEqual({ of: 'loaded', value: 18.5 });
		expect({ ...drafted, entries: pull.entries }).toEqual(pull);
		expect(undoable(drafted)).toBe(undoable(pull));
	});

	it('is there again after the session was left and gone on with, notes or none', () => {
		const left = evolve(act(pull, held), { entry: 4, at: '', events: [{ type: 'session-left' }] });
		const resumed = evolve(left, { entry: 5, at: '', events: [{ type: 'session-resumed' }] });
		const noted = evolve(resumed, { entry: 6, at: '', events: [{ type: 'note-written', text: 'hm' }] });
		expect(halfAnswerOf(noted)).toEqual({ of: 'loaded', value: 18.5 });
	});

	it('is over with the answer that it was the first half of, and with any other', () => {
		expect(halfAnswerOf(act(act(pull, held), { do: 'loaded', loaded: 18.5, released: 16 }))).toBeNull();
		expect(halfAnswerOf(act(act(pull, held), { do: 'undo' }))).toBeNull();
		expect(halfAnswerOf(act(act(pull, held), { do: 'reseat' }))).toBeNull();
	});

	it('is the last one where it was given anew', () => {
		const again = act(act(pull, held), { do: 'draft', draft: { of: 'loaded', value: 19 } });
		expect(halfAnswerOf(again)).toEqual({ of: 'loaded', value: 19 });
	});

	it('is refused where nothing of its kind is asked, or where no number can be that', () => {
		expect(() => act(begin(hatJob()).state, held)).toThrow('other-ask');
		expect(() => act(pull, { do: 'draft', draft: { of: 'greatest', value: 1.5 } })).toThrow('other-ask');
		expect(() => act(pull, { do: 'draft', draft: { of: 'loaded', value: -3 } })).toThrow('no-such-number');
	});
});
