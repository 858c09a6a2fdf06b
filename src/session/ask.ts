import { at } from '../maths/list.ts';
import { made, newSeat, zeroOf } from '../springback/filter.ts';
import { DIAL_FAR_OFF, manyWrong, narrowBand } from '../springback/gates.ts';
import { expectReading } from '../springback/reading.ts';
import { wrongPart } from '../springback/scatter.ts';
import { expectedSpringback } from '../springback/stop.ts';
import { dieOf, hasSeveralDies } from '../tube/dies.ts';
import { around, tubeTurn } from '../tube/turns.ts';
import { formatTape } from '../units/tape.ts';
import { isMeasured, stopRequest, suggestion, target } from './advice/bend-check.ts';
import { cautionsAt } from './advice/cautions.ts';
import { notStill } from './advice/still.ts';
import { advisedAt } from './advice/whole-tube.ts';
import { endBefore } from './estimate/tube-at-work.ts';
import type { Event } from './log/events.ts';
import { knownOf } from './log/start.ts';
import type { Doubt, Phase, State } from './log/state.ts';
import { bendAt, largestLoaded, nextEntry } from './log/state.ts';
import type { Ask, CheckAsk, ConfirmAsk, DecideAsk, MeasureAsk, PullAsk, SetAsk } from './protocol/asks.ts';
import type { PullFact, TwiceFact } from './protocol/facts/index.ts';
import { knownFrom } from './protocol/facts/known.ts';
import { dueCheck, expectCheck, uncutTrim } from './reading/check-reading.ts';
import { whyUnexpectedNow } from './reading/unexpected.ts';

/** What is asked next; null when the session is finished. */
export function ask(state: State): Ask | null {
	const { phase } = state;
	switch (phase.at) {
		case 'set':
			return setAsk(state);
		case 'pull':
			return pullAsk(state);
		case 'measure':
			return measureAsk(state, phase);
		case 'confirm':
			return confirmAsk(state, phase.doubt);
		case 'check':
			return checkAsk(state, at(phase.queue, 0));
		case 'decide':
			return decideAsk(state);
		case 'done':
			return null;
	}
}

function setAsk(state: State): SetAsk {
	const { start, design, plan } = state;
	const bend = bendAt(state, state.bend);
	const index = state.bend - 1;
	const numbers = at(plan.current, index);
	const fromStart = bend.mark ?? numbers.fromStart;
	const rotation = bend.rotation ?? numbers.rotation;
	const rotations = plan.current.map((n, i) => state.bends[i]?.rotation ?? n.rotation);
	const was = at(plan.before ?? plan.current, index);
	const seat = bend.seats + 1;
	return {
		ask: 'set',
		entry: nextEntry(state),
		bend: state.bend,
		bends: state.bends.length,
		target: target(state),
		design: at(design.shape.bends, index).angle,
		seat,
		mark: {
			fromStart,
			fromFarEnd: state.piece - fromStart,
			fromLastBend: state.bend === 1 ? null : fromStart - endBefore(state, state.bend),
			tape: formatTape(fromStart, start.job.tooling.tape, start.job.units),
			moved: fromStart - at(design.marks, index),
		},
		rotation,
		tubeTurn: seat > 1 ? { degrees: 0, way: 'none' } : tubeTurn(rotation, state.bend),
		...around(start.job, rotations, state.bend),
		...(hasSeveralDies(start.job) ? { die: dieOf(start.job, state.bend) } : {}),
		pointer: seat === 1 ? zeroOf(state.filter) : expectReading(newSeat(state.filter), 'pointer').value,
		plan: plan.plan,
		...(notStill(state) === null ? { still: true as const } : {}),
		was: { target: was.angle, fromStart: was.fromStart, rotation: was.rotation },
		cautions: cautionsAt(state),
	};
}

