import { meanOf } from '../../maths/list.ts';
import { made, pull } from '../../springback/filter.ts';
import { manyWrong, narrowBand, slow } from '../../springback/gates.ts';
import { knownAgain } from '../../springback/known-again.ts';
import { observe } from '../../springback/reading.ts';
import { timesCommon } from '../../springback/scatter.ts';
import { normalizeRotation } from '../../tube/angles.ts';
import { toolingOf } from '../../tube/dies.ts';
import { acceptance, atLimit, isMeasured, isOver, isShort, target } from '../advice/bend-check.ts';
import { isTakenUp } from '../advice/what-if.ts';
import { estimated } from '../estimate/estimate.ts';
import { endBefore } from '../estimate/tube-at-work.ts';
import { differ, recorrect } from '../plan/correction.ts';
import type { AngleEstimate } from '../protocol/asks.ts';
import { checksDue, learnFromCheck } from '../reading/check-reading.ts';
import { withChecksSetAside } from '../reading/checks-set-aside.ts';
import type { Reading } from './events.ts';
import type { BendState, Phase, State } from './state.ts';
import { bendAt, nextEntry, withBend } from './state.ts';

/**
 * `count`: how many independent readings it stands for, `numbers` of them given as numbers; `confirmed`: read again, and it stands;
 * `setAside`: how many others were not used.
 */
export interface CountedAs {
	count: 1 | 2;
	numbers: 1 | 2;
	confirmed: boolean;
	setAside: number;
}

export const COUNTED_AS_ONE: CountedAs = { count: 1, numbers: 1, confirmed: false, setAside: 0 };

export function takeReading(state: State, reading: Reading, weighed: CountedAs): State {
	const { of, value } = reading;
	const { count, confirmed, setAside } = weighed;
	const number = reading.bend ?? state.bend;
	switch (of) {
		case 'pointer': {
			const filter = observe(state.filter, 'pointer', value, { readings: count, confirmed, setAside });
			return withBend({ ...state, filter }, number, { pointer: value });
		}
		case 'mark':
			return evidenceTaken(withBend(state, number, { mark: value, taped: true, leg: null }), reading);
		case 'rotation':
			return evidenceTaken(withBend(state, number, { rotation: normalizeRotation(value), readBack: true }), reading);
		case 'length':
			return lengthTaken(state, reading, number);
		case 'loaded':
			return loadedTaken(state, reading);
		case 'released': {
			const filter = observe(state.filter, 'released', value, { readings: count, confirmed, setAside });
			return afterPull(withTold(withLastPull({ ...state, filter }, { released: value })));
		}
		case 'angle':
			return reading.evidence ? angleAgain(state, reading, weighed) : angleTaken(state, value, weighed);
		case 'check': {
			const name = reading.name ?? '';
			return nextCheck(learnFromCheck(state, name, value, count, confirmed));
		}
	}
}

function lengthTaken(state: State, reading: Reading, bend: number): State {
	if (reading.evidence === 'leg') {
		const mark = endBefore(state, bend) + reading.value - toolingOf(state.start.job, bend).markOffset;
		return evidenceTaken(withBend(state, bend, { mark, taped: false, leg: reading.value }), reading);
	}
	if (reading.evidence === 'farEndToMark') {
		return evidenceTaken(withBend(state, bend, { mark: state.piece - reading.value, taped: true, leg: null }), reading);
	}
	return { ...state, piece: reading.value };
}

/** Evidence about the tube changes what is left to do, as soon as a bend is made. */
function evidenceTaken(state: State, reading: Reading): State {
	if (!reading.evidence) return state;
	const kept = withChecksSetAside(state);
	return isBegun(kept) ? replanned(estimated(kept)) : kept;
}

export const isBegun = ({ bends }: State): boolean => bends.some(({ made }) => made !== null);

/** Corrects anew after something else than an accepted bend; nothing is said where nothing changes. */
export function replanned(state: State): State {
	if (!isBegun(state)) return state;
	const next = recorrect(state, { entry: nextEntry(state) });
	// Against what was last computed, not against old numbers kept by choice: that choice stands until something changes.
	return differ(next.plan.current, state.plan.corrected ?? state.plan.current) ? next : state;
}

function loadedTaken(state: State, { value, stop }: Reading): State {
	const bend = bendAt(state, state.bend);
	const asked = stop ?? value;
	const row = {
		entry: nextEntry(state),
		seat: bend.seats,
		pointer: bend.pointer,
		stop: asked,
		loaded: value,
		released: null,
		measured: [],
	};
	const pulled = withBend(withoutStaleChecks(state), state.bend, {
		pulls: [...bend.pulls, row],
		read: [],
		target: target(state),
	});
	return afterPull(withTold({ ...pulled, filter: pull(state.filter, asked, value), forced: false, aside: [] }));
}

/** What pulls and instruments say of the angle at work, before a check is taken. */
function withTold(state: State): State {
	return withBend(state, state.bend, toldBy(state.filter));
}

/** The angle at work as it is known now, and how rough hands are taken to be for that. */
export const toldBy = (filter: State['filter']) => ({ told: made(filter), toldAt: timesCommon(filter.scatter) });

/** Pull again where the tube lies as long as the dial alone shows it short, else measure. */
function afterPull(state: State): State {
	const again = acceptance(state).likelyShort && !atLimit(state);
	return { ...state, phase: again ? { at: 'pull' } : measurePhase(state) };
}

