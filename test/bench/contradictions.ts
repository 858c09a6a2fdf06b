/**
 * One number wrong, of which the program knows nothing: a finder's, a check's, a mark or a turn, by 4 to 12 of its own errors, in whole sessions
 * in foreign shops whose operator does as he is advised. Counted where it matters: where the tube fits when it is right, and does not when it is
 * believed. What is asked for first, and whether because of it a made bend was gone back to, opened or the tube given up before it was read again.
 * Beside that: how often the best identification itself, told what the first reading taken again showed, would take another one second; what would
 * not have been moved, or pulled closer, had the number been right at that moment, and where it was pulled closer, whether the best
 * identification, told what was read again by then, finds anything wrong.
 * A number is the first seed, a word the jobs with it in their name; `tubes=n` tries so many of each kind; `inch` has marks off by an inch alone.
 */

import { operatorAnswer } from '../../src/practice/operator.ts';
import { ELSEWHERE } from '../../src/practice/other-shops.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import { type Sight, Station } from '../../src/practice/station.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { ask } from '../../src/session/ask.ts';
import { angleReadingSd, checkReadingSd, markSd, turnSd } from '../../src/session/estimate/hands.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import { nextEntry } from '../../src/session/log/state.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { Job } from '../../src/tube/job.ts';
import { BURNT } from '../../src/units/tape.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { CHECKED_JOBS } from './advice-jobs.ts';
import { trulyFits } from './advice-truth.ts';
import { type Best, bestOf, isSame, type Named } from './contradictions-best.ts';
import { isAdvisedAsWell, type Wrong } from './contradictions-right.ts';
import { startOf } from './fit-made.ts';

const WORLDS: readonly World[] = [USUAL_SHOP, ...Object.values(ELSEWHERE)].map((world) => ({
	...world,
	blunders: { off: 0, swapped: 0 },
}));
const KINDS = ['angle', 'check', 'mark', 'rotation'] as const;
const words = process.argv.slice(2);
const SEED = Number(words.find((word) => /^\d+$/.test(word)) ?? 4_300_000);
const TUBES = Number(words.find((word) => word.startsWith('tubes='))?.slice(6) ?? 60);
const INCH = words.includes('inch');
const named = words.filter((word) => /^[a-z]+$/i.test(word) && word !== 'inch');
const MOST_ANSWERS = 600;
const MOST_REFUSALS = 4;
/** So much likelier, as a logarithm, with one number wrong than with none: errors do not explain it. */
const CONTRADICTS = 3;

interface Planted extends Named {
	/** In its own errors. */
	size: number;
}

interface Course {
	fits: boolean;
	/** What was asked to be measured again since it does not go with the rest, in order, how well it could be known at the first, and then at the second. */
	asked: Named[];
	best: Best | null;
	second: Best | null;
	/** By a doubt at once, before it counted. */
	doubted: boolean;
	/** A made bend gone back to or opened, or the tube given up, before the planted number was read again or another took its place. */
	moved: number;
	how: string;
	/** Moved, or pulled closer, then, as it would not have been had the number been right at that moment. */
	misled: number;
	pulled: number;
	/** Pulled closer so though the best identification finds something wrong. */
	pulledSeen: number;
}

type Policy = 'advice' | 'believes';

