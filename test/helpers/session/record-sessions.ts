/**
 * Records the sessions of `recorded-sessions.ts` anew: `npx tsx test/helpers/session/record-sessions.ts`. Only where an issue changes what is asked or
 * told, and then said so in the commit.
 */
import { readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Draw, draws } from '../../../src/practice/random.ts';
import type { Ask } from '../../../src/session/protocol/asks.ts';
import { randomAnswer } from './random-answers.ts';
import { digestOf, type Recorded, recordedJob, SESSIONS } from './recorded-sessions.ts';
import { begin, give } from './session-run.ts';

const A_JOB = 45;
const MOST_ANSWERS = 70;

/** What an attentive operator answers: readings near what is expected, the advice followed. */
function sensible(ask: Ask, draw: Draw): unknown {
	const near = (value: number, sd: number) => Number(draw.normal(value, sd).toFixed(2));
	switch (ask.ask) {
		case 'set':
			return draw.happens(0.3) ? { ready: true, pointer: near(ask.pointer, 0.2) } : { ready: true };
		case 'pull':
			return draw.happens(0.5)
				? { loaded: near(ask.stop, 0.2), released: near(ask.expect.angle + 0.6, 0.4) }
				: { loaded: near(ask.stop, 0.2) };
		case 'measure':
			return ask.readings === 2
				? { angles: [near(ask.expect.angle, 0.5), near(ask.expect.angle, 0.5)] }
				: { angle: near(ask.expect.angle, 0.6) };
		case 'confirm':
			return draw.happens(0.5) ? { keep: true } : { reading: near(ask.expect.value, 0.3) };
		case 'check':
			return draw.happens(0.8) ? { reading: Math.abs(near(ask.expect.value, 0.06)) } : { skip: true };
		case 'decide':
			return advised(ask);
	}
}

function advised({ advice, of, how, made }: Extract<Ask, { ask: 'decide' }>): unknown {
	if (advice === 'reopen') return { reopen: { bend: of, do: how } };
	if (advice !== 'measure') return advice === 'scrap' ? { scrap: 'given up' } : { do: advice };
	const bend = typeof of === 'object' ? of.bend : undefined;
	return { evidence: { kind: 'angle', bend, reading: Number(made.angle.toFixed(1)) } };
}

function recorded(job: string, draw: Draw): Recorded {
	const odd = draw.uniform(0, 0.3);
	let run = begin(recordedJob(job));
	const answers: unknown[] = [];
	const digests = [digestOf(run)];
	while (answers.length < MOST_ANSWERS) {
		const open = run.outputs.at(-1);
		if (!open || !('ask' in open)) break;
		const answer = draw.happens(odd)
			? randomAnswer(open, Math.floor(draw.uniform(0, 1e6)), draw.uniform(0, 1))
			: draw.happens(0.004)
				? { scrap: 'kinked' }
				: sensible(open, draw);
		answers.push(answer);
		run = give(run, answer);
		digests.push(digestOf(run));
	}
	return { job, answers, digests };
}

const jobs = readdirSync(join(SESSIONS, 'jobs')).map((file) => basename(file, '.json'));
const sessions = jobs.flatMap((job, j) =>
	Array.from({ length: A_JOB }, (_, k) => recorded(job, draws(83_100_000 + 1000 * j + k))),
);
writeFileSync(join(SESSIONS, 'recorded.jsonl'), sessions.map((each) => `${JSON.stringify(each)}\n`).join(''));
console.log(`${sessions.length} sessions, ${sessions.reduce((sum, { answers }) => sum + answers.length, 0)} answers`);
