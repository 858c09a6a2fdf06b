/** How well the radius of a die's bends is known before anything is read on the tube. */
import { diesOf } from '../../tube/dies.ts';
import type { PlannedDieGrowth, PlannedGrowth } from '../../tube/growth.ts';
import { growthShown, mechanicsGrowth, type Start } from '../log/start.ts';

/** Log-normal spread of the finished radius of one die against the next, where its growth was measured (common practice, no source). */
const DIE_SPREAD = 0.01;

/**
 * Where the growth is only expected, mechanics has one and the springback that the die has shown may have another. Which of them is true hangs on the
 * machine, and nobody knows. From an end of what lies between them, a value anywhere in it is .58 of it off; from the middle .29.
 */
const OF_WHAT_DIFFERS = 0.4;

/** What lies between them depends on how the session began alone. */
const SPREADS = new WeakMap<Start, number[]>();

/** The spread of each die of the job, its own first. */
export function dieSpreads(start: Start): number[] {
	const found = SPREADS.get(start) ?? spreadsOf(start);
	SPREADS.set(start, found);
	return found;
}

function spreadsOf(start: Start): number[] {
	const shown = growthShown(start);
	return diesOf(start.job).map((die, i) => {
		const { growth, growthFrom } = i === 0 ? start : (start.dies?.[die] ?? start);
		if (growthFrom !== 'expected') return DIE_SPREAD;
		const logs = [growth, mechanicsGrowth(start.job, die), expectedOfDie(shown, die, i)].map(Math.log);
		return Math.hypot(DIE_SPREAD, OF_WHAT_DIFFERS * (Math.max(...logs) - Math.min(...logs)));
	});
}

/** What is expected of a die, whether or not the drawing's corners leave that room. */
function expectedOfDie(shown: PlannedGrowth, die: string, place: number): number {
	const { value, tooMuch }: PlannedDieGrowth = place === 0 ? shown : (shown.dies?.[die] ?? shown);
	return tooMuch ?? value;
}
