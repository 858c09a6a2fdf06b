import { at } from '../../maths/list.ts';
import { heldSd } from '../../springback/filter.ts';
import { doubtLoaded, doubtReading, type GateDoubt as FilterDoubt } from '../../springback/gates.ts';
import { expectKnown, isUnlikely } from '../../springback/known-again.ts';
import { expectReading } from '../../springback/reading.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import { toolingOf } from '../../tube/dies.ts';
import { cutLength } from '../../tube/marks.ts';
import { checkReadingSd, markSd, turnSd, type WhoseHands } from '../estimate/hands.ts';
import { endBefore } from '../estimate/tube-at-work.ts';
import type { Expected, Reading } from '../log/events.ts';
import type { Doubt, State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import type { DoubtFact } from '../protocol/facts/index.ts';
import { measuredIn } from '../protocol/measured-in.ts';
import { dueCheck, expectCheck } from './check-reading.ts';
import { lookAt } from './look-at.ts';
import { slipOf } from './slip.ts';

/**
 * A reading further off than so many of its own standard deviations is asked again: one in 7000 right ones is, and where hands are twice as
 * rough as they are known to be, one in 20.
 */
const DOUBT = 4;
/** How far off a cut or a mark may be for reasons nobody tells, in divisions of the tape: a saw that wandered, a line drawn thick. */
const TAPE_SD = 1;
/** Nobody tells a tube set otherwise for less than this, degrees. */
const LEAST_TURN = 3;
/** A dial under load is never asked again for less than a degree. */
const LEAST_DIAL = 1;

export interface Doubted {
	expected: Expected;
	reason: DoubtFact[];
}

/** Why a reading should be asked again before it counts, or null. Never says that a reading is wrong, only that it is unexpected. */
export function whyUnexpected(state: State, reading: Reading): Doubted | null {
	const expected = expectedOf(state, reading);
	const reason = reasonOf(state, reading, expected);
	return reason === null ? null : { expected, reason };
}

/** The same of a reading that is being asked again: what else was told since may explain a check, or change what it goes against. */
export function whyUnexpectedNow(
	state: State,
	{ reading, expected, reason }: Doubt,
): Pick<Doubt, 'expected' | 'reason'> {
	if (reading.of !== 'check') return { expected, reason };
	const now = expectedOf(state, reading);
	const still = reasonOf(state, reading, now);
	return { expected: now, reason: still ?? [{ code: 'explained-since' }] };
}

export function expectedOf(state: State, reading: Reading): Expected {
	const { start } = state;
	switch (reading.of) {
		case 'loaded':
			return { value: reading.stop ?? reading.value, sd: heldSd(state.filter) };
		case 'released':
		case 'pointer':
		case 'angle': {
			const apart = apartFrom(state, reading);
			return apart === null ? expectReading(state.filter, reading.of) : expectKnown(state.filter, apart);
		}
		case 'rotation':
			return { value: rotationNow(state, reading.bend ?? state.bend), sd: turnSd(start) };
		case 'check':
			return expectCheck(state, reading.name ?? '');
		case 'length':
		case 'mark':
			return { value: lengthNow(state, reading), sd: lengthSd(start, reading) };
	}
}

/** What was measured on the bent tube hangs on where its bends begin and end, which nobody sees. */
function lengthSd(shop: WhoseHands, { evidence }: Reading): number {
	const divisions = evidence === 'leg' || evidence === 'farEndToMark' ? 2 * TAPE_SD : TAPE_SD;
	return Math.hypot(markSd(shop), divisions * shop.job.tooling.tape);
}

/** Why it is doubted, with the slip that would explain it. */
function reasonOf(state: State, reading: Reading, expected: Expected): DoubtFact[] | null {
	const reason = doubtOf(state, reading, expected);
	if (reason === null || reading.of === 'rotation') return reason;
	const { of, name } = reading;
	const measure = measuredIn(of, of === 'check' ? dueCheck(state, name ?? '').check.kind : undefined);
	if (measure === 'ratio') return reason;
	const units = measure === 'length' ? state.start.job.units : null;
	const slip = slipOf(
		reading.value,
		{ value: expected.value, sd: Math.hypot(expected.sd, ownSd(state, reading)) },
		units,
	);
	const [first, ...rest] = reason;
	const { dialStep } = state.start.job.tooling;
	// A tenth of whatever a snug dial shows lies near its zero, and is no number that a hand would read off it.
	if (slip !== null && of === 'pointer' && Math.abs(slip.would) < dialStep / 2) return reason;
	return slip === null || first === undefined ? reason : [first, { code: 'slip', ...slip, measure }, ...rest];
}

/** The error of the reading itself, where what is expected leaves it out. */
function ownSd(state: State, { of, name }: Reading): number {
	return of === 'check' ? checkReadingSd(state.start, dueCheck(state, name ?? '').check) : 0;
}

function doubtOf(state: State, reading: Reading, expected: Expected): DoubtFact[] | null {
	const { value } = reading;
	switch (reading.of) {
		case 'loaded':
			return byFilter(doubtLoaded(expected.value, value, Math.max(LEAST_DIAL, DOUBT * expected.sd)), value);
		case 'released':
		case 'pointer':
		case 'angle': {
			const apart = apartFrom(state, reading);
			if (apart === null) return byFilter(doubtReading(state.filter, reading.of, value), value);
			if (!isUnlikely(state.filter, apart, value)) return null;
			return [{ code: 'not-as-made', bend: reading.bend ?? state.bend, angle: apart.angle, value }];
		}
		case 'rotation': {
			const off = Math.abs(normalizeRotation(value - expected.value));
			return off > Math.max(LEAST_TURN, DOUBT * expected.sd)
				? [{ code: 'turn-off', asked: expected.value, off }]
				: null;
		}
		case 'check': {
			const { check } = dueCheck(state, reading.name ?? '');
			const sd = Math.hypot(expected.sd, ownSd(state, reading));
			if (Math.abs(value - expected.value) <= check.tolerance + DOUBT * sd) return null;
			const { name, kind } = check;
			return [{ code: 'check-off', name, kind, expected: expected.value, value }, lookAt(state, check, value)];
		}
		case 'length':
		case 'mark': {
			if (Math.abs(value - expected.value) <= DOUBT * expected.sd) return null;
			return [{ code: 'length-off', expected: expected.value, value }];
		}
	}
}

/** What the filter doubts, as a fact about this value. */
function byFilter(doubted: FilterDoubt | null, value: number): DoubtFact[] | null {
	if (doubted === null) return null;
	switch (doubted.by) {
		case 'stop':
			return [{ code: 'off-the-stop', stop: doubted.stop, value }];
		case 'expectation':
			return [{ code: 'not-expected', expected: doubted.expected, sd: doubted.sd }];
		default: {
			const { by, held, inside } = doubted;
			return [{ code: by, value, held, ...(inside === undefined ? {} : { inside }) }];
		}
	}
}

/** What is known of a bend that is not at work, of which an angle is told; null: the filter knows it. */
function apartFrom(state: State, { of, bend = state.bend, evidence }: Reading): AngleEstimate | null {
	if (of !== 'angle' || evidence === undefined || bend === state.bend) return null;
	const { made, told } = bendAt(state, bend);
	return made ?? told;
}

function rotationNow(state: State, bend: number): number {
	return bendAt(state, bend).rotation ?? at(state.plan.current, bend - 1).rotation;
}

function markNow(state: State, bend: number): number {
	return bendAt(state, bend).mark ?? at(state.plan.current, bend - 1).fromStart;
}

/** A length that the plan or the tube as it stands leads one to expect. */
function lengthNow(state: State, reading: Reading): number {
	const bend = reading.bend ?? state.bend;
	if (reading.evidence === 'leg') {
		return markNow(state, bend) + toolingOf(state.start.job, bend).markOffset - endBefore(state, bend);
	}
	if (reading.evidence === 'farEndToMark') return state.piece - markNow(state, bend);
	if (reading.of === 'mark') return markNow(state, bend);
	return cutLength(state.start.job, state.design.shape);
}
