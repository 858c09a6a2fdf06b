/**
 * How long the core thinks about one answer on eight bends: events, next state, and what is shown then. Usual sessions, and ones in which a
 * bend was turned the wrong way, a mark lay an inch off or a check contradicts all else, told at once or as evidence later, or in which every other
 * number has nothing to do with the tube. A decision is an
 * answer after which it is asked what to do with the bend, or new numbers are told; the median is theirs, since most answers need no thought.
 * A number is another seed; `--quick` bends fewer tubes; `--search` bends many with nonsense alone, for the worst answer that there is. What takes too long
 * is thought about three times more, and the least counts: a machine with other work is slower now and then, and no answer is.
 */

import { cpus } from 'node:os';
import { operatorAnswer } from '../../src/practice/operator.ts';
import { type Draw, draws } from '../../src/practice/random.ts';
import { Station } from '../../src/practice/station.ts';
import { USUAL_SHOP } from '../../src/practice/world.ts';
import { answerEvents } from '../../src/session/answers.ts';
import { evolve, initial } from '../../src/session/log/fold.ts';
import { nextEntry, type State } from '../../src/session/log/state.ts';
import { outputsAfter, standing } from '../../src/session/outputs.ts';
import type { Action } from '../../src/session/protocol/action.ts';
import type { Ask } from '../../src/session/protocol/asks.ts';
import type { Job } from '../../src/tube/job.ts';
import { gaveUpWords } from '../../src/words/practice.ts';
import { quantile } from './fit-figures.ts';
import { eightBends } from './fit-jobs.ts';
import { startOf } from './fit-made.ts';

const SEED = Number(process.argv.slice(2).find((word) => /^\d+$/.test(word)) ?? 71_300_000);
const SEARCH = process.argv.includes('--search');
const TUBES = SEARCH ? 60 : process.argv.includes('--quick') ? 2 : 12;

/** Milliseconds of the processor, on the machine that is named with them: what else runs there does not count. */
const LIMITS = { median: 50, most: 500 };

/** No session comes near this. */
const MOST_ANSWERS = 400;
/** A refused number is keyed again so often; then what it goes against is taken back. */
const MOST_REFUSALS = 2;

type Slip = 'none' | 'turned' | 'turned, told later' | 'mark' | 'mark, told later' | 'check' | 'anything';
const SLIPS: readonly Slip[] = [
	'none',
	'turned',
	'turned, told later',
	'mark',
	'mark, told later',
	'check',
	'anything',
];

interface Thought {
	ms: number;
	of: string;
	isDecision: boolean;
}

function thought(job: Job, slip: Slip, draw: Draw): Thought[] {
	const station = new Station(job, USUAL_SHOP, draw);
	const at = 2 + Math.floor(draw.uniform(0, 5));
	const found: Thought[] = [];
	let state = initial(startOf(job));
	let slipped = false;
	let refusals = 0;
	for (let k = 0; k < MOST_ANSWERS; k++) {
		const open = standing(state, '');
		if (!('ask' in open)) break;
		const usual: Action = refusals > MOST_REFUSALS ? { do: 'undo' } : answerTo(open, station, draw);
		const slips: Action | null = slipped ? null : slipAt(open, slip, at, draw);
		slipped ||= slips !== null && slip !== 'anything';
		const action = slips ?? usual;
		const [next, first] = timed(state, action);
		// What was found is remembered by the state: a copy is another one.
		const again =
			first > LIMITS.most ? [0, 1, 2].map(() => timed({ ...state, start: { ...state.start } }, action)[1]) : [];
		refusals = next === null ? refusals + 1 : 0;
		if (next !== null) station.did(open, action);
		state = next?.state ?? state;
		found.push({ ms: Math.min(first, ...again), of: `${open.ask} ${slip}`, isDecision: next?.isDecision ?? false });
	}
	return found;
}

/** What an answer comes to, and the milliseconds of the processor that it took. */
function timed(state: State, action: Action): [ReturnType<typeof answered>, number] {
	const from = process.cpuUsage();
	const next = answered(state, action);
	const { user, system } = process.cpuUsage(from);
	return [next, (user + system) / 1000];
}

