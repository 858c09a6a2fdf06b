import { at } from '../../maths/list.ts';
import { made } from '../../springback/filter.ts';
import { WORTH_RISKING } from '../../springback/stop.ts';
import type { State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import type { LeastBad, TubeOutcome, Tweak } from '../protocol/asks.ts';
import type { Missed, Reason } from '../protocol/facts/index.ts';
import type { ToMeasure } from '../protocol/kinds.ts';
import { type Advised, adviseOnBend } from './bend-alone.ts';
import { acceptance, atLimit, target } from './bend-check.ts';
import { type Contradiction, contradiction, IN_DOUBT } from './contradiction.ts';
import { isWorthOpening, type Saving, savingTweak } from './going-back.ts';
import { isHopeless, leastBadOf, missedBy } from './least-bad.ts';
import { isHardlyKnown, isReadTwice, secondLook, toldOnce } from './second-look.ts';
import { type TouchMore, touchMore } from './touch-more.ts';
import { ifAccepted, ifOpened, isTakenUp, LITTLE_LEFT, tweaks } from './what-if.ts';

export interface AdvisedOnTube extends Advised {
	of?: number;
	how?: 'pull' | 'relieve';
	/** With advice `pull` for a bend that would do by itself: the angle wanted of it now. */
	wanted?: number;
	/** With advice `measure`: what to read again. */
	again?: ToMeasure;
	accepted: TubeOutcome;
	tweaks: Tweak[];
	rescue?: LeastBad;
}

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

type ToChooseFrom = Pick<AdvisedOnTube, 'accepted' | 'tweaks'>;
type FoundBefore = ToChooseFrom & Pick<AdvisedOnTube, 'rescue'>;
type Plain = Omit<AdvisedOnTube, keyof FoundBefore>;

function adviceOfAll(state: State, alone: Advised, { accepted, tweaks: found, rescue }: FoundBefore): Plain {
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

/** What costs a set-up, or the tube, does not rest on one reading, or on readings that hardly go with each other, nor is a bend taken, or pulled closer for the tube's sake, on one that is half disbelieved. */
function surely(state: State, advised: Plain): Plain {
	const { advice, of: bend = state.bend } = advised;
	const angle = { kind: 'angle' as const, bend };
	if (advice === 'measure' || (advice === 'pull' && advised.wanted === undefined)) return advised;
	if (advice === 'accept' || advice === 'pull') {
		return isHardlyKnown(state) ? adviseMeasuringFirst(state, advised, angle, 'take') : advised;
	}
	const doubtful = contradiction(state, IN_DOUBT);
	if (doubtful !== null) return adviseMeasuring(state, advised, doubtful);
	if (advice === 'scrap') return advised;
	const again = toldOnce(state) ?? (isReadTwice(state, bend) ? null : angle);
	const before = advice === 'relieve' ? 'open' : 'go-back';
	return again === null ? advised : adviseMeasuringFirst(state, advised, again, before);
}

type Before = 'take' | 'open' | 'go-back';

function adviseMeasuringFirst(state: State, advised: Plain, again: ToMeasure, before: Before): Plain {
	const { open: _, of: __, how: ___, ...rest } = advised;
	const { kind, bend = state.bend } = again;
	const first: Reason = { code: 'measure-first', bend, before, ...(kind === 'angle' ? {} : { again }) };
	return { ...rest, advice: 'measure', again, reason: [first, ...withoutOpening(advised.reason).filter(isNoOrder)] };
}

/** What to do with the bend is not told beside that it is to be measured first. */
const isNoOrder = ({ code }: Reason) => code !== 'needed-closer' && code !== 'touch-more' && code !== 'taken-as-it-is';

/** Without how to open the bend. */
const withoutOpening = (reason: readonly Reason[]) =>
	reason.filter(({ code }) => code !== 'open-by' && code !== 'go-easy-opening');

/** Of readings that cannot all be right the likeliest to be wrong is taken again before anything rests on it. */
function adviseMeasuring(state: State, { limit }: Advised, { again, reason }: Contradiction): Plain {
	return { advice: 'measure', again, limit, reason: [...state.aside, reason] };
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

/** Where what the tube would be given up for rests on one reading, that is read again first. */
function notOnOneReading(state: State, advised: Advised, alone: Advised): Advised & Pick<AdvisedOnTube, 'again'> {
	const again = secondLook(state, alone.advice === 'scrap' ? 'bend' : 'tube');
	if (again === null) return advised;
	const first: Reason = { code: 'measure-first', bend: again.bend ?? state.bend, before: 'scrap' };
	return { ...advised, advice: 'measure', again, reason: [first, ...advised.reason] };
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

function pulledCloser(state: State, alone: Advised): Plain {
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

function givenMore(state: State, alone: Advised, accepted: TubeOutcome, more: TouchMore): Plain {
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

/** What is said of the bend, without the checks whose miss follows. */
const besideMissed = (reason: readonly Reason[], { checks }: Missed): Reason[] =>
	reason.filter(
		(fact) => fact.code !== 'checks-outside' || !fact.names.every((name) => checks.some((each) => each.name === name)),
	);

/** A tube that is missed with the bend taken, where no way to mend it is worth a set-up: both are said. */
function leftAsItIs(state: State, alone: Advised, { accepted, tweaks: found }: ToChooseFrom): Advised {
	const way = found.find(({ within }) => within);
	const isSaid = alone.reason.some(({ code }) => code === 'still-missed');
	if (alone.advice !== 'accept' || accepted.within || way === undefined || isSaid) return alone;
	const { bend, do: how, by } = way;
	const missed = missedBy(state, accepted);
	const reason: Reason[] = [
		...besideMissed(alone.reason, missed),
		{ code: 'still-missed', ...missed },
		{ code: 'nearest', fits: true, how: 'reopen', bend, by: how === 'pull' ? by : -by },
	];
	return { ...alone, reason };
}

/** Of the largest miss when the bend is taken: only a way that leaves no more of it is told beside the advice to take it. */
const CLOSER = 0.75;

/** Says what cannot be met; gives the piece up where even the best is another tube. */
function adviseLeastBad(state: State, alone: Advised, { best, stock }: LeastBad, known: ToChooseFrom): Advised {
	const way: Reason = { code: 'nearest', fits: best.within, ...wayTo(best, known.tweaks) };
	const nearest: Reason[] = [way, { code: 'still-missed', ...missedBy(state, best) }];
	const left: Reason = {
		code: 'stock-left',
		behind: stock.behind,
		again: stock.again,
		before: at(stock.straights, 0),
	};
	if (alone.advice === 'scrap') return { ...alone, reason: [...alone.reason, ...nearest, left] };
	// A bend that only this machine cannot pull further is no reason to give the tube up.
	if (!alone.limit && isHopeless(best, state.piece)) {
		const { open: _, ...plain } = alone;
		return { ...plain, advice: 'scrap', reason: [...nearest, { code: 'give-up' }, left] };
	}
	const missed = missedBy(state, known.accepted);
	const taken: Reason[] = [
		{ code: 'nearest', fits: false, how: 'accept', bend: state.bend },
		{ code: 'still-missed', ...missed },
	];
	const isCloser = best.do !== 'accept' && best.left <= CLOSER * known.accepted.left;
	return { ...alone, reason: [...besideMissed(alone.reason, missed), ...taken, ...(isCloser ? [way] : [])] };
}

type NearestWay = Pick<Extract<Reason, { code: 'nearest' }>, 'how' | 'bend' | 'by'>;

/** What has to be done for the least bad: it need not be what is advised for the bend at work. `by` below 0: to open it. */
function wayTo({ do: how, bend, left }: LeastBad['best'], found: readonly Tweak[]): NearestWay {
	const tweak = how === 'reopen' ? found.find((each) => each.bend === bend && each.left === left) : undefined;
	return { how, bend, ...(tweak ? { by: tweak.do === 'pull' ? tweak.by : -tweak.by } : {}) };
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
