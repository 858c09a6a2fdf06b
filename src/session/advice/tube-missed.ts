/** What is advised, and said, of a tube that is missed with the bend at work taken as it is. */
import { at } from '../../maths/list.ts';
import type { State } from '../log/state.ts';
import type { LeastBad, Tweak } from '../protocol/asks.ts';
import type { Missed, Reason } from '../protocol/facts/index.ts';
import type { Advised } from './bend-alone.ts';
import { isHopeless, missedBy } from './least-bad.ts';
import type { ToChooseFrom } from './tube-advice.ts';

/** What is said of the bend, without the checks whose miss follows. */
const besideMissed = (reason: readonly Reason[], { checks }: Missed): Reason[] =>
	reason.filter(
		(fact) => fact.code !== 'checks-outside' || !fact.names.every((name) => checks.some((each) => each.name === name)),
	);

/** A tube that is missed with the bend taken, where no way to mend it is worth a set-up: both are said. */
export function leftAsItIs(state: State, alone: Advised, { accepted, tweaks: found }: ToChooseFrom): Advised {
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
export function adviseLeastBad(state: State, alone: Advised, { best, stock }: LeastBad, known: ToChooseFrom): Advised {
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
