import { at } from '../../maths/list.ts';
import { setback } from '../../tube/arcs.ts';
import { copedEnds, pastEnd } from '../../tube/cope.ts';
import type { Check } from '../../tube/job.ts';
import { isInBand } from '../../tube/tolerance.ts';
import { checkFits } from '../advice/bend-alone.ts';
import { tubeAtWork } from '../estimate/tube-at-work.ts';
import type { State } from '../log/state.ts';
import type { FinishFact } from '../protocol/facts/index.ts';
import type { Cut } from '../protocol/notes.ts';
import { expectCheck, uncutTrim } from '../reading/check-reading.ts';

/** Where both ends of a finished tube are cut square so that its legs come out as designed; start end first. */
export function cutsOf(state: State): [Cut, Cut] {
	const { shape, trimStart, trimEnd } = tubeAtWork(state, state.plan.current);
	const { job } = state.start;
	const cut = (end: Cut['end'], trim: number, finished: number, bend: number): Cut => {
		const { angle, radius } = at(shape.bends, bend - 1);
		// An end that is coped is cut square where its longest point comes.
		const past = pastEnd(job, end);
		const leg = finished + past;
		return { end, off: trim - past, bend, fromTangent: leg, fromCorner: leg + setback(angle, radius) };
	};
	const last = shape.bends.length;
	// A piece that is too short leaves a leg that ends where the piece does.
	const first = at(shape.straights, 0) + Math.min(0, trimStart);
	return [cut('start', trimStart, first, 1), cut('far', trimEnd, at(shape.straights, last), last)];
}

/** What is left to be done and looked at before the tube leaves the bench, in the order of the work. */
export function finishList(state: State): FinishFact[] {
	return [
		...state.bends.flatMap(({ relievedFrom }, i) =>
			relievedFrom === null ? [] : [{ code: 'look-for-flats' as const, bend: i + 1 }],
		),
		...state.bends.flatMap((bend, i) => offTarget(state, bend, i + 1)),
		...state.design.checks.flatMap(({ check, design }) => checkLeft(state, check, design)),
		...copedEnds(state.start.job).map((coped) => ({ code: 'cope' as const, ...coped })),
		{ code: 'deburr' },
	];
}

function offTarget(state: State, { made, target }: State['bends'][number], bend: number): FinishFact[] {
	if (made === null || isInBand(state.start.job.tolerance, target, made.angle)) return [];
	return [{ code: 'bend-outside', bend, made: made.angle, target }];
}

/** A check that was not read, or that is read otherwise once the ends are cut; one that is out. */
function checkLeft(state: State, check: Check, design: number): FinishFact[] {
	const { name, kind, tolerance } = check;
	const reading = state.checks[name]?.reading ?? null;
	const trim = uncutTrim(state, check);
	const of = { name, kind, design, tolerance };
	if (reading === null) return [{ code: 'check-not-read', ...of, expected: expectCheck(state, name).value - trim }];
	if (checkFits(state, name, reading) === false) return [{ code: 'check-outside', ...of }];
	return Math.abs(trim) > tolerance / 100 ? [{ code: 'check-after-cutting', ...of }] : [];
}
