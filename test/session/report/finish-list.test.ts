import { describe, expect, it } from 'vitest';
import type { DoneNote } from '../../../src/session/protocol/notes.ts';
import { cutOffWords, finishWords } from '../../../src/words/finish.ts';
import { bendAndSkip, bendTo } from '../../helpers/session/bend-to.ts';
import { begin, give, open, type Run } from '../../helpers/session/session-run.ts';
import { byBends, plainJob } from '../../helpers/shop/plain-job.ts';

const job = plainJob({
	shape: byBends([[15, 90, 0]], 20),
	trim: { start: 1, end: 1.5 },
	tooling: { growth: 1 },
	checks: [
		{ name: 'elbow', kind: 'angle', between: [1, 2], tolerance: 0.5 },
		{ name: 'over all', kind: 'span', from: { end: 'start' }, to: { end: 'far' }, tolerance: 0.0625 },
	],
});
const done = (run: Run): DoneNote => run.outputs.at(-1) as DoneNote;

describe('a finished tube', () => {
	it('is told where both ends are cut, from the end of the nearest arc and from its corner', () => {
		const note = done(give(bendAndSkip(begin(job), 90), { do: 'accept' }));
		const { made } = note.bends[0]!;
		const [start, far] = note.cuts;
		// The mark was where the layout has it: 1 in off, 15 in of leg; the corner lies 6 tan(45 degrees) = 6 in further.
		expect(start).toMatchObject({ end: 'start', bend: 1, off: expect.closeTo(1, 6), fromTangent: 15 });
		expect(start!.fromCorner).toBeCloseTo(15 + 6 * Math.tan(((made! / 2) * Math.PI) / 180), 9);
		expect(far).toMatchObject({ end: 'far', bend: 1, off: note.trim!.end });
		// Both cut, what is left is the piece less the arc: 15 + 20 and what the angle makes of the far leg.
		const arc = (6 * made! * Math.PI) / 180;
		expect(start!.off + start!.fromTangent + arc + far!.fromTangent + far!.off).toBeCloseTo(
			1 + 15 + 3 * Math.PI + 20 + 1.5,
			9,
		);
		expect(cutOffWords(start!, job)).toMatch(
			/^Start end: cut off 1 in\. Cut 15 in before bend 1 begins, 2\d[\d/ ]* in from its corner\.$/,
		);
	});

	it('is cut square where the longest point of a cope comes, and then coped', () => {
		// Square on a tube of 2.5 in: by the Steinmetz curve the longest point is sqrt(1.25^2 - 0.75^2) = 1 in before the other's center
		// line, and 0.25 in less deep than the middle.
		const ends = { far: { cope: { od: 2.5, angle: 90, offset: 0, turn: 0 } } };
		const plain = done(give(bendAndSkip(begin(job), 90), { do: 'accept' }));
		const coped = done(give(bendAndSkip(begin({ ...job, ends }), 90), { do: 'accept' }));
		expect(coped.trim!.start).toBeCloseTo(plain.trim!.start, 9);
		expect(coped.trim!.end).toBeCloseTo(plain.trim!.end + 1, 6);
		expect(coped.cuts[1]!.fromTangent).toBeCloseTo(plain.cuts[1]!.fromTangent - 1, 6);
		expect(coped.finish.map((fact) => finishWords(fact, job))).toContain(
			"Cope the far end for a tube of 2 1/2 in at 90°: 1/4 in deep, deepest on the line of bend 1's inside. Its longest point is 1 in before the drawing's end.",
		);
	});

	it('has nothing cut where the piece came out short, and says by how much', () => {
		let run = give(begin(job), { ready: true, length: 43.5 });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
		run = give(run, { loaded: open(run, 'pull').stop });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'pull') run = give(run, { loaded: open(run, 'pull').stop });
		run = give(run, { angles: [90, 90] });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'confirm') run = give(run, { keep: true });
		while ((run.outputs.at(-1) as { ask: string }).ask === 'check') run = give(run, { skip: true });
		const note = done(give(run, { do: 'accept' }));
		expect(note.trim!.end).toBeLessThan(0);
		expect(note.cuts[1]!.off).toBe(note.trim!.end);
		expect(cutOffWords(note.cuts[1]!, job)).toMatch(
			/^Far end: cut nothing off, it is [\d/ ]+ in short\. It should end [\d/ ]+ in behind the end of bend 1, /,
		);
	});

	it('has a list of what is still to be looked at', () => {
		const skipped = done(give(bendAndSkip(begin(job), 90), { do: 'accept' })).finish;
		expect(skipped.map((fact) => finishWords(fact, job).replace(/expected is [\d./ ]+\d/, 'expected is x'))).toEqual([
			'Check elbow was not read: it should be 90°, within 0.5°; expected is x°.',
			'Check over all was not read: it should be 33 27/64 in, within 1/16 in; expected is x in.',
			'Deburr both ends inside and outside.',
		]);
		let run = bendTo(begin(job), 90);
		run = give(run, { reading: 90 });
		// Both legs to their corner are 21 and 26 in, square to each other: 33.422 in. Uncut it reads longer by the trims; cut it is read again.
		run = give(run, { reading: open(run, 'check').expect.value });
		const read = done(give(run, { do: 'accept' })).finish;
		expect(read.map((fact) => finishWords(fact, job))).toEqual([
			'Check over all once more when the ends are cut: it should be 33 27/64 in, within 1/16 in.',
			'Deburr both ends inside and outside.',
		]);
	});

	it('is not told of cuts when it is scrap', () => {
		const note = done(give(bendAndSkip(begin(job), 90), { do: 'scrap', why: 'cracked' }));
		expect(note).toMatchObject({ scrapped: true, cuts: [], finish: [] });
	});
});
