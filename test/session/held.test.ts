import { describe, expect, it } from 'vitest';
import type { PullAsk, SetAsk } from '../../src/session/protocol/asks.ts';
import type { Output } from '../../src/session/protocol/notes.ts';
import { begin, give, giveAll, open, type Run } from '../helpers/session/session-run.ts';
import { operatorAt } from '../helpers/shop/operator.ts';
import { plainJob } from '../helpers/shop/plain-job.ts';
import { newMachine } from '../helpers/shop/plain-shop.ts';

const asked = (run: Run) => run.outputs.at(-1) as Output & { ask?: string };
const codes = ({ reason }: { reason: readonly { code: string }[] }) => reason.map(({ code }) => code);
const FLAT = { tooling: { growth: 1 } };

/** One bend, held at the stop and measured this short of what is wanted, at `decide`. */
function short(by: number, tooling = {}): { run: Run; held: number } {
	const pulled = give(begin(plainJob({ tooling: { growth: 1, ...tooling } })), {
		ready: true,
	});
	const held = open(pulled, 'pull').stop;
	const { target } = open(pulled, 'pull');
	let run = give(pulled, { loaded: held });
	run = give(run, { angles: [target - by, target - by] });
	while (asked(run).ask === 'confirm') run = give(run, { keep: true });
	return { run, held };
}

describe('a stop is beyond what was held at the same bend', () => {
	it('in every seat of whole simulated bends, unless the dial was told to have moved', () => {
		let pulls = 0;
		for (let seed = 0; seed < 12; seed++) {
			const machine = newMachine(7100 + seed);
			const operator = operatorAt(machine);
			let run = begin(plainJob(FLAT));
			let moved = false;
			for (let i = 0; i < 80 && asked(run).ask !== undefined; i++) {
				const ask = asked(run) as SetAsk | PullAsk;
				const answer = operator.answer(ask) as Record<string, number>;
				// Every other operator looks at the dial.
				if (ask.ask === 'set' && ask.seat > 1 && seed % 2 === 0) answer.pointer = machine.pointer();
				if (ask.ask === 'set') moved = Math.abs((answer.pointer ?? ask.pointer) - ask.pointer) >= 0.25;
				if (ask.ask === 'pull') {
					const held = Math.max(0, ...run.state.bends[0]!.pulls.map(({ loaded }) => loaded));
					if (ask.stop <= held && !ask.limit) {
						expect(moved).toBe(true);
						expect(codes(ask)).toContain('dial-moved');
					}
					pulls += Number(held > 0);
				}
				run = give(run, answer);
			}
		}
		expect(pulls).toBeGreaterThan(10);
	});

	it('by at least a division in a fresh seat of which nothing is told', () => {
		for (const by of [0.7, 1, 3]) {
			const { run, held } = short(by);
			const again = giveAll(run, { do: 'pull' }, { ready: true });
			expect(open(again, 'pull').stop).toBeGreaterThan(held);
			expect(codes(open(again, 'pull'))).not.toContain('dial-moved');
		}
	});

	it('says so where the dial was told to stand lower, by which the same stop goes further', () => {
		const { run, held } = short(0.8);
		const set = give(run, { do: 'pull' });
		let again = give(set, {
			ready: true,
			pointer: open(set, 'set').pointer - 1.5,
		});
		while (asked(again).ask === 'confirm') again = give(again, { keep: true });
		const pull = open(again, 'pull');
		expect(pull.stop).toBeLessThanOrEqual(held);
		expect(pull.reason).toContainEqual({
			code: 'dial-moved',
			held,
			by: expect.closeTo(-1.5, 9),
		});
	});

	it('lies past where a snug dial was told and confirmed to stand, and a tube springs back by what it did before', () => {
		const { run } = short(2.5);
		const set = give(run, { do: 'pull' });
		const expected = open(set, 'set').pointer;
		const springback = (ask: PullAsk) =>
			ask.reason.flatMap((fact) => (fact.code === 'springback-expected' ? [fact.by] : []))[0];
		const usual = springback(open(give(set, { ready: true }), 'pull')) ?? 0;
		for (const off of [-13, -8, 8, 10, 15]) {
			const told = give(set, { ready: true, pointer: expected + off });
			expect(asked(told).ask, `${off} off`).toBe('confirm');
			const pull = open(give(told, { keep: true }), 'pull');
			expect(pull.stop, `${off} off`).toBeGreaterThan(expected + off);
			expect(springback(pull), `${off} off`).toBeGreaterThan(usual - 2.5);
			expect(springback(pull), `${off} off`).toBeLessThan(usual + 2.5);
			expect(pull.risk, `${off} off`).toBeLessThan(0.5);
			const said = off > 0 ? [{ code: 'dial-far-off', by: expect.closeTo(off, 9) }] : [];
			expect(
				pull.reason.filter(({ code }) => code === 'dial-far-off'),
				`${off} off`,
			).toEqual(said);
		}
	});

	it("at the machine's largest angle is that angle, and says so", () => {
		const { run, held } = short(3, { maxAngle: 86 });
		const again = giveAll(run, { do: 'pull' }, { ready: true });
		expect(open(again, 'pull')).toMatchObject({ stop: held, limit: true });
		expect(codes(open(again, 'pull'))).toContain('stop-capped');
	});

	it('says so after the bend was opened', () => {
		const { run, held } = short(-2);
		const opened = giveAll(run, { do: 'relieve' }, { angles: [85, 85] });
		const again = giveAll(
			opened,
			...(asked(opened).ask === 'confirm' ? [{ keep: true }] : []),
			{ do: 'pull' },
			{ ready: true },
		);
		const pull = open(again, 'pull');
		expect(pull.stop > held || codes(pull).includes('opened-since')).toBe(true);
	});
});

describe('a tube that never left the die', () => {
	it('goes on in its seat: the same seat and dial, and a stop beyond the last', () => {
		const { run, held } = short(3);
		const set = give(run, { do: 'pull' });
		expect(open(set, 'set')).toMatchObject({ seat: 2, still: true });
		const before = run.state.filter;
		const pull = give(set, { still: true });
		expect(open(pull, 'pull').stop).toBeGreaterThan(held);
		expect(pull.state.bends[0]!.seats).toBe(1);
		expect(pull.state.filter).toEqual(before);
	});

	it('can be taken back', () => {
		const set = give(short(3).run, { do: 'pull' });
		const back = giveAll(set, { still: true }, { undo: true });
		expect(open(back, 'set')).toEqual({
			...open(set, 'set'),
			entry: expect.any(Number),
		});
	});

	it.each([
		['at the first set-up', 'never-set', () => begin(plainJob(FLAT))],
		[
			'where it was said to be out',
			'taken-out',
			() => giveAll(begin(plainJob(FLAT)), { ready: true }, { reseat: true }),
		],
		['at the limit', 'limit', () => give(short(3, { maxAngle: 86 }).run, { do: 'pull' })],
		[
			'after opening',
			'opened',
			() => {
				const measured = giveAll(short(-2).run, { do: 'relieve' }, { angles: [86, 86] });
				return giveAll(measured, ...(asked(measured).ask === 'confirm' ? [{ keep: true }] : []), { do: 'pull' });
			},
		],
	])('is refused %s', (_, since, made) => {
		const run = made();
		expect(open(run, 'set').still).toBeUndefined();
		const refused = give(run, { still: true });
		expect(refused.outputs[0]).toMatchObject({
			note: 'refused',
			code: 'not-possible',
			reason: [{ code: 'not-still', since }],
		});
		expect(refused.state).toBe(run.state);
	});
});
