import { at } from '../../maths/list.ts';
import { exceeds } from '../../maths/scalar.ts';
import { clears } from '../../maths/weighted.ts';
import { angleReadingSd, checkReadingSd, LEG_SD, READ_BACK_SD, tapedSd } from '../estimate/hands.ts';
import type { Cloud } from '../estimate/odds.ts';
import type { State } from '../log/state.ts';
import type { TellsMost } from '../protocol/notes.ts';

/** A measurement that can still be taken: what each tube of the cloud would show, and its error. */
interface Possible {
	what: TellsMost;
	values: number[];
	sd: number;
}

/** Less than this part of the doubt is not worth a measurement. */
const WORTH = 0.05;
/** A verdict as sure as this, either way, needs no more. */
const SURE = 0.97;

/** The one more measurement that would say most about whether the finished tube fits; null where none says much, or nothing is in doubt. */
export function tellsMost(state: State, cloud: Cloud, chance: number): TellsMost | null {
	if (Math.max(chance, 1 - chance) >= SURE) return null;
	const { fits, weights } = cloud;
	let [best, most]: [TellsMost | null, number] = [null, WORTH];
	for (const { what, values, sd } of possible(state, cloud)) {
		const cleared = clears(fits, weights, values, sd);
		if (exceeds(cleared, most)) [best, most] = [what, cleared];
	}
	return best;
}

/** What can be measured on the bench once all is bent, and has not been read yet; an angle can be read again. */
function possible(state: State, { count, tube, values }: Cloud): Possible[] {
	const { start } = state;
	const tubes = Array.from({ length: count }, (_, k) => tube(k));
	const last = state.bends.length - 1;
	const checks = state.design.checks.flatMap(({ check }, i): Possible[] => {
		if ((state.checks[check.name]?.reading ?? null) !== null) return [];
		const sd = checkReadingSd(start, check);
		return [{ what: { kind: 'check', name: check.name }, values: values.map((row) => at(row, i)), sd }];
	});
	const bends = state.bends.flatMap(({ readBack, leg, taped }, i): Possible[] => {
		const of = (kind: Exclude<TellsMost['kind'], 'check'>, sd: number, value: (k: number) => number): Possible => ({
			what: { kind, bend: i + 1 },
			values: tubes.map((_, k) => value(k)),
			sd,
		});
		const raw = (k: number) => at(at(tubes, k).raw.bends, i);
		// Along a bent tube nobody can hold a tape: only the ends' own straights are measured to a mark.
		const marked = !taped && leg === null;
		return [
			of('angle', angleReadingSd(start), (k) => raw(k).angle),
			...(readBack || i === 0 ? [] : [of('rotation', READ_BACK_SD, (k) => raw(k).rotation)]),
			...(leg === null ? [of('leg', LEG_SD * start.job.tooling.tape, (k) => at(at(tubes, k).uncut.straights, i))] : []),
			...(marked && i === 0 ? [of('mark', tapedSd(start), (k) => raw(k).mark)] : []),
			...(marked && i === last ? [of('farEndToMark', tapedSd(start), (k) => state.piece - raw(k).mark)] : []),
		];
	});
	return [...checks, ...bends];
}
