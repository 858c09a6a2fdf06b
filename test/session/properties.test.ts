import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ask } from '../../src/session/ask.ts';
import { answered } from '../../src/session/log/answered.ts';
import { evolve, initial, undoable } from '../../src/session/log/fold.ts';
import type { State } from '../../src/session/log/state.ts';
import { doneNote } from '../../src/session/outputs.ts';
import { sessionView } from '../../src/session/report/views.ts';
import { sample } from '../helpers/sample-size.ts';
import { randomAnswer } from '../helpers/session/random-answers.ts';
import { begin, give, type Run } from '../helpers/session/session-run.ts';
import { hatJob } from '../helpers/shop/hat.ts';

const steps = fc.array(fc.tuple(fc.nat(200), fc.double({ min: 0, max: 0.999, noNaN: true })), {
	minLength: 1,
	maxLength: 60,
});
const RUNS = { numRuns: sample(25, 120) };

function walk(
	list: readonly (readonly [number, number])[],
	each: (before: Run, after: Run, answer: unknown) => void,
): Run {
	let run = begin(hatJob());
	for (const [choice, size] of list) {
		const open = ask(run.state);
		if (!open) break;
		const answer = randomAnswer(open, choice, size);
		const next = give(run, answer);
		each(run, next, answer);
		run = next;
	}
	return run;
}

/** What a shell can see of a state, but for the number of the next record, which only grows. */
function seen(state: State) {
	const open = ask(state);
	return { open: open && { ...open, entry: 0 }, done: doneNote(state, ''), plan: state.plan.current };
}

describe('any session', () => {
	it('folds: every state is the fold of its records, read back from JSON', () => {
		fc.assert(
			fc.property(steps, (list) => {
				const run = walk(list, () => {});
				const records = JSON.parse(JSON.stringify(run.state.entries)) as typeof run.state.entries;
				const folded = records.reduce(evolve, initial(run.state.start));
				expect(seen(folded)).toEqual(seen(run.state));
				expect(folded.entries).toEqual(run.state.entries);
			}),
			RUNS,
		);
	});

	it('has finite numbers in every ask and view', () => {
		fc.assert(
			fc.property(steps, (list) => {
				walk(list, (_, { state, outputs }) => {
					const text = JSON.stringify([outputs, sessionView(state), answered(state)], (_key, value) => {
						if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`not finite: ${value}`);
						return value;
					});
					expect(text.length).toBeGreaterThan(0);
				});
			}),
			RUNS,
		);
	});

	it('undo of anything leaves the state as before it', () => {
		fc.assert(
			fc.property(steps, (list) => {
				walk(list, (before, after) => {
					const newest = undoable(after.state);
					if (newest !== after.state.entries.length || after.state === before.state) return;
					const undone = give(after, { undo: true });
					expect(seen(undone.state)).toEqual(seen(before.state));
				});
			}),
			RUNS,
		);
	});

	it('can be undone to its beginning', () => {
		fc.assert(
			fc.property(steps, (list) => {
				let run = walk(list, () => {});
				while (undoable(run.state) !== null) run = give(run, { undo: true });
				expect(seen(run.state)).toEqual(seen(begin(hatJob()).state));
			}),
			RUNS,
		);
	});

	it('loses no answer: each one taken is a record, each one refused leaves the very same state', () => {
		fc.assert(
			fc.property(steps, (list) => {
				walk(list, (before, after) => {
					const [first] = after.outputs;
					const refused = first !== undefined && 'note' in first && first.note === 'refused';
					expect(after.state.entries.length - before.state.entries.length).toBe(refused ? 0 : 1);
					if (refused) expect(after.state).toBe(before.state);
				});
			}),
			RUNS,
		);
	});

	it('never asks for a stop beyond the machine, and every rotation lies in (-180, 180]', () => {
		fc.assert(
			fc.property(steps, (list) => {
				walk(list, (_, { state }) => {
					const open = ask(state);
					if (open?.ask === 'pull') expect(open.stop).toBeLessThanOrEqual(state.start.job.tooling.maxAngle);
					if (open?.ask === 'set') {
						expect(open.rotation).toBeGreaterThan(-180);
						expect(open.rotation).toBeLessThanOrEqual(180);
					}
				});
			}),
			RUNS,
		);
	});
});
