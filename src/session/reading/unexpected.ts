import { at } from '../../maths/list.ts';
import { doubt, doubtLoaded, type GateDoubt as FilterDoubt } from '../../springback/gates.ts';
import { expectKnown, isUnlikely } from '../../springback/known-again.ts';
import { expectReading } from '../../springback/reading.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import { cutLength } from '../../tube/marks.ts';
import { checkReadingSd } from '../estimate/estimate.ts';
import { endBefore } from '../estimate/tube-at-work.ts';
import type { Expected, Reading } from '../log/events.ts';
import type { Doubt, State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import type { DoubtFact } from '../protocol/facts/index.ts';
import { dueCheck, expectCheck } from './check-reading.ts';
import { lookAt } from './look-at.ts';

/** Stopping and reading the dial, degrees. */
const DIAL_SD = 0.35;
/** A rotation further from what was asked than this is asked again, degrees. */
const ROTATION_DOUBT = 10;
/** Readings of a check this many standard deviations beyond its tolerance are asked again. */
const CHECK_DOUBT = 4;
/** A mark or a leg off by more divisions of the tape than this is asked again; the piece's length by more than this part of it. */
const MARK_DOUBT = 8;
const LENGTH_DOUBT = 0.02;

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
	const { tooling, tolerance } = state.start.job;
	switch (reading.of) {
		case 'loaded':
			return { value: reading.stop ?? reading.value, sd: DIAL_SD };
		case 'released':
		case 'pointer':
		case 'angle': {
			const apart = apartFrom(state, reading);
			return apart === null ? expectReading(state.filter, reading.of) : expectKnown(state.filter, apart);
		}
		case 'rotation':
			return { value: rotationNow(state, reading.bend ?? state.bend), sd: tolerance.rotation };
		case 'check':
			return expectCheck(state, reading.name ?? '');
		case 'length':
		case 'mark':
			return { value: lengthNow(state, reading), sd: tooling.tape };
	}
}

function reasonOf(state: State, reading: Reading, expected: Expected): DoubtFact[] | null {
	const { value } = reading;
	switch (reading.of) {
		case 'loaded':
			return byFilter(doubtLoaded(expected.value, value), value);
		case 'released':
		case 'pointer':
		case 'angle': {
			const apart = apartFrom(state, reading);
			if (apart === null) return byFilter(doubt(state.filter, reading.of, value), value);
			if (!isUnlikely(state.filter, apart, value)) return null;
			return [{ code: 'not-as-made', bend: reading.bend ?? state.bend, angle: apart.angle, value }];
		}
		case 'rotation': {
			const off = Math.abs(normalizeRotation(value - expected.value));
			return off > ROTATION_DOUBT ? [{ code: 'turn-off', asked: expected.value, off }] : null;
		}
		case 'check': {
			const { check } = dueCheck(state, reading.name ?? '');
			const sd = Math.hypot(expected.sd, checkReadingSd(state.start.job, check));
			if (Math.abs(value - expected.value) <= check.tolerance + CHECK_DOUBT * sd) return null;
			const { name, kind } = check;
			return [{ code: 'check-off', name, kind, expected: expected.value, value }, lookAt(state, check, value)];
		}
		case 'length':
		case 'mark': {
			const cut = reading.of === 'length' && !reading.evidence;
			const most = cut ? LENGTH_DOUBT * state.piece : MARK_DOUBT * state.start.job.tooling.tape;
			if (Math.abs(value - expected.value) <= most) return null;
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
		return markNow(state, bend) + state.start.job.tooling.markOffset - endBefore(state, bend);
	}
	if (reading.evidence === 'farEndToMark') return state.piece - markNow(state, bend);
	if (reading.of === 'mark') return markNow(state, bend);
	return cutLength(state.start.job, state.design.shape);
}
