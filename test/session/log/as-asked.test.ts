import { describe, expect, it } from 'vitest';
import type { AskedSet } from '../../../src/session/log/asked.ts';
import { evolve, initial } from '../../../src/session/log/fold.ts';
import type { Entry, State } from '../../../src/session/log/state.ts';
import { correctedNumbers, differ } from '../../../src/session/plan/correction.ts';
import { begin, give, giveAll, open, type Run } from '../../helpers/session/session-run.ts';
import { hatJob } from '../../helpers/shop/hat.ts';

/** The hat with its first bend a degree short and taken, at the second one's pull. */
function atSecondPull(): Run {
	const set = give(begin(hatJob()), { ready: true });
	const short = open(set, 'pull').target - 1;
	let run = give(set, { loaded: open(set, 'pull').stop });
	run = give(run, { angles: [short, short] });
	if ((run.outputs.at(-1) as { ask?: string }).ask === 'confirm') run = give(run, { keep: true });
	run = giveAll(run, { do: 'accept' }, { ready: true });
	expect(open(run, 'pull').bend).toBe(2);
	return run;
}

const RUN = atSecondPull();

/** The same log, had another version asked for the second bend's set-up otherwise. */
function foldedHad(change: Partial<AskedSet>, entries: readonly Entry[] = RUN.state.entries): State {
	const asked = (entry: Entry): Entry['asked'] =>
		entry.asked?.ask === 'set' && entry.asked.bend === 2 ? { ...entry.asked, ...change } : entry.asked;
	return entries.map((entry) => ({ ...entry, asked: asked(entry) })).reduce(evolve, initial(RUN.state.start));
}

const SET = RUN.state.entries.at(-1)!.asked as AskedSet;
const OTHERWISE = { mark: { ...SET.mark, fromStart: SET.mark.fromStart + 0.3 }, rotation: 170 };

describe('a mark that a log has as it was set', () => {
	it('lies where it was asked for then, and the tube is turned as it was asked for, whatever this version would ask', () => {
		expect(foldedHad({}).bends[1]).toMatchObject({ mark: SET.mark.fromStart, rotation: SET.rotation });
		expect(foldedHad(OTHERWISE).bends[1]).toMatchObject({ mark: OTHERWISE.mark.fromStart, rotation: 170 });
		expect(foldedHad(OTHERWISE).bends[0]).toEqual(foldedHad({}).bends[0]);
	});

	it('is asked for so again once its set-up is undone', () => {
		const past = foldedHad(OTHERWISE).past!;
		expect(past.bends[1]!.mark).toBeNull();
		expect(past.plan.current[1]).toMatchObject({ fromStart: OTHERWISE.mark.fromStart, rotation: 170 });
	});

	it('stays there when the tube is set in again', () => {
		const again = giveAll(RUN, { reseat: true }, { ready: true });
		const entries = again.state.entries;
		expect(entries.at(-1)!.asked).toMatchObject({ ask: 'set', seat: 2 });
		const last = entries.length - 1;
		const asked = (entry: Entry, i: number) => (i === last ? { ...SET, ...OTHERWISE } : entry.asked);
		const state = entries
			.map((entry, i) => ({ ...entry, asked: asked(entry, i) }))
			.reduce(evolve, initial(RUN.state.start));
		expect(state.bends[1]).toMatchObject({ mark: SET.mark.fromStart, rotation: SET.rotation, seats: 2 });
		expect(state.plan).toEqual(again.state.plan);
	});

	it('is no other bend than the one at work', () => {
		for (const bend of [1, 3, 9]) {
			const state = foldedHad({ ...OTHERWISE, bend });
			expect(state.bends).toEqual(foldedHad({}).bends);
			expect(state.plan).toEqual(foldedHad({}).plan);
		}
	});
});

describe('an earlier reading that is corrected once a mark is set', () => {
	const read = (entry: Entry) =>
		entry.events.some((event) => event.type === 'reading-taken' && event.reading.of === 'angle');

	it.each([-0.4, 0.4, 0.6])('leaves the mark where it was set (%f degrees more)', (by) => {
		const { entry } = RUN.state.entries.find(read)!;
		const amended = give(RUN, { amend: { entry, reading: RUN.state.bends[0]!.made!.angle + by, of: 'angle' } });
		expect(amended.outputs[0]).toMatchObject({ note: 'corrected' });
		expect(amended.state.bends[1]!.mark).toBe(SET.mark.fromStart);
		expect(amended.state.plan.current[1]!.fromStart).toBeCloseTo(SET.mark.fromStart, 9);
	});

	it.each([-0.4, 0.4, 0.6])('corrects the bends left for the mark where it lies (%f degrees more)', (by) => {
		const { entry } = RUN.state.entries.find(read)!;
		const amended = give(RUN, { amend: { entry, reading: RUN.state.bends[0]!.made!.angle + by, of: 'angle' } });
		expect(differ(amended.state.plan.current, correctedNumbers(amended.state))).toBe(false);
	});
});
