import { describe, expect, it } from 'vitest';
import { takenAsItIs } from '../../../src/session/advice/what-if.ts';
import { tubeAtWork } from '../../../src/session/estimate/tube-at-work.ts';
import { correctedNumbers, predicted } from '../../../src/session/plan/correction.ts';
import type { DecideAsk } from '../../../src/session/protocol/asks.ts';
import type { DoneNote } from '../../../src/session/protocol/notes.ts';
import type { Job } from '../../../src/tube/job.ts';
import { bendAndSkip } from '../../helpers/session/bend-to.ts';
import { begin, give, open, type Run } from '../../helpers/session/session-run.ts';
import { whyOf } from '../../helpers/session/why.ts';
import { angleBetween, type PlainTube, walk } from '../../helpers/shop/contract-geometry.ts';
import { hatJob } from '../../helpers/shop/hat.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

/** Corners may lie where end and checks want them: what this file is about otherwise. */
const WIDE = { ...hatJob().tolerance, shape: 4 };
const wideHat = (parts: Partial<Job> = {}): Job => hatJob({ tolerance: WIDE, ...parts });

const decide = (run: Run): DecideAsk => open(run, 'decide');

/** Bends made to these angles and accepted, whatever is advised; then one more, down to its `decide`. */
function bent(job: Job, made: readonly number[]): Run {
	return made.reduce((run, angle, i) => bendAndSkip(i === 0 ? run : give(run, { do: 'accept' }), angle), begin(job));
}

/** The hat with its first bend's angle checked, which no later bend can mend. */
const checkedFoot = (tolerance: number, parts: Partial<Job> = {}): Job =>
	wideHat({ checks: [{ name: 'foot', kind: 'angle', between: [1, 2], tolerance }], ...parts });

describe('a bend slightly short', () => {
	it('is accepted without another pull where the bends left take it up', () => {
		const run = bent(wideHat(), [16.4]);
		const asked = decide(run);
		expect(asked.made.angle).toBeLessThan(asked.target - 0.5);
		expect(asked).toMatchObject({ advice: 'accept', accepted: { within: true } });
		expect(whyOf(asked)).toContain('needs no further pull');
		const accepted = give(run, { do: 'accept' });
		const [corrected] = accepted.outputs;
		expect(corrected).toMatchObject({ note: 'corrected', predicted: { checks: asked.accepted.checks } });
	});

	it('is then wanted as it is: the tube fits when the rest is made as corrected', () => {
		let run = give(bent(wideHat(), [16.4]), { do: 'accept' });
		run = give(bendAndSkip(run, open(run, 'set').target), { do: 'accept' });
		run = give(bendAndSkip(run, open(run, 'set').target), { do: 'accept' });
		const done = run.outputs.at(-1) as DoneNote;
		expect(done.bends[0]!.made).toBeLessThan(16.5);
		expect(Math.abs(done.bends[0]!.made! - done.bends[0]!.target)).toBeLessThan(0.5);
	});

	it('is wanted as before when it is gone back to for more pull, and lies within its tolerance there', () => {
		const run = give(bent(wideHat(), [16.4]), { do: 'accept' });
		const back = give(run, { reopen: { bend: 1, do: 'pull' } });
		expect(open(back, 'set')).toMatchObject({ bend: 1, seat: 2, target: 17, design: 17 });
		const pulled = bendAndSkip(back, 17);
		expect(decide(pulled).advice).toBe('accept');
		const accepted = give(pulled, { do: 'accept' });
		expect(open(accepted, 'set')).toMatchObject({ bend: 2, seat: 1 });
		expect(accepted.state.bends[0]!).toMatchObject({ target: 17, shortOf: null });
	});

	it('is pulled again where a corner or a check cannot be mended, and where nothing follows it', () => {
		expect(decide(bent(hatJob(), [15.6])).advice).toBe('pull');
		expect(decide(bent(plainJob({ tooling: { growth: 1 } }), [89.2])).advice).toBe('pull');
		expect(decide(bent(checkedFoot(0.25), [16.4])).advice).toBe('pull');
	});
});

