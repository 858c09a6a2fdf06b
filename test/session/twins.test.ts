import { describe, expect, it } from 'vitest';
import { type Draw, draws } from '../../src/practice/random.ts';
import { coldPrior, growthOf } from '../../src/session/log/start.ts';
import { jobEnds } from '../../src/session/plan/ends.ts';
import { jobWarnings } from '../../src/session/plan/job-warnings.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import { sessionView } from '../../src/session/report/views.ts';
import type { Job } from '../../src/tube/job.ts';
import { layout } from '../../src/tube/layout.ts';
import { sample } from '../helpers/sample-size.ts';
import { begin, give } from '../helpers/session/session-run.ts';
import { Agreement } from '../helpers/shop/agreement.ts';
import { randomJob } from '../helpers/shop/random-jobs.ts';
import { INCH, inMillimeters, isLength } from '../helpers/shop/twin.ts';

/** What is answered to the ask in inches, and the same in millimeters: readings near what is expected, now and then further off. */
function answersTo(ask: Ask, job: Job, draw: Draw): [unknown, unknown] {
	const near = (value: number, sd: number) => draw.normal(value, draw.happens(0.1) ? 8 * sd : sd);
	const both = (answer: unknown): [unknown, unknown] => [answer, answer];
	switch (ask.ask) {
		case 'set': {
			const mark = near(ask.mark.fromStart, 0.03);
			const rotation = near(ask.rotation, 0.3);
			return draw.happens(0.5)
				? both({ ready: true })
				: [
						{ ready: true, mark, rotation },
						{ ready: true, mark: mark * INCH, rotation },
					];
		}
		case 'pull':
			return both({ loaded: near(ask.stop, 0.2) });
		case 'measure':
			return both({ angles: [near(ask.expect.angle, 0.3), near(ask.expect.angle, 0.3)] });
		case 'confirm':
			return both({ keep: true });
		case 'check': {
			const reading = Math.abs(near(ask.expect.value, 0.05));
			const { kind } = job.checks.find(({ name }) => name === ask.name)!;
			return [{ reading }, { reading: isLength(kind) ? reading * INCH : reading }];
		}
		case 'decide':
			return both({ do: ask.advice === 'pull' || ask.advice === 'relieve' ? ask.advice : 'accept' });
	}
}

function laidOut(job: Job) {
	const growth = growthOf(coldPrior(job));
	return layout(job, growth, jobWarnings(job, growth), jobEnds(job, growth));
}

const SEED = 62_000_000;
const TUBES = sample(3, 12);

describe('a job in inches and the same in millimeters', () => {
	it.each(Array.from({ length: TUBES }, (_, i) => SEED + i))(
		'agree in every number of layout, asks, notes and review (seed %i)',
		(seed) => {
			const draw = draws(seed);
			const job = randomJob(draw, 1 + (seed % 4), seed % 2 === 0);
			const twin = inMillimeters(job);
			const agreement = new Agreement();
			agreement.hold(laidOut(job), laidOut(twin), 'layout');
			expect([agreement.wayOf('layout.cutLength '), agreement.wayOf('layout.bends[].angle ')]).toEqual([
				'length',
				'same',
			]);
			let [one, other] = [begin(job), begin(twin)];
			for (let answers = 0; answers < 40; answers++) {
				agreement.hold(one.outputs, other.outputs, 'outputs');
				const open = one.outputs.at(-1);
				if (open === undefined || !('ask' in open)) break;
				const [inches, mm] = answersTo(open, job, draw);
				[one, other] = [give(one, inches), give(other, mm)];
			}
			const viewed = ({ job: _, ...view }: ReturnType<typeof sessionView>) => view;
			agreement.hold(viewed(sessionView(one.state)), viewed(sessionView(other.state)), 'review');
			expect(agreement.compared).toBeGreaterThan(300);
		},
	);
});

describe('a job of any kind', () => {
	it.each(Array.from({ length: TUBES }, (_, i) => SEED + 500 + i))(
		'has one number for one thing in layout, asks, closing note and review (seed %i)',
		(seed) => {
			const draw = draws(seed);
			const job = randomJob(draw, 1 + (seed % 4), seed % 2 === 0);
			const document = laidOut(job);
			let run = begin(job);
			for (let answers = 0; answers < 60; answers++) {
				const open = run.outputs.at(-1);
				if (open === undefined || !('ask' in open)) break;
				if (open.ask === 'set') {
					const drawn = document.bends[open.bend - 1]!;
					expect(open.design).toBe(drawn.angle);
					expect(open.mark.fromStart - open.mark.moved).toBeCloseTo(drawn.mark.fromStart, 9);
					expect(open.mark.fromStart + open.mark.fromFarEnd).toBeCloseTo(document.cutLength, 9);
				}
				if (open.ask === 'check') {
					const drawn = document.checks.find(({ name }) => name === open.name)!;
					expect([open.design, open.tolerance]).toEqual([drawn.design, drawn.tolerance]);
				}
				const [answer] = answersTo(open, job, draw);
				run = give(run, open.ask === 'set' ? { ready: true } : answer);
			}
			const done = run.outputs.at(-1)!;
			const view = sessionView(run.state);
			expect(view.checks.map(({ name, design }) => ({ name, design }))).toEqual(
				document.checks.map(({ name, design }) => ({ name, design })),
			);
			expect(view.bends.map(({ design }) => design)).toEqual(document.bends.map(({ angle }) => angle));
			if (!('note' in done) || done.note !== 'done') return;
			expect(view.bends.map(({ made, target }) => ({ made, target }))).toEqual(
				done.bends.map(({ made, sd, target }) => ({ made: { angle: made, sd }, target })),
			);
			expect(view.checks).toEqual(done.checks);
			expect(view.asBuilt).toMatchObject({ endOffset: done.endOffset, endAngle: done.endAngle });
		},
	);
});