function pullAsk(state: State): PullAsk {
	const suggested = suggestion(state);
	const pulls = state.bends.reduce((sum, bend) => sum + bend.pulls.length, 0);
	const { expect } = suggested;
	const { target: aim, over } = stopRequest(state);
	const by = expectedSpringback(state.filter, suggested);
	const zero = zeroOf(state.filter);
	const why: PullFact[] = [
		{
			code: 'springback-expected',
			by,
			to: expect.angle,
			sd: expect.sd,
			known: knownFrom(knownOf(state.start, state.bend), pulls),
			...(zero === 0 ? {} : { zero }),
		},
		{ code: 'chance-over', limit: aim + over, chance: suggested.risk },
		...notBeyond(state, suggested),
		...farOff(state),
		...(suggested.limit ? [{ code: 'stop-capped' as const }] : []),
	];
	return {
		ask: 'pull',
		entry: nextEntry(state),
		bend: state.bend,
		pull: bendAt(state, state.bend).pulls.length + 1,
		target: target(state),
		design: at(state.design.shape.bends, state.bend - 1).angle,
		...suggested,
		reason: saidAtDecide(state) ? why : [...state.aside, ...why],
	};
}

/** Why the stop is not beyond all that the bend was held at, where it is not; the machine's largest angle has its own fact. */
function notBeyond({ filter, bends, bend }: State, { stop, limit }: { stop: number; limit: boolean }): PullFact[] {
	const held = largestLoaded(at(bends, bend - 1));
	if (stop > held || limit) return [];
	if (filter.moved !== 0) return [{ code: 'dial-moved', held, by: filter.moved }];
	return filter.held < held ? [{ code: 'opened-since', held }] : [];
}

/** Said of a dial that was confirmed to stand far too high: a bend is nearly lost where that number was keyed wrong twice. */
function farOff({ filter: { moved } }: State): PullFact[] {
	return moved < DIAL_FAR_OFF ? [] : [{ code: 'dial-far-off', by: moved }];
}

/** Whether the reason of a `decide`, which the operator has answered since, has said already what was set aside. */
function saidAtDecide({ entries }: State): boolean {
	const events = entries.flatMap((entry) => (entry.void ? [] : entry.events));
	const last = (type: Event['type']) => events.findLastIndex((event) => event.type === type);
	return last('pull-chosen') > last('doubt-settled');
}

function measureAsk(state: State, { wanted, first }: Extract<Phase, { at: 'measure' }>): MeasureAsk {
	return {
		ask: 'measure',
		entry: nextEntry(state),
		bend: state.bend,
		expect: made(state.filter),
		readings: wanted,
		reason: wanted === 2 ? [whyTwo(state)] : [],
		...(first ? { cautions: [{ code: 'go-easy-opening' as const }] } : {}),
	};
}

/** Why one reading alone is not built on. */
function whyTwo(state: State): TwiceFact {
	if (!isMeasured(state)) return { code: 'first-measurement' };
	if (!manyWrong(state.filter)) {
		const narrow = narrowBand(state.filter, state.start.job.tolerance);
		return narrow ? { code: 'narrow-band' } : { code: 'many-pulls', pulls: state.filter.pulls };
	}
	return { code: 'many-wrong', part: wrongPart(state.filter.scatter) };
}

function confirmAsk(state: State, doubt: Doubt): ConfirmAsk {
	const { of, value, name, bend, evidence } = doubt.reading;
	const { expected, reason } = whyUnexpectedNow(state, doubt);
	return {
		ask: 'confirm',
		entry: nextEntry(state),
		of,
		reading: value,
		expect: expected,
		reason: [...reason],
		...(name === undefined ? {} : { name }),
		...(bend === undefined ? {} : { bend }),
		...(evidence === undefined ? {} : { evidence }),
	};
}

function checkAsk(state: State, name: string): CheckAsk {
	const { check, design } = dueCheck(state, name);
	const trim = uncutTrim(state, check);
	return {
		ask: 'check',
		entry: nextEntry(state),
		name,
		kind: check.kind,
		expect: expectCheck(state, name),
		design,
		tolerance: check.tolerance,
		...(Math.abs(trim) < check.tolerance / 100 ? {} : { includes: trim }),
	};
}

function decideAsk(state: State): DecideAsk {
	const { open, of: goBackTo, again, how, limit, advice, reason, wanted: _, ...known } = advisedAt(state);
	const of = goBackTo ?? again;
	return {
		ask: 'decide',
		entry: nextEntry(state),
		bend: state.bend,
		advice,
		made: made(state.filter),
		target: target(state),
		design: at(state.design.shape.bends, state.bend - 1).angle,
		...(of === undefined ? {} : { of }),
		...(how === undefined ? {} : { how }),
		...(open === undefined ? {} : { open, to: target(state) }),
		limit,
		reason,
		...known,
	};
}