describe('a bend that went too far', () => {
	it('is taken as it is where the tube still fits with it: opening is the last resort', () => {
		const run = bent(wideHat(), [18.4]);
		const asked = decide(run);
		expect(asked).toMatchObject({ advice: 'accept', accepted: { within: true } });
		expect(asked).not.toHaveProperty('open');
		expect(whyOf(asked)).toMatch(
			/^Take it\. It is 1\.\d° over, but need not be opened: the bends left take it up\. The far end is [\d/ ]+ in from its place/,
		);
		const accepted = give(run, { do: 'accept' });
		expect(accepted.state.bends[0]!).toMatchObject({ target: asked.made.angle, shortOf: null });
	});

	it('is not where that leaves a corner further from its place than the tolerance of shape', () => {
		const asked = decide(bent(hatJob(), [19.2]));
		expect(asked).toMatchObject({ advice: 'relieve', accepted: { within: false } });
		const { shape, left } = asked.accepted;
		expect(shape.off).toBeGreaterThan(hatJob().tolerance.shape);
		expect(left).toBeGreaterThanOrEqual(shape.off / hatJob().tolerance.shape - 1e-9);
	});

	it('may be taken as it is from a piece without trim, where the bends left go a shorter way round', () => {
		for (const first of [18, 18.5, 19]) {
			const run = bent(wideHat(), [first]);
			expect(decide(run).accepted.within).toBe(true);
			const taken = takenAsItIs(run.state);
			// No leg ends further before its place than twice the tolerance of a length.
			expect(tubeAtWork(taken, correctedNumbers(taken)).trimEnd).toBeGreaterThan(-1 / 8);
		}
	});

	it('is not opened where even that would not make the tube fit', () => {
		const asked = decide(bent(checkedFoot(0.1), [13, 36.5]));
		expect(asked).toMatchObject({ accepted: { within: false } });
		expect(asked.made.angle).toBeGreaterThan(asked.target + 0.5);
		expect(asked.advice).not.toBe('relieve');
		expect(asked).not.toHaveProperty('open');
	});

	it('is measured once more before it is opened, where one reading is all that says so', () => {
		let run = give(give(bent(wideHat(), [17, 34]), { do: 'accept' }), { ready: true });
		run = give(give(run, { loaded: open(run, 'pull').stop + 2.5 }), { keep: true });
		const { angle } = open(run, 'measure').expect;
		while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
		run = give(run, { angle });
		const asked = decide(run);
		expect(asked).toMatchObject({ advice: 'measure', of: { kind: 'angle', bend: 3 } });
		expect(whyOf(asked)).toContain('Measure bend 3 again: never open a bend on one reading.');
		expect(asked).not.toHaveProperty('open');
		expect(asked.reason.map(({ code }) => code)).not.toContain('open-by');
		const again = decide(give(run, { angle }));
		expect(again).toMatchObject({ advice: 'relieve', to: again.target });
		expect(again.made.angle - again.open!).toBeCloseTo(again.to!, 9);
	});

	it('is opened again where a little was not enough, three times at most', () => {
		let run = give(give(bent(wideHat(), [17, 34]), { do: 'accept' }), { ready: true });
		run = give(give(run, { loaded: open(run, 'pull').stop + 4 }), { keep: true });
		const { angle } = open(run, 'measure').expect;
		const read = (now: number) => {
			run = give(run, { angle: now });
			while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
			if (decide(run).advice === 'measure') run = give(run, { angle: now });
			return decide(run);
		};
		for (const opened of [0, 0.8, 1.6]) {
			const again = read(angle - opened);
			expect(again, `opened by ${opened}`).toMatchObject({ advice: 'relieve', to: again.target });
			run = give(run, { do: 'relieve' });
		}
		const last = read(angle - 2.4);
		expect(last.advice).toBe('accept');
		expect(whyOf(last)).toContain('It was opened already.');
	});

	it('is not opened where it is over by less than three times its tolerance, and what it would take is said', () => {
		const asked = decide(bent(hatJob(), [17.7]));
		expect(asked.made.angle - asked.target).toBeGreaterThan(hatJob().tolerance.over);
		expect(asked).toMatchObject({ advice: 'accept', accepted: { within: false } });
		expect(asked).not.toHaveProperty('open');
		expect(whyOf(asked)).toMatch(
			/Take it, or open it to 17° if the tube has to fit: that is the last resort\. As it is, the tube does not fit\..*[Tt]he corner of bend \d is .* off.*Made/s,
		);
	});

	it('is not opened for a corner alone, unless it is plainly over: ends and checks are met with it as it is', () => {
		for (const over of [0.9, 1.2]) {
			const run = bent(hatJob(), [17 + over]);
			const asked = decide(run);
			const { checks, shape } = asked.accepted;
			expect(asked, `${over} over`).toMatchObject({ advice: 'accept', accepted: { within: false } });
			expect(shape.off).toBeGreaterThan(2.5 * hatJob().tolerance.shape);
			expect(checks).toHaveLength(2);
			for (const [i, { value }] of checks.entries()) {
				expect(Math.abs(value - run.state.design.checks[i]!.design)).toBeLessThan(1 / 16);
			}
			expect(whyOf(asked)).toMatch(/Take it, or open it .* The corner of bend 2 is .* off \(1\/4 in allowed\)\./);
		}
	});

	it('is never to be opened where the job does not allow it', () => {
		const asked = decide(bent({ ...hatJob(), mayOpen: false }, [18.4]));
		expect(asked).toMatchObject({ advice: 'accept', accepted: { within: false } });
		expect(whyOf(asked)).toContain('The job does not allow a bend to be opened.');
		const after = decide(bent({ ...checkedFoot(0.45), mayOpen: false }, [15.8, 32.8]));
		expect(after.tweaks.map(({ do: how }) => how)).toEqual(['pull']);
	});

	it('is to be opened where they cannot take it up, or none is left', () => {
		const cases: [Job, number[]][] = [
			[checkedFoot(0.25), [18.8]],
			[wideHat(), [17, 39]],
			[wideHat(), [17, 34, 18.8]],
		];
		for (const [job, made] of cases) {
			const asked = decide(bent(job, made));
			expect(asked.advice).toBe('relieve');
			expect(whyOf(asked)).toMatch(/Open it by .*As it is, the tube does not fit\. The .* \(.* allowed\)/);
		}
	});
});