function course(job: Job, world: World, seed: number, planted: Planted | null, policy: Policy): Course | null {
	const draw = draws(seed);
	const station = new Station(job, world, draw);
	let state = initial(startOf(job));
	let [refusals, again, shown] = [0, false, false];
	const told: Course = {
		fits: false,
		asked: [],
		best: null,
		second: null,
		doubted: false,
		moved: 0,
		how: '',
		misled: 0,
		pulled: 0,
		pulledSeen: 0,
	};
	const wrongs: Wrong[] = [];
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null) return { ...told, fits: trulyFits(state, station, job) };
		const believes = again || shown ? null : planted;
		const sight = seen(open, station, believes, job, policy);
		if (sight.right !== undefined && (believes?.kind === 'angle' || believes?.kind === 'check'))
			wrongs.push({ entry: nextEntry(state), of: believes.kind, right: sight.right });
		const usual = operatorAnswer(open, sight, world, draw, gaveUpWords);
		const action = policy === 'believes' && open.ask === 'decide' ? believed(usual, open) : usual;
		if (open.ask === 'decide') {
			if (open.advice === 'measure' && typeof open.of === 'object') {
				if (open.reason.some(({ code }) => code === 'does-not-go')) {
					if (told.asked.length === 0) told.best = bestOf(state);
					if (told.asked.length === 1) told.second = bestOf(state, told.asked);
					told.asked.push(open.of);
				}
				again ||= planted !== null && isSame(open.of, planted);
			} else if (told.asked.length === 0) told.best = bestOf(state) ?? told.best;
			const moves = ['reopen', 'relieve', 'scrap'].includes(open.advice);
			const closer = open.reason.some(({ code }) => code === 'touch-more' || code === 'needed-closer');
			// A finder's number is replaced, and rightly, once the bend was pulled and measured anew.
			if (moves && !again && !shown) {
				told.moved += 1;
				told.how = `${open.advice} ${JSON.stringify(open.of ?? '')} at bend ${open.bend}`;
			}
			if (believes !== null && !again && (moves || closer) && !isAdvisedAsWell(open, state, believes, wrongs)) {
				if (moves) told.misled += 1;
				else {
					told.pulled += 1;
					told.pulledSeen += Number(contradicts(bestOf(state, told.asked)));
				}
			}
		}
		if (open.ask === 'confirm' && planted !== null && isSame(ofConfirm(open), planted)) {
			again = true;
			told.doubted ||= told.asked.length === 0;
		}
		const decision = answerEvents({ action: refusals > MOST_REFUSALS ? { do: 'undo' } : action }, state);
		if ('refused' in decision) {
			refusals += 1;
			continue;
		}
		// A pull that follows is measured anew, and rightly.
		shown ||= open.ask === 'pull' && planted?.kind === 'angle' && state.bends[(planted.bend ?? 1) - 1]!.read.length > 0;
		refusals = 0;
		station.did(open, action);
		state = evolve(state, { entry: nextEntry(state), at: state.start.at, events: decision.events });
	}
	return null;
}

const contradicts = (best: Best | null): best is Best => best !== null && best.evidence >= CONTRADICTS;

/** Takes what is not short, and never measures again. */
function believed(usual: Action, open: Extract<Ask, { ask: 'decide' }>): Action {
	return usual.do === 'pull' && open.advice === 'pull' ? usual : { do: 'accept' };
}

function ofConfirm({ of, bend = 0, name = '' }: Extract<Ask, { ask: 'confirm' }>): Named {
	if (of === 'check') return { kind: 'check', name };
	return { kind: of === 'mark' || of === 'rotation' ? of : 'angle', bend: of === 'angle' ? bend : 0 };
}

/** `right`: what it would have read. */
type Seen = Sight & { right?: number };

/** What the hands do and the instruments show, with the planted error where it belongs. */
function seen(open: Ask, station: Station, planted: Planted | null, job: Job, policy: Policy): Seen {
	if (planted === null) return station.see(open);
	const { kind, size, bend, name } = planted;
	const start = startOf(job);
	if (open.ask === 'set' && open.bend === bend && open.seat === 1) {
		const by = size * (kind === 'mark' ? markSd(start) : turnSd(start));
		const { fromStart, fromFarEnd } = open.mark;
		if (kind === 'mark')
			return station.see({ ...open, mark: { ...open.mark, fromStart: fromStart + by, fromFarEnd: fromFarEnd - by } });
		if (kind === 'rotation') return station.see({ ...open, rotation: open.rotation + by });
	}
	const sight = station.see(open);
	const off = (by: number): Seen => {
		const right = sight.reading ?? 0;
		return { ...sight, right, reading: Math.max(0, right + by) };
	};
	if (open.ask === 'measure' && kind === 'angle' && open.bend === bend) return off(size * angleReadingSd(start));
	const check = job.checks.find((each) => each.name === name);
	if (open.ask === 'check' && check && open.name === name) return off(size * checkReadingSd(start, check));
	// Who believes it reads the same once more.
	if (policy === 'believes' && open.ask === 'confirm' && isSame(ofConfirm(open), planted))
		return { ...sight, reading: open.reading };
	return sight;
}

