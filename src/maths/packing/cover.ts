/**
 * How little the sticks can come to: the cutting-stock program with parts of sticks allowed, its fillings made as they are needed
 * (P. C. Gilmore and R. E. Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9, 1961, 849-859).
 */
import { ROUNDING } from '../scalar.ts';
import { bestFilling } from './fill.ts';
import { Program } from './program.ts';
import type { CuttingWay, StickKind, WantedPieces } from './wanted.ts';

/** Prices that prove a bound: no way to cut a stick holds more than the stick costs and its own price takes off. */
export interface Bound {
	/** No cutting costs less. */
	least: number;
	/** By kind of piece, 0 or more. */
	pieces: readonly number[];
	/** By kind of stick, 0 or less; 0 for one that is endless. */
	sticks: readonly number[];
}

/**
 * A proven lower bound of what the wanted pieces cost. `enough`: it is not looked for a better one. `ways` grows by those found on the way.
 * One endless kind of stick, at least, holds every piece.
 */
export function leastCost(
	wanted: WantedPieces,
	kinds: readonly StickKind[],
	ways: CuttingWay[],
	enough: number,
): Bound {
	const program = new Program(wanted, kinds);
	const known = ways.filter(
		({ stick, filling }) => kinds[stick]!.count > 0 && filling.every((count, kind) => count <= wanted.counts[kind]!),
	);
	let best: Bound = { least: 0, pieces: wanted.lengths.map(() => 0), sticks: kinds.map(() => 0) };
	for (;;) {
		program.settle(known);
		const prices = program.piecePrices();
		const found = kinds.map(({ room, count }) => bestFilling(count > 0 ? room : 0, wanted, prices));
		const bound = proven(
			wanted,
			kinds,
			prices,
			found.map(({ most }) => most),
		);
		if (bound.least > best.least) best = bound;
		if (best.least >= enough) return best;
		const gains = found.map(({ filling }, stick) => program.gain({ stick, filling }));
		const stick = gains.indexOf(Math.max(...gains));
		if (gains[stick]! <= ROUNDING * kinds[stick]!.cost || program.isSpent) return best;
		const made = { stick, filling: found[stick]!.filling };
		ways.push(made);
		known.push(made);
	}
}

/** Prices of pieces made such that they prove something (A. A. Farley, Operations Research 38, 1990, 922-923), and what they prove. */
function proven(
	{ counts }: WantedPieces,
	kinds: readonly StickKind[],
	prices: readonly number[],
	most: readonly number[],
): Bound {
	const scale = Math.min(
		1,
		...kinds.map(({ cost, count }, i) => (count === Number.POSITIVE_INFINITY ? cost / most[i]! : 1)),
	);
	const pieces = prices.map((price) => price * scale);
	const sticks = kinds.map(({ cost, count }, i) =>
		count === Number.POSITIVE_INFINITY ? 0 : Math.min(0, cost - most[i]! * scale),
	);
	const least =
		pieces.reduce((sum, price, i) => sum + price * counts[i]!, 0) +
		sticks.reduce((sum, price, i) => (price === 0 ? sum : sum + price * kinds[i]!.count), 0);
	return { least, pieces, sticks };
}
