import { made } from '../../springback/filter.ts';
import { WORTH_RISKING } from '../../springback/stop.ts';
import type { State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import type { TubeOutcome } from '../protocol/asks.ts';
import type { Reason } from '../protocol/facts/index.ts';
import { type Advised, adviseOnBend } from './bend-alone.ts';
import { acceptance, atLimit, target } from './bend-check.ts';
import { contradiction } from './contradiction.ts';
import { isWorthOpening, type Saving, savingTweak } from './going-back.ts';
import { leastBadOf, missedBy } from './least-bad.ts';
import { adviseMeasuring, notOnOneReading, surely, withoutOpening } from './surely.ts';
import { type TouchMore, touchMore } from './touch-more.ts';
import type { AdvisedOnTube, FoundBefore, TubeAdvice } from './tube-advice.ts';
import { adviseLeastBad, leftAsItIs } from './tube-missed.ts';
import { ifAccepted, ifOpened, isTakenUp, LITTLE_LEFT, tweaks } from './what-if.ts';

/** A state never changes, and one decision is asked for more than once. */
const KNOWN = new WeakMap<State, AdvisedOnTube>();

/** The advice on the bend at work, weighed against what the whole tube becomes by it. */
export function advisedAt(state: State): AdvisedOnTube {
	const found = KNOWN.get(state) ?? adviseOnTube(state);
	KNOWN.set(state, found);
	return found;
}

function adviseOnTube(state: State): AdvisedOnTube {
	const own = adviseOnBend(state);
	const accepted = ifAccepted(state);
	const contradicted = contradiction(state);
	if (contradicted !== null) return { ...adviseMeasuring(state, own, contradicted), accepted, tweaks: [] };
	const opened = own.open === undefined || accepted.within ? null : ifOpened(state, own.open);
	const alone = opened === null ? own : openedOrNot(state, own, accepted, opened);
	const found = accepted.within ? [] : tweaks(state, accepted);
	const rescue = leastBadOf(state, { accepted, opened, tweaks: found }, alone.advice === 'scrap');
	const known = { accepted, tweaks: found, ...(rescue === null ? {} : { rescue }) };
	return { ...surely(state, adviceOfAll(state, alone, known)), ...known };
}

function adviceOfAll(state: State, alone: Advised, { accepted, tweaks: found, rescue }: FoundBefore): TubeAdvice {
	if (isTakenUp(state, accepted)) return adviseTaking(state, alone, accepted);
	if (alone.advice === 'pull' || alone.advice === 'relieve') return alone;
	if (isNeededCloser(state, accepted)) return pulledCloser(state, alone);
	const touch = alone.advice === 'accept' ? touchMore(state, accepted) : null;
	if (touch !== null) return givenMore(state, alone, accepted, touch);
	const saving = alone.advice === 'accept' ? savingTweak(state, accepted, found) : null;
	if (saving !== null) return goBack(state, alone, accepted, saving);
	const known = { accepted, tweaks: found };
	const advised = rescue === undefined ? leftAsItIs(state, alone, known) : adviseLeastBad(state, alone, rescue, known);
	return advised.advice === 'scrap' ? notOnOneReading(state, advised, alone) : advised;
}

/** Opened, or not; what taking the bend as it is would come to is said either way. */
function openedOrNot(state: State, own: Advised, accepted: TubeOutcome, opened: TubeOutcome): Advised {
	if (!isWorthOpening(state, accepted, opened)) return notOpened(state, own, accepted, opened);
	const why: Reason[] = [{ code: 'fits-only-opened' }, { code: 'still-missed', ...missedBy(state, accepted) }];
	return { ...own, reason: own.reason.flatMap((fact) => (fact.code === 'go-easy-opening' ? [...why, fact] : [fact])) };
}

/** A bend is not worked back where even that would not make the tube fit, nor for little: then what it would bring is said. */
function notOpened(state: State, { open: _, ...own }: Advised, accepted: TubeOutcome, opened: TubeOutcome): Advised {
	const reason = withoutOpening(own.reason);
	if (!opened.within) return { ...own, advice: 'accept', reason };
	const left: Reason = { code: 'left-unopened', to: target(state) };
	const missed: Reason = { code: 'still-missed', ...missedBy(state, accepted) };
	return { ...own, advice: 'accept', reason: [...reason.slice(0, -1), left, missed, ...reason.slice(-1)] };
}

/** A bend outside its tolerance is taken as it is where the tube still fits with it. */
function adviseTaking(state: State, { open: _, ...alone }: Advised, accepted: TubeOutcome): Advised {
	const last = state.bend === state.bends.length;
	const { angle } = made(state.filter);
	const reason: Reason[] = [
		...state.aside,
		{ code: 'taken-as-it-is', angle, target: target(state), last },
		{ code: 'still-missed', ...missedBy(state, accepted) },
	];
	return { ...alone, advice: 'accept', reason };
}

/** The next division may pass the bend's tolerance, and near as the bend is, it leaves too little room for the tube. */
function isNeededCloser(state: State, accepted: TubeOutcome): boolean {
	const { nextTooFar } = acceptance(state);
	if (nextTooFar === null || accepted.left <= LITTLE_LEFT || atLimit(state)) return false;
	return nextTooFar <= WORTH_RISKING * state.start.job.risk;
}

function pulledCloser(state: State, alone: Advised): TubeAdvice {
	const wanted = target(state);
	const by = wanted - made(state.filter).angle;
	const { under, nextTooFar } = acceptance(state);
	const reason: Reason[] = [
		...state.aside,
		{ code: 'bend-short', by, chance: under },
		{ code: 'needed-closer', chance: nextTooFar ?? 0 },
	];
	return { ...alone, advice: 'pull', wanted, reason };
}

function givenMore(state: State, alone: Advised, accepted: TubeOutcome, more: TouchMore): TubeAdvice {
	const { by, to, before, after } = more;
	const reason: Reason[] = [
		...state.aside,
		{ code: 'touch-more', by, to, before, chance: after },
		{ code: 'still-missed', ...missedBy(state, accepted) },
	];
	return { ...alone, advice: 'pull', wanted: to, reason };
}

type GoBack = Advised & Required<Pick<AdvisedOnTube, 'of' | 'how'>>;

function goBack(state: State, alone: Advised, accepted: TubeOutcome, { bend, by, before, after }: Saving): GoBack {
	const reason: Reason[] = [
		...state.aside,
		{ code: 'reopen-would', bend, by, before, chance: after },
		{ code: 'still-missed', ...missedBy(state, accepted) },
	];
	return { ...alone, advice: 'reopen', of: bend, how: 'pull', reason };
}

/**
 * What a made bend that is gone back to is wanted to become: what makes the tube fit, where that is known, else what it was last wanted
 * to be. A bend taken short is pulled again to what it was short of.
 */
export function wantedAgain(state: State, bend: number, how: 'pull' | 'relieve'): number {
	const { target, shortOf } = bendAt(state, bend);
	const before = how === 'pull' && shortOf !== null ? shortOf : target;
	if (state.phase.at !== 'decide') return before;
	const tweak = advisedAt(state).tweaks.find((each) => each.bend === bend && each.do === how);
	return tweak?.within ? tweak.expect.angle : before;
}
