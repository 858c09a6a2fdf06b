import { at } from '../../maths/list.ts';
import { foresee } from '../../springback/foresight.ts';
import { bentAsOf, isAsDrawn } from '../../tube/bent-as.ts';
import { swing } from '../../tube/swing.ts';
import { around } from '../../tube/turns.ts';
import { endBefore, tubeAtWork } from '../estimate/tube-at-work.ts';
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
		...(first ? atTheFirst(state) : []),
		...(bend.seats === 0 && isOpposite(state) ? [{ code: 'opposite-face' as const }] : []),
		...tellingPays(state),
		...roomCautions(state),
		bend.seats === 0 ? swingCaution(state) : { code: 'seat-as-before' },
	];
}

function atTheFirst(state: State): CautionFact[] {
	const { job, growth, growthFrom, corners } = state.start;
	const as = bentAsOf(job);
	const allowedFor = corners === undefined ? state.plan.before !== null : growthFrom === 'expected' && growth !== 1;
	return [
		...GENERAL_CAUTIONS.map((code) => ({ code })),
		{ code: 'cut-length', length: state.piece },
		...(isAsDrawn(as) ? [] : [{ code: 'bent-as' as const, ...as }]),
		...(allowedFor ? [{ code: 'growth-expected' as const, growth }] : []),
		...narrowCaution(state),
	];
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
	const { clamp, follow } = state.start.job.tooling;
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
	const { tube, tooling } = state.start.job;
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
