/** What a lesson of several dies tells of them together, as numbers: as many as those dies have unknowns, and the square of it. */
import type { Lesson } from '../springback/history.ts';
import { MACHINE } from '../springback/kin.ts';

type ToldTogether = Pick<Lesson, 'vector' | 'information'>;

export function jointNumbers({ vector, information }: ToldTogether): number[] {
	return [...vector, ...information.flat()];
}

/** How many numbers these are of so many dies. */
export function jointCount(dies: number): number {
	const unknowns = dies * MACHINE.length;
	return unknowns + unknowns ** 2;
}

/** What these numbers tell of so many dies. */
export function jointFrom(numbers: Float64Array, dies: number): ToldTogether {
	const unknowns = dies * MACHINE.length;
	const list = (line: number) => [...numbers.subarray(line * unknowns, (line + 1) * unknowns)];
	return { vector: list(0), information: Array.from({ length: unknowns }, (_, i) => list(1 + i)) };
}
