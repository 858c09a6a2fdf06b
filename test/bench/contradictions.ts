/**
 * One number wrong, of which the program knows nothing: a finder's, a check's, a mark or a turn, by 4 to 12 of its own errors, in whole sessions
 * in foreign shops whose operator does as he is advised. Counted where it matters: where the tube fits when it is right, and does not when it is
 * believed. What is asked for first, and whether because of it a made bend was gone back to, opened or the tube given up before it was read again.
 * A number is the first seed, a word the jobs with it in their name; `tubes=n` tries so many of each kind; `inch` has marks off by an inch alone.
 */

import { operatorAnswer } from '../../src/practice/operator.ts';
import { ELSEWHERE } from '../../src/practice/other-shops.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import { type Sight, Station } from '../../src/practice/station.ts';
import { USUAL_SHOP, type World } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { ask } from '../../src/session/ask.ts';
import { ANGLE_READING_SD, checkReadingSd, markSd, SET_SD } from '../../src/session/estimate/estimate.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import { nextEntry } from '../../src/session/log/state.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { Job } from '../../src/tube/job.ts';
import { BURNT } from '../../src/units/tape.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { CHECKED_JOBS } from './advice-jobs.ts';
import { trulyFits } from './advice-truth.ts';
import { type Best, bestOf, type Named } from './contradictions-best.ts';
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
	/** What was asked to be measured again, in order, and how well it could be known at the first. */
	asked: Named[];
	best: Best | null;
	/** By a doubt at once, before it counted. */
	doubted: boolean;
	/** A made bend gone back to or opened, or the tube given up, before the planted number was read again or another took its place. */
	moved: number;
	how: string;
}

type Policy = 'advice' | 'believes';

function course(job: Job, world: World, seed: number, planted: Planted | null, policy: Policy): Course | null {
	const draw = draws(seed);
	const station = new Station(job, world, draw);
	let state = initial(startOf(job));
	let [refusals, again, shown] = [0, false, false];
	const told: Course = { fits: false, asked: [], best: null, doubted: false, moved: 0, how: '' };
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = ask(state);
		if (open === null) return { ...told, fits: trulyFits(state, station, job) };
		const sight = seen(open, station, again || shown ? null : planted, job, policy);
		const usual = operatorAnswer(open, sight, world, draw, gaveUpWords);
		const action = policy === 'believes' && open.ask === 'decide' ? believed(usual, open) : usual;
		if (open.ask === 'decide') {
			if (open.advice === 'measure' && typeof open.of === 'object') {
				if (told.asked.length === 0) told.best = bestOf(state);
				told.asked.push(open.of);
				again ||= planted !== null && isSame(open.of, planted);
			} else if (told.asked.length === 0) told.best = bestOf(state) ?? told.best;
			const moves = ['reopen', 'relieve', 'scrap'].includes(open.advice);
			// A finder's number is replaced, and rightly, once the bend was pulled and measured anew.
			if (moves && !again && !shown) {
				told.moved += 1;
				told.how = `${open.advice} ${JSON.stringify(open.of ?? '')} at bend ${open.bend}`;
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

/** Takes what is not short, and never measures again. */
function believed(usual: Action, open: Extract<Ask, { ask: 'decide' }>): Action {
	return usual.do === 'pull' && open.advice === 'pull' ? usual : { do: 'accept' };
}

const isSame = (a: Named, b: Named) =>
	a.kind === b.kind && (a.kind === 'check' ? a.name === b.name : a.bend === b.bend);

function ofConfirm({ of, bend = 0, name = '' }: Extract<Ask, { ask: 'confirm' }>): Named {
	if (of === 'check') return { kind: 'check', name };
	return { kind: of === 'mark' || of === 'rotation' ? of : 'angle', bend: of === 'angle' ? bend : 0 };
}

/** What the hands do and the instruments show, with the planted error where it belongs. */
function seen(open: Ask, station: Station, planted: Planted | null, job: Job, policy: Policy): Sight {
	if (planted === null) return station.see(open);
	const { kind, size, bend, name } = planted;
	if (open.ask === 'set' && open.bend === bend && open.seat === 1) {
		const by = size * (kind === 'mark' ? markSd(job) : SET_SD);
		const { fromStart, fromFarEnd } = open.mark;
		if (kind === 'mark')
			return station.see({ ...open, mark: { ...open.mark, fromStart: fromStart + by, fromFarEnd: fromFarEnd - by } });
		if (kind === 'rotation') return station.see({ ...open, rotation: open.rotation + by });
	}
	const sight = station.see(open);
	const off = (by: number): Sight => ({ ...sight, reading: Math.max(0, (sight.reading ?? 0) + by) });
	if (open.ask === 'measure' && kind === 'angle' && open.bend === bend) return off(size * ANGLE_READING_SD);
	const check = job.checks.find((each) => each.name === name);
	if (open.ask === 'check' && check && open.name === name) return off(size * checkReadingSd(job, check));
	// Who believes it reads the same once more.
	if (policy === 'believes' && open.ask === 'confirm' && isSame(ofConfirm(open), planted))
		return { ...sight, reading: open.reading };
	return sight;
}

function plant(job: Job, kind: Named['kind'], draw: Draw): Planted {
	const size = (INCH ? BURNT.in / markSd(job) : draw.uniform(4, 12)) * (draw.uniform(0, 1) < 0.5 ? -1 : 1);
	const bends = job.shape.kind === 'bends' ? job.shape.bends.length : 0;
	const from = kind === 'rotation' ? 2 : 1;
	const bend = from + Math.floor(draw.uniform(0, 1) * (bends - from + 1));
	const name = job.checks[Math.floor(draw.uniform(0, job.checks.length))]!.name;
	return kind === 'check' ? { kind, name, size } : { kind, bend, size };
}

const part = (some: number, all: number) =>
	`${some} of ${all}${all === 0 ? '' : ` (${((100 * some) / all).toFixed(0)} %)`}`;

let overall = { found: 0, first: 0, two: 0, moved: 0, matter: 0 };
for (const job of CHECKED_JOBS.filter(({ name }) => named.length === 0 || named.some((word) => name.includes(word)))) {
	for (const [j, kind] of KINDS.entries()) {
		if (INCH && kind !== 'mark') continue;
		let [matter, doubted, found, first, two, moved, asked, asks, hit] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
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
			matter += 1;
			// A bend that is gone back to with every number right as well is not moved because of the wrong one.
			const because = tried.moved > 0 && (course(job, world, seed, null, 'advice')?.moved ?? 0) === 0;
			moved += Number(because);
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
			if (tried.best === null || !isSame(tried.best.first, planted) || tried.best.evidence < CONTRADICTS) continue;
			found += 1;
			first += Number(tried.asked[0] !== undefined && isSame(tried.asked[0], planted));
			two += Number(tried.asked.slice(0, 2).some((each) => isSame(each, planted)));
		}
		overall = {
			found: overall.found + found,
			first: overall.first + first,
			two: overall.two + two,
			moved: overall.moved + moved,
			matter: overall.matter + matter,
		};
		console.log(
			`${job.name}, ${kind}: ${matter} of ${TUBES} matter; doubted at once ${doubted}; asked ${asked}, ${asks} times, for the wrong one ${hit}; best finds ${found}, asked first ${part(first, found)}, among two ${part(two, found)}; moved before it was read again ${moved}`,
		);
	}
}
console.log(
	`all: ${overall.matter} matter, best finds ${overall.found}: first ${part(overall.first, overall.found)}, among two ${part(overall.two, overall.found)}; moved ${overall.moved}`,
);