describe('a made bend that would save the tube', () => {
	it('is advised to be gone back to, once, where it came out short', () => {
		const run = bent(checkedFoot(0.45), [15.8, 32.8]);
		const asked = decide(run);
		expect(asked).toMatchObject({ advice: 'reopen', of: 1, how: 'pull', accepted: { within: false } });
		expect(whyOf(asked)).toMatch(/° more in bend 1: chance to fit about \d in 10 instead of less than 1 in 10\./);
		expect(asked.tweaks[0]).toMatchObject({ bend: 1, do: 'pull', within: true, expect: { sd: 0.35 } });
		expect(asked.tweaks[0]!.chance).toBeGreaterThanOrEqual(0.5);
		// What it is wanted to become is the angle that saves the tube.
		const set = open(give(run, { reopen: { bend: 1, do: 'pull' } }), 'set');
		expect(set).toMatchObject({ bend: 1, seat: 2, target: asked.tweaks[0]!.expect.angle });
		// Gone back to and accepted as it is again: the session does not go round in a circle.
		const back = bendAndSkip(give(run, { reopen: { bend: 1, do: 'pull' } }), 15.8);
		const again = give(back, { do: 'accept' });
		expect(again.outputs.at(-1)).toMatchObject({ ask: 'decide', bend: 2 });
		expect(decide(again).advice).not.toBe('reopen');
	});

	it('is not advised again where that was declined: what it would do is still told', () => {
		const list = [
			[16, 17, 0],
			[20, 34, 180],
			[20, 30, 180],
			[20, 13, 180],
		] as const;
		const advised = bent(checkedFoot(0.45, { shape: byBends(list, 18) }), [15.9, 33.2]);
		expect(decide(advised)).toMatchObject({ advice: 'reopen', of: 1 });
		const declined = give(advised, { do: 'accept' });
		const third = bendAndSkip(declined, open(declined, 'set').target);
		expect(decide(third)).toMatchObject({ advice: 'accept', accepted: { within: false } });
		const [tweak] = decide(third).tweaks;
		expect(tweak).toMatchObject({ bend: 1, do: 'pull', within: true });
		expect(whyOf(decide(third))).toMatch(/the foot is 1\.\d° low \(0\.5° allowed\)/i);
		expect(whyOf(decide(third))).toContain(
			`Ends and checks could still be met by going back to bend 1 and pulling it by ${tweak!.by}°.`,
		);
		// What bend 1 alone decides, bend 2 cannot mend, wherever it lands.
		const second = decide(third).tweaks.filter(({ bend }) => bend === 2);
		expect(second.map(({ chance, within }) => [chance, within])).toEqual([
			[0, false],
			[0, false],
		]);
		// The decline taken back, the advice is there again.
		let back = third;
		while (back.state.bend === 3) back = give(back, { undo: true });
		expect(decide(back)).toMatchObject({ advice: 'reopen', of: 1 });
	});

	it('is by what going back brings, not by how much is missed: a set-up costs more than a little', () => {
		// A tenth of its tolerance outside, and no further: as likely as not it is inside.
		const near = decide(bent(checkedFoot(0.95), [16, 33.6]));
		expect(near.accepted.left).toBeGreaterThan(1);
		expect(near.accepted.left).toBeLessThan(1.1);
		expect(near).toMatchObject({ advice: 'reopen', of: 1 });
		const gain = near.reason.find(({ code }) => code === 'reopen-would') as { before: number; chance: number };
		expect(gain.chance - gain.before).toBeGreaterThanOrEqual(0.1);
		// Another check is missed that bend 1 does not move.
		const both = checkedFoot(0.45);
		const hopeless = {
			...both,
			checks: [...both.checks, { ...both.checks[0]!, name: 'top', between: [2, 3] as const }],
		};
		const asked = decide(bent(hopeless as Job, [15.8, 32]));
		expect(asked).toMatchObject({ accepted: { within: false } });
		expect(asked.advice).not.toBe('reopen');
	});

	it('is pulled at the risk of the job when it is gone back to as advised', () => {
		const run = bent(checkedFoot(0.45), [15.8, 33.4]);
		expect(decide(run).advice).toBe('reopen');
		const back = give(give(run, { reopen: { bend: 1, do: 'pull' } }), { ready: true });
		expect(open(back, 'pull').risk).toBeLessThan(3 * hatJob().risk);
	});

	it('is not where the tube fits without: then there is nothing to weigh', () => {
		expect(decide(bent(wideHat(), [16.9, 33.8]))).toMatchObject({ advice: 'accept', tweaks: [] });
	});

	it('is not where clamp, follow, dial or floor stand in the way', () => {
		const tooling = (changes: Partial<Job['tooling']>) => ({ tooling: { ...hatJob().tooling, ...changes } });
		const found = (parts: Partial<Job>) => decide(bent(checkedFoot(0.45, parts), [16.4, 32.8])).tweaks;
		expect(found({}).map(({ do: how }) => how)).toEqual(['pull', 'relieve']);
		expect(found(tooling({ clamp: 16.5 }))).toEqual([]);
		expect(found(tooling({ follow: 20.5 }))).toEqual([]);
		// Lying in the plane the tube comes half its diameter below it.
		expect(found(tooling({ floor: 0.7 }))).toEqual([]);
		expect(found(tooling({ floor: 0.8 }))).toHaveLength(2);
	});

	it('is told with every check and the end, best first', () => {
		const { tweaks } = decide(bent(checkedFoot(0.3), [16.1, 32.8]));
		expect(tweaks).toHaveLength(2);
		for (const { checks, endOffset, endAngle, by } of tweaks) {
			expect(checks.map(({ name }) => name)).toEqual(['foot']);
			expect([endOffset, endAngle, by].every((value) => Number.isFinite(value) && value >= 0)).toBe(true);
		}
		expect(tweaks[0]!.left).toBeLessThan(tweaks[1]!.left);
		const [best] = tweaks;
		const { made } = bent(checkedFoot(0.3), [16.1, 32.8]).state.bends[0]!;
		expect(best!.checks[0]!.value).toBeCloseTo(made!.angle + best!.by, 9);
	});
});

