import type { Bend } from './job.ts';

/**
 * A tube's center line: straight 1, bend 1, straight 2 ... bend n, straight n+1.
 * `straights` has n+1 lengths; a bend carries its own finished radius, since made bends differ.
 */
export interface Shape {
	straights: readonly number[];
	bends: readonly ArcBend[];
}
export interface ArcBend extends Omit<Bend, 'straight'> {
	radius: number;
}
