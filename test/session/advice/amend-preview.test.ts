import { describe, expect, it } from 'vitest';
import { type AmendPreview, amendPreview } from '../../../src/session/advice/amend-preview.ts';
import type { Action } from '../../../src/session/protocol/action.ts';
import { begin, give, giveAll, open, type Run } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';

/** The hat with its first bend accepted as it was read, at the second one's pull. */
function atSecondPull(angle: number): Run {
	let run = give(begin(hatJob()), { ready: true });
	run = give(run, { loaded: open(run, 'pull').stop });
	run = give(run, { angles: [angle, angle] });
	if ((run.outputs.at(-1) as { ask?: string }).ask === 'confirm') run = give(run, { keep: true });
	run = giveAll(run, { do: 'accept' }, { ready: true });
	expect(open(run, 'pull').bend).toBe(2);
	return run;
}

/** Number of the entry that holds the angle of bend 1. */
function angleEntry({ state }: Run): number {
	const holds = (entry: (typeof state.entries)[number]) =>
		entry.events.some(
			({ type, ...event }) => type === 'reading-taken' && 'reading' in event && event.reading.of === 'angle',
		);
	return state.entries.find(holds)!.entry;
}

const act = (run: Run, action: Action): AmendPreview => amendPreview({ action }, run.state);

describe('what an answer would change', () => {
	const run = atSecondPull(open(begin(hatJob()), 'set').target - 1);

	it('is told of a corrected angle: the bend, and the numbers of those to come', () => {
		const entry = angleEntry(run);
		const was = run.state.bends[0]!.made!.angle;
		const would = act(run, { do: 'amend', entry, reading: was + 0.6, of: 'angle' });
		expect(would.refused).toBeNull();
		expect(would.made.map(({ bend }) => bend)).toEqual([1]);
		expect(would.made[0]!.angle.before).toBeCloseTo(was, 9);
		expect(would.made[0]!.angle.after).toBeGreaterThan(was);
		expect(would.plan.length).toBeGreaterThan(0);
	});

	it('is what then really happens, and leaves the state as it was', () => {
		const entry = angleEntry(run);
		const before = JSON.stringify(run.state);
		const reading = run.state.bends[0]!.made!.angle + 0.4;
		const would = act(run, { do: 'amend', entry, reading, of: 'angle' });
		expect(JSON.stringify(run.state)).toBe(before);
		const after = give(run, { amend: { entry, reading, of: 'angle' } });
		expect(after.state.bends[0]!.made!.angle).toBe(would.made[0]!.angle.after);
		for (const { bend, mark } of would.plan) {
			expect(after.state.plan.current[bend - 1]!.fromStart).toBe(mark.after);
		}
	});

	it('is a question more where the reading would be doubted', () => {
		const reading = run.state.bends[0]!.made!.angle + 5;
		const would = act(run, { do: 'amend', entry: angleEntry(run), reading, of: 'angle' });
		expect(would.doubted?.length).toBeGreaterThan(0);
	});

	it('is a refusal where it would be refused', () => {
		expect(act(run, { do: 'amend', entry: 9999, reading: 10 }).refused).toEqual([
			{ code: 'no-such-line', line: 9999, lines: run.state.entries.length },
		]);
	});

	it('is nothing for a note', () => {
		const nothing = { refused: null, doubted: null, made: [], plan: [], stop: null, next: null };
		expect(amendPreview({ action: null, note: 'clamp checked' }, run.state)).toEqual(nothing);
	});

	it('is another question where one follows', () => {
		const { next } = act(run, { do: 'loaded', loaded: open(run, 'pull').stop });
		expect(next?.ask).not.toBe('pull');
		expect(next).not.toBeNull();
	});
});