export function measurePhase(state: State): Extract<Phase, { at: 'measure' }> {
	return { at: 'measure', wanted: wantedReadings(state), got: [], must: false };
}

/**
 * A tube's first measurement: two independent readings. Little is known yet, so that a blunder would not stand out, and what they tell of
 * this tube serves every bend after it. Where many wrong numbers were seen, or the band is narrow for the finder, two every time; two, too, of a
 * bend that takes long.
 */
function wantedReadings(state: State): 1 | 2 {
	const { filter } = state;
	const { tolerance } = state.start.job;
	const one = isMeasured(state) && !manyWrong(filter) && !narrowBand(filter, tolerance) && !slow(filter, tolerance);
	return one ? 1 : 2;
}

/** `aside`: how many readings were set aside for it. */
export function noteReading(state: State, value: number, aside = 0): State {
	const phase = state.phase;
	const got = phase.at === 'measure' ? phase.got : [];
	const must = phase.at === 'measure' && phase.must;
	return { ...state, phase: { at: 'measure', wanted: 1, got: [...got, value], must, ...(aside > 0 ? { aside } : {}) } };
}

/** One more reading of a bend's angle, told beside what was asked: it counts with its own error, as independent of those before. */
function angleAgain(state: State, reading: Reading, { count, numbers, confirmed, setAside }: CountedAs): State {
	const { value } = reading;
	const number = reading.bend ?? state.bend;
	const bend = bendAt(state, number);
	const weight = { readings: count, confirmed, setAside };
	const after = (known: AngleEstimate | null) => known && knownAgain(state.filter, known, value, weight);
	const last = bend.pulls.length - 1;
	const told = withBend(state, number, {
		told: after(bend.told ?? bend.made),
		toldAt: timesCommon(state.filter.scatter),
		read: [...bend.read, ...Array<number>(numbers).fill(value)],
		pulls: bend.pulls.map((row, i) => (i === last ? { ...row, measured: [...row.measured, value] } : row)),
	});
	if (number === state.bend) {
		const read = evidenceTaken({ ...told, filter: observe(state.filter, 'angle', value, weight) }, reading);
		return state.phase.at === 'decide' ? afterAngle(read) : read;
	}
	const { suspended } = state;
	const waits =
		suspended?.bend === number
			? { ...suspended, made: knownAgain(state.filter, suspended.made, value, weight) }
			: suspended;
	return evidenceTaken({ ...told, suspended: waits }, reading);
}

function angleTaken(state: State, value: number, { count, numbers, confirmed, setAside }: CountedAs): State {
	const got = state.phase.at === 'measure' ? state.phase.got : [];
	const all = confirmed ? [value] : [...got, value];
	const mean = meanOf(all);
	const readings = confirmed ? count : all.length;
	const before = state.phase.at === 'measure' ? (state.phase.aside ?? 0) : 0;
	const filter = observe(state.filter, 'angle', mean, { readings, confirmed, setAside: setAside + before });
	const { pulls, read } = bendAt(state, state.bend);
	const now = withLastPull({ ...state, filter }, { measured: [...(pulls.at(-1)?.measured ?? []), ...all] });
	const given = confirmed ? Array<number>(numbers).fill(value) : all;
	return afterAngle(withTold(withBend(now, state.bend, { read: [...read, ...given] })));
}

/** Goes on by the dial; a first reading already given counts alone. */
export function skipMeasuring(state: State): State {
	const { phase } = state;
	const [noted] = phase.at === 'measure' ? phase.got : [];
	const aside = phase.at === 'measure' ? (phase.aside ?? 0) : 0;
	if (noted !== undefined) {
		return angleTaken({ ...state, phase: measurePhase(state) }, noted, { ...COUNTED_AS_ONE, setAside: aside });
	}
	return { ...state, byDial: true, phase: isShort(state) && !atLimit(state) ? { at: 'pull' } : { at: 'decide' } };
}

/** Checks are asked when the angle alone would be accepted. */
function afterAngle(state: State): State {
	if ((isShort(state) || isOver(state)) && !isTakenUp(state)) return { ...state, phase: { at: 'decide' } };
	// Measured again after its checks, it leaves them as they were read.
	return toChecks(
		state,
		checksDue(state, state.bend).filter((name) => state.checks[name] === undefined),
	);
}

export function nextCheck(state: State): State {
	return toChecks(state, state.phase.at === 'check' ? state.phase.queue.slice(1) : []);
}

function toChecks(state: State, queue: readonly string[]): State {
	return { ...state, phase: queue.length > 0 ? { at: 'check', queue } : { at: 'decide' } };
}

function withLastPull(state: State, change: Partial<BendState['pulls'][number]>): State {
	const { pulls } = bendAt(state, state.bend);
	return withBend(state, state.bend, {
		pulls: pulls.map((row, i) => (i === pulls.length - 1 ? { ...row, ...change } : row)),
	});
}

export function withCheck(state: State, name: string, check: { reading: number | null; skipped: boolean }): State {
	return { ...state, checks: { ...state.checks, [name]: check } };
}

/** Readings of checks that reach to the bend at work or beyond it: what they measured is about to change. */
export function withoutStaleChecks(state: State): State {
	const stale = state.design.checks.filter(({ after }) => after >= state.bend).map(({ check }) => check.name);
	const kept = Object.entries(state.checks).filter(([name]) => !stale.includes(name));
	return { ...state, checks: Object.fromEntries(kept) };
}
