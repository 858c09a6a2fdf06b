/**
 * Whether the advice is worth following: the same tubes bent three times, by one who does as advised, by one who does but never goes back to a
 * made bend, and by one who takes every bend that is not short of its own tolerance. The shops share nothing with the springback room's model.
 * A number is the first seed, a word the jobs with it in their name; `tubes=n` bends so many of each.
 */

import { operatorAnswer } from '../../src/practice/operator.ts';
import { ELSEWHERE, FOREIGN } from '../../src/practice/other-shops.ts';
import { draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import type { World } from '../../src/practice/world.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import { isShort } from '../../src/session/advice/bend-check.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { ask } from '../../src/session/ask.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import { nextEntry, type State } from '../../src/session/log/state.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { Job } from '../../src/tube/job.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { JOBS } from './advice-jobs.ts';
import { trulyFits } from './advice-truth.ts';
import { startOf } from './fit-made.ts';

const WORLDS: readonly (readonly [string, World])[] = [
	['usual', USUAL_SHOP],
	...Object.entries(ELSEWHERE),
	['heavy tails', FOREIGN['heavy tails']!],
	['finder bias', FOREIGN['finder bias']!],
];
const words = process.argv.slice(2);
const SEED = Number(words.find((word) => /^\d+$/.test(word)) ?? 4_100_000);
const TUBES = Number(words.find((word) => word.startsWith('tubes='))?.slice(6) ?? 70);
const named = words.filter((word) => /^[a-z]+$/i.test(word));
const STRETCH = 0.008;
const MOST_ANSWERS = 600;
const MOST_REFUSALS = 2;

type Policy = 'advice' | 'stays' | 'takes';
const POLICIES: readonly Policy[] = ['advice', 'stays', 'takes'];

interface Bent {
	fits: boolean;
	pulls: number;
	opened: number;
	reopened: number;
	measured: number;
	scrapped: boolean;
	/** Went back, or would have been advised to. */
	advised: boolean;
}

function bend(job: Job, world: World, seed: number, policy: Policy): Bent | null {
	const draw = draws(seed);
	const trueJob = { ...job, tooling: { ...job.tooling, stretch: draw.uniform(0, STRETCH) } };
	const station = new Station(trueJob, world, draw);
	let state = initial(startOf(job));
	let refusals = 0;
	const bent: Bent = {
		fits: false,
		pulls: 0,
		opened: 0,
		reopened: 0,
		measured: 0,
		scrapped: false,
		advised: false,
	};
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null) return { ...bent, fits: trulyFits(state, station, trueJob) };
		const usual = operatorAnswer(open, station.see(open), world, draw, gaveUpWords);
		const action: Action = refusals > MOST_REFUSALS ? { do: 'undo' } : decided(open, state, usual, policy);
		const decision = answerEvents({ action }, state);
		if ('refused' in decision) {
			refusals += 1;
			continue;
		}
		refusals = 0;
		if (open.ask === 'decide') {
			if (action.do === 'relieve' || (action.do === 'reopen' && action.how === 'relieve')) bent.opened += 1;
			if (action.do === 'reopen') bent.reopened += 1;
			if (open.advice === 'reopen') bent.advised = true;
			if (open.advice === 'measure') bent.measured += 1;
		}
		if (open.ask === 'pull') bent.pulls += 1;
		if (action.do === 'scrap') bent.scrapped = true;
		station.did(open, action);
		state = evolve(state, { entry: nextEntry(state), at: state.start.at, events: decision.events });
	}
	return null;
}

function decided(open: Ask, state: State, usual: Action, policy: Policy): Action {
	if (open.ask !== 'decide') return usual;
	if (policy === 'takes') return isShort(state) && open.advice === 'pull' ? { do: 'pull' } : { do: 'accept' };
	if (open.advice !== 'reopen') return usual;
	if (policy === 'stays' || typeof open.of !== 'number') return { do: 'accept' };
	return { do: 'reopen', bend: open.of, how: open.how ?? 'pull' };
}

for (const job of JOBS.filter(({ name }) => named.length === 0 || named.some((word) => name.includes(word)))) {
	const all = Array.from({ length: TUBES }, (_, i) => {
		const [, world] = WORLDS[i % WORLDS.length]!;
		const [advice, takes] = [bend(job, world, SEED + i, 'advice'), bend(job, world, SEED + i, 'takes')];
		// Who is never advised to go back does the same whether he would or not.
		const stays = advice?.advised === false ? advice : bend(job, world, SEED + i, 'stays');
		return [advice, stays, takes];
	});
	const whole = all.filter((row): row is Bent[] => row.every((each) => each !== null));
	console.log(`${job.name}: ${whole.length} tubes of ${all.length}, seeds ${SEED} to ${SEED + TUBES - 1}`);
	for (const [p, policy] of POLICIES.entries()) {
		const of = whole.map((row) => row[p]!);
		const mean = (value: (bent: Bent) => number) => of.reduce((sum, each) => sum + value(each), 0) / of.length;
		console.log(
			[
				`  ${policy}`.padEnd(10),
				`fits ${(100 * mean(({ fits }) => Number(fits))).toFixed(1)} %`,
				`pulls ${mean(({ pulls }) => pulls).toFixed(2)}`,
				`opened ${of.reduce((sum, each) => sum + each.opened, 0)}`,
				`went back ${of.reduce((sum, each) => sum + each.reopened, 0)}`,
				`measured again ${of.reduce((sum, each) => sum + each.measured, 0)}`,
				`scrapped ${of.filter(({ scrapped }) => scrapped).length}`,
			].join('  '),
		);
	}
	const back = whole.filter(([advice]) => advice!.reopened > 0);
	const share = (p: number) => back.filter((row) => row[p]!.fits).length;
	console.log(`  of ${back.length} gone back to: fit ${share(0)}, without ${share(1)}`);
}