describe('what a tweak foretells', () => {
	it('is where a tube walked anew from its numbers ends, nothing being left to correct', () => {
		const run = bent(checkedFoot(0.25), [16.1, 32.8, 16.1]);
		const { tweaks } = decide(run);
		expect(tweaks.length).toBeGreaterThan(1);
		const taken = takenAsItIs(run.state);
		for (const { bend, by, do: how, endOffset, endAngle } of tweaks) {
			const angles = taken.bends.map((b, i) => b.made!.angle + (i + 1 === bend ? (how === 'pull' ? by : -by) : 0));
			const marks = taken.bends.map((b) => b.mark!);
			const radius = 6;
			const arcs = angles.map((angle) => (radius * angle * Math.PI) / 180);
			const tube: PlainTube = {
				od: 1.5,
				radius,
				stretch: 0,
				markOffset: 0,
				trim: { start: 0, end: 0 },
				bends: angles.map((angle, i) => ({
					straight: i === 0 ? 16 : marks[i]! - marks[i - 1]! - arcs[i - 1]!,
					angle,
					rotation: i === 0 ? 0 : 180,
				})),
				last: 0,
			};
			const drawn = walk({
				...tube,
				bends: [16, 20, 20].map((straight, i) => ({ straight, angle: [17, 34, 17][i]!, rotation: i === 0 ? 0 : 180 })),
				last: 18,
			});
			const made = walk(tube);
			const goal = drawn.corners.at(-1)!;
			const direction = made.directions.at(-1)!;
			// Cut where the last leg comes nearest to the designed end.
			const from = goal.map((x, i) => x - made.corners.at(-1)![i]!);
			const along = from.reduce((sum, x, i) => sum + x * direction[i]!, 0);
			const off = Math.hypot(...from.map((x, i) => x - along * direction[i]!));
			expect(endOffset).toBeCloseTo(off, 6);
			expect(endAngle).toBeCloseTo(angleBetween(direction, drawn.directions.at(-1)!), 6);
		}
	});

	it('of accepting is what the correction then says', () => {
		const run = bent(wideHat(), [16.8]);
		const taken = takenAsItIs(run.state);
		const { endOffset, endAngle, shape, checks } = decide(run).accepted;
		expect({ endOffset, endAngle, shape, checks }).toEqual(predicted(taken, correctedNumbers(taken)));
	});
});