/** A scrapped tube would tell no more, so that the operator goes on with it. */
function answerTo(open: Ask, station: Station, draw: Draw): Action {
	const action = operatorAnswer(open, station.see(open), USUAL_SHOP, draw, gaveUpWords);
	if (open.ask === 'confirm') return { do: 'keep' };
	return action.do === 'scrap' || action.do === 'reopen' ? { do: 'accept' } : action;
}

/** What the operator tells instead of the usual answer, at that bend or the one after it. */
function slipAt(open: Ask, slip: Slip, bend: number, draw: Draw): Action | null {
	const inch = draw.uniform(0, 1) < 0.5 ? 1 : -1;
	if (slip === 'check')
		return open.ask === 'check' ? { do: 'reading', reading: Math.abs(open.expect.value + 1) } : null;
	if (slip === 'anything') return anything(open, draw);
	if (open.ask !== 'set' || open.seat > 1) return null;
	const later = slip.endsWith('later');
	if (open.bend !== (later ? bend + 1 : bend)) return null;
	if (slip === 'turned') return { do: 'ready', rotation: open.rotation + 180 };
	if (slip === 'mark') return { do: 'ready', mark: open.mark.fromStart + inch };
	const reading = slip === 'turned, told later' ? draw.uniform(-180, 180) : open.mark.fromStart - 10 + inch;
	if (later) return { do: 'evidence', kind: slip.startsWith('turned') ? 'rotation' : 'mark', bend, reading };
	return null;
}

/** Every other number has nothing to do with the tube, and is kept. */
function anything(open: Ask, draw: Draw): Action | null {
	if (draw.uniform(0, 1) < 0.5) return null;
	const angle = draw.uniform(0, 150);
	switch (open.ask) {
		case 'set':
			return open.seat > 1 ? null : { do: 'ready', mark: draw.uniform(1, 100), rotation: draw.uniform(-180, 180) };
		case 'pull':
			return { do: 'loaded', loaded: angle };
		case 'measure':
			return { do: 'angles', angles: [angle, angle] };
		case 'check':
			return { do: 'reading', reading: draw.uniform(0, 100) };
		default:
			return null;
	}
}

/** The next state, and whether it took a decision; null where the answer was refused. */
function answered(state: State, action: Action): { state: State; isDecision: boolean } | null {
	const decision = answerEvents({ action }, state);
	if ('refused' in decision) return null;
	const record = { entry: nextEntry(state), at: state.start.at, events: decision.events };
	const next = evolve(state, record);
	const shown = outputsAfter(state, next, record, '');
	const isDecision = shown.some((each) => ('ask' in each ? each.ask === 'decide' : each.note === 'corrected'));
	return { state: next, isDecision };
}

let over = false;
console.log(
	`${cpus()[0]?.model ?? 'an unknown machine'}, Node ${process.version}; milliseconds an answer, eight bends: decisions' median and p95, the most of all`,
);
const slips: readonly Slip[] = SEARCH ? ['anything'] : SLIPS;
const all = slips.flatMap((slip) => {
	const times = Array.from({ length: TUBES }, (_, i) => {
		const draw = draws(SEED + i);
		return thought(eightBends(draw), slip, draw);
	}).flat();
	line(slip, times);
	return times;
});
line('all', all);
process.exitCode = over ? 1 : 0;

function line(name: string, times: readonly Thought[]): void {
	const ms = times.flatMap((time) => (time.isDecision ? [time.ms] : []));
	const worst = times.reduce((a, b) => (b.ms > a.ms ? b : a));
	const [median, late] = [quantile(ms, 0.5), quantile(ms, 0.95)];
	const within = median <= LIMITS.median && worst.ms <= LIMITS.most;
	over ||= !within;
	const shown = [median, late, worst.ms].map((value) => value.toFixed(1).padStart(9)).join('');
	console.log(`${name.padEnd(20)}${shown}  ${worst.of.padEnd(28)} ${within ? 'within' : 'OVER'}`);
}