function plant(job: Job, kind: Named['kind'], draw: Draw): Planted {
	const size = (INCH ? BURNT.in / markSd(startOf(job)) : draw.uniform(4, 12)) * (draw.uniform(0, 1) < 0.5 ? -1 : 1);
	const bends = job.shape.kind === 'bends' ? job.shape.bends.length : 0;
	const from = kind === 'rotation' ? 2 : 1;
	const bend = from + Math.floor(draw.uniform(0, 1) * (bends - from + 1));
	const name = job.checks[Math.floor(draw.uniform(0, job.checks.length))]!.name;
	return kind === 'check' ? { kind, name, size } : { kind, bend, size };
}

const part = (some: number, all: number) =>
	`${some} of ${all}${all === 0 ? '' : ` (${((100 * some) / all).toFixed(0)} %)`}`;

const NONE = { found: 0, first: 0, two: 0, best: 0, moved: 0, misled: 0, pulled: 0, pulledSeen: 0, matter: 0 };
const overall = { ...NONE };
for (const job of CHECKED_JOBS.filter(({ name }) => named.length === 0 || named.some((word) => name.includes(word)))) {
	for (const [j, kind] of KINDS.entries()) {
		if (INCH && kind !== 'mark') continue;
		const own = { ...NONE };
		let [doubted, asked, asks, hit] = [0, 0, 0, 0];
		for (let i = 0; i < TUBES; i++) {
			const seed = SEED + j * 100_000 + i;
			const world = WORLDS[i % WORLDS.length]!;
			const planted = plant(job, kind, draws(seed + 7_000_000));
			const clean = course(job, world, seed, null, 'believes');
			if (!clean?.fits) continue;
			const wrong = course(job, world, seed, planted, 'believes');
			if (wrong === null || wrong.fits) continue;
			const tried = course(job, world, seed, planted, 'advice');
			if (tried === null) continue;
			own.matter += 1;
			// A bend that is gone back to with every number right as well is not moved because of the wrong one.
			const because = tried.moved > 0 && (course(job, world, seed, null, 'advice')?.moved ?? 0) === 0;
			own.moved += Number(because);
			own.misled += Number(tried.misled > 0);
			own.pulled += Number(tried.pulled > 0);
			own.pulledSeen += Number(tried.pulledSeen > 0);
			if (tried.doubted) {
				doubted += 1;
				continue;
			}
			asked += Number(tried.asked.length > 0);
			asks += tried.asked.length;
			hit += Number(tried.asked.some((each) => isSame(each, planted)));
			if (process.env.SHOW)
				console.log(
					JSON.stringify({ seed, planted, asked: tried.asked, best: tried.best, moved: because ? tried.how : '' }),
				);
			if (!contradicts(tried.best) || !isSame(tried.best.first, planted)) continue;
			own.found += 1;
			own.first += Number(tried.asked[0] !== undefined && isSame(tried.asked[0], planted));
			const two = tried.asked.slice(0, 2).some((each) => isSame(each, planted));
			own.two += Number(two);
			own.best += Number(!two && tried.second !== null && !isSame(tried.second.first, planted));
		}
		for (const key of Object.keys(own) as (keyof typeof own)[]) overall[key] += own[key];
		console.log(
			`${job.name}, ${kind}: doubted at once ${doubted}; asked ${asked}, ${asks} times, for the wrong one ${hit}; of ${TUBES} ${told(own)}`,
		);
	}
}
console.log(`all: ${told(overall)}`);

function told({ matter, found, first, two, best, moved, misled, pulled, pulledSeen }: typeof NONE): string {
	return `${matter} matter, best finds ${found}: first ${part(first, found)}, among two ${part(two, found)}, else the best's second is another as well ${best}; moved before it was read again ${moved}, as would not have been with it right ${misled}; pulled closer so ${pulled}, and of these the best finds something wrong in ${pulledSeen}`;
}