describe('a tube that nothing makes fit', () => {
	it('is told with the best that it can still become, while that is near the drawing', () => {
		const asked = decide(bent(checkedFoot(0.1, { tooling: { ...hatJob().tooling, clamp: 16.5 } }), [16.6, 33]));
		expect(asked).toMatchObject({ advice: 'accept', tweaks: [] });
		expect(asked.rescue?.best).toMatchObject({ do: 'accept', bend: 2, within: false });
		expect(whyOf(asked)).toMatch(
			/As it is, the tube does not fit\..*[Tt]he foot is 0\.\d+° (low|high) \(0\.1° allowed\)/,
		);
		// The advice says that already.
		expect(whyOf(asked)).not.toMatch(/take this bend|bend as it is/i);
	});

	it('is told what taking the bend comes to, and no other way that brings it hardly closer', () => {
		const asked = decide(bent(hatJob({ checks: [], trim: { start: 1, end: 1 } }), [16, 32.6, 16.1]));
		const { accepted, rescue } = asked;
		expect(asked.advice).toBe('accept');
		expect(rescue!.best.do).toBe('reopen');
		expect(rescue!.best.left).toBeLessThan(accepted.left);
		expect(rescue!.best.left).toBeGreaterThan(0.75 * accepted.left);
		expect(asked.reason).toContainEqual(
			expect.objectContaining({ code: 'still-missed', endOffset: accepted.endOffset, endAngle: accepted.endAngle }),
		);
		expect(whyOf(asked)).not.toContain('closest');
	});

	it('is told how to come to that best, where accepting does not', () => {
		const first = give(bent(checkedFoot(0.1), [13]), { do: 'accept' });
		const asked = decide(bendAndSkip(first, open(first, 'set').target));
		expect(asked).toMatchObject({ advice: 'accept', rescue: { best: { do: 'reopen', bend: 1, within: false } } });
		const [tweak] = asked.tweaks;
		expect(asked.rescue!.best.left).toBe(tweak!.left);
		expect(tweak!.left).toBeLessThan(asked.accepted.left);
		expect(whyOf(asked)).toContain(`It would come closest by going back to bend 1 and pulling it by ${tweak!.by}°.`);
	});

	it('is given up where a plane came out square to the drawing, and what is straight can be used again', () => {
		let run = bent(wideHat(), [17, 34]);
		run = give(give(run, { evidence: { kind: 'rotation', bend: 2, reading: 90 } }), { keep: true });
		const asked = decide(run);
		expect(asked.advice).toBe('scrap');
		const { straights, behind, again } = asked.rescue!.stock;
		const { piece, bends } = run.state;
		// Marks and arcs leave this much: 6 in of radius round 17 and 34 degrees.
		const arc = (angle: number) => (6 * angle * Math.PI) / 180;
		expect(straights[0]).toBeCloseTo(16, 9);
		expect(straights[1]).toBeCloseTo(bends[1]!.mark! - 16 - arc(bends[0]!.made!.angle), 1);
		expect(behind).toBeCloseTo(piece - bends[1]!.mark! - arc(asked.made.angle), 1);
		expect(straights).toHaveLength(3);
		expect(again).toBe(false);
		expect(whyOf(asked)).toContain('in behind the last bend');
	});

	it('may be begun anew from what lies behind where that is long enough', () => {
		const job = plainJob({
			shape: byBends(
				[
					[4, 20, 0],
					[4, 20, 90],
				],
				4,
			),
			tooling: { growth: 1 },
		});
		let run = give(begin(job), { ready: true, length: 60 });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
		run = give(run, { loaded: 40 });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
		run = give(run, { angles: [33, 33] });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
		const asked = decide(run);
		expect(asked.advice).toBe('scrap');
		// Thirteen degrees too far: what cannot be worked back is not told to be mended by working it back.
		expect(asked.rescue!.best.do).toBe('accept');
		expect(whyOf(asked)).toContain('too far to work back');
		expect(whyOf(asked)).not.toContain('opened to its target');
		expect(asked.rescue!.stock.again).toBe(true);
		expect(whyOf(asked)).toContain('enough to start the whole tube over');
	});
});
