import { at } from '../../maths/list.ts';
import { foresee } from '../../springback/foresight.ts';
import { bentAsOf, isAsDrawn } from '../../tube/bent-as.ts';
import { dieOf, diesAtWork, hasSeveralDies, toolingOf } from '../../tube/dies.ts';
import { swing } from '../../tube/swing.ts';
import { around } from '../../tube/turns.ts';
import { endBefore, tubeAtWork } from '../estimate/tube-at-work.ts';
import { growthOf } from '../log/start.ts';
import type { State } from '../log/state.ts';
import { bendAt } from '../log/state.ts';
import { type CautionFact, GENERAL_CAUTIONS } from '../protocol/facts/caution.ts';
import { stopRequest } from './bend-check.ts';
import { tellingPays } from './worth-telling.ts';

/** What to mind at this seat. */
export function cautionsAt(state: State): CautionFact[] {
	const bend = bendAt(state, state.bend);
	const first = state.bends.every((b) => b.seats === 0);
	return [
		...dieCaution(state),
		...(first ? atTheFirst(state) : []),
		...(bend.seats === 0 && isOpposite(state) ? [{ code: 'opposite-face' as const }] : []),
		...tellingPays(state),
		...roomCautions(state),
		bend.seats === 0 ? swingCaution(state) : { code: 'seat-as-before' },
	];
}

function atTheFirst(state: State): CautionFact[] {
	const { job } = state.start;
	const as = bentAsOf(job);
	return [
		...GENERAL_CAUTIONS.map((code) => ({ code })),
		{ code: 'cut-length', length: state.piece },
		...(isAsDrawn(as) ? [] : [{ code: 'bent-as' as const, ...as }]),
		...growthCautions(state),
		...narrowCaution(state),
	];
}

/** Which growth the marks allow for that is only expected, of each die at work. */
function growthCautions({ start, plan }: State): CautionFact[] {
	const { job, corners } = start;
	const { dies, ...own } = growthOf(start);
	return diesAtWork(job).flatMap((die): CautionFact[] => {
		const { value, from } = dies?.[die] ?? own;
		const allowedFor = corners === undefined ? plan.before !== null : from === 'expected' && value !== 1;
		return allowedFor ? [{ code: 'growth-expected', growth: value, ...(hasSeveralDies(job) ? { die } : {}) }] : [];
	});
}

/** Which die goes in, where it is another than the tube was last put into. */
function dieCaution(state: State): CautionFact[] {
	const { job } = state.start;
	if (!hasSeveralDies(job)) return [];
	const { die, clr } = toolingOf(job, state.bend);
	const from = lastSet(state);
	const before = from === null ? null : dieOf(job, from);
	return before === die ? [] : [{ code: 'change-die', die, clr, from: before }];
}

/** The bend (from 1) that the tube was last set for; null before the first. */
function lastSet({ entries }: State): number | null {
	for (const { events, void: isVoid } of entries.toReversed()) {
		const set = isVoid ? undefined : events.find((event) => event.type === 'tube-set');
		if (set) return set.bend;
	}
	return null;
}

function isOpposite(state: State): boolean {
	const rotations = state.plan.current.map((numbers) => numbers.rotation);
	return state.bend > 1 && around(state.start.job, rotations, state.bend).face === 'opposite';
}

/** From so many pulls a bend on it is said beforehand what the band costs. */
const MANY_PULLS = 4;

/** What a narrow band will cost, and what band this shop holds in two pulls; none where it costs no more than usual. */
function narrowCaution(state: State): CautionFact[] {
	const { pulls, risk, holds } = foresee(state.filter, stopRequest(state));
	if (pulls < MANY_PULLS) return [];
	const { under, over } = state.start.job.tolerance;
	return [{ code: 'narrow-band-costs', under, over, pulls, risk, holds }];
}

/** Where the plan leaves less straight tube than the machine needs at this bend. */
function roomCautions(state: State): CautionFact[] {
	const { clamp, follow } = toolingOf(state.start.job, state.bend);
	const bend = bendAt(state, state.bend);
	const mark = bend.mark ?? at(state.plan.current, state.bend - 1).fromStart;
	const before = mark - endBefore(state, state.bend);
	const behind = state.piece - tubeAtWork(state, state.plan.current).used;
	const short: CautionFact[] = before < clamp ? [{ code: 'clamp-room', needs: clamp, is: before }] : [];
	if (state.bend < state.bends.length || behind >= follow) return short;
	return [...short, { code: 'follow-room', needs: follow, is: behind }];
}

/** What to keep clear of the made part, which turns with the die. */
function swingCaution(state: State): CautionFact {
	const { job } = state.start;
	const [{ tube }, tooling] = [job, toolingOf(job, state.bend)];
	const { shape, trimStart } = tubeAtWork(state, state.plan.current);
	const { reach, above, below } = swing(shape, state.bend, { od: tube.od, trim: Math.max(0, trimStart) });
	// A flat tube lies in the machine's plane.
	const height = (length: number) => (length > tube.od ? length : null);
	const hits = tooling.floor !== null && Math.max(above, below) > tooling.floor;
	return {
		code: 'swing',
		reach,
		above: height(above),
		below: height(below),
		floor: hits ? tooling.floor : null,
	};
}
