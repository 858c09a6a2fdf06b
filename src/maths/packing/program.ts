import { times } from '../matrix.ts';
import { ROUNDING, stepsWithin } from '../scalar.ts';
import type { CuttingWay, StickKind, WantedPieces } from './wanted.ts';

/** Changes of the basis for each row: the bound holds after any of them, so this only ends one that circles. */
const CHANGES = 30;

/**
 * The linear program by the revised simplex method with its inverse kept (V. Chvátal, Linear Programming, 1983, chapters 7 and 13):
 * a row for each kind of piece (that many or more) and for each kind of stick that is counted (that many or fewer).
 */
export class Program {
	readonly size: number;
	readonly #pieces: number;
	readonly #kinds: readonly StickKind[];
	/** Rows of the pieces, and the row of each counted stick. */
	readonly #pieceRows: readonly number[];
	readonly #stickRows: ReadonlyMap<number, number>;
	readonly #inverse: number[][];
	/** How much of each column in the basis there is, and what it costs. */
	readonly #amounts: number[];
	readonly #costs: number[];
	#changes = 0;
	readonly #dearest: number;
	/** What one more in each row would cost. */
	#prices: number[] = [];

	constructor({ lengths, counts }: WantedPieces, kinds: readonly StickKind[]) {
		this.#pieces = lengths.length;
		this.#kinds = kinds;
		this.#dearest = Math.max(...kinds.map(({ cost }) => cost));
		this.#pieceRows = counts.flatMap((count, kind) => (count > 0 ? [kind] : []));
		const counted = kinds.flatMap(({ count }, stick) => (count === Number.POSITIVE_INFINITY ? [] : [stick]));
		this.#stickRows = new Map(counted.map((stick, i) => [stick, this.#pieceRows.length + i]));
		this.size = this.#pieceRows.length + counted.length;
		// It begins with sticks of one kind of piece each, and no counted stick taken.
		const own = this.#pieceRows.map((piece) => ownStick(lengths[piece]!, counts[piece]!, kinds));
		const diagonal = [...own.map(({ times }) => 1 / times), ...counted.map(() => 1)];
		this.#inverse = diagonal.map((value, i) => diagonal.map((_, j) => (i === j ? value : 0)));
		this.#amounts = [
			...own.map(({ times }, i) => counts[this.#pieceRows[i]!]! / times),
			...counted.map((stick) => kinds[stick]!.count),
		];
		this.#costs = [...own.map(({ cost }) => cost), ...counted.map(() => 0)];
		this.#price();
	}

	/** By kind of piece, 0 or more. */
	piecePrices(): number[] {
		const prices = Array<number>(this.#pieces).fill(0);
		for (const [row, piece] of this.#pieceRows.entries()) prices[piece] = Math.max(0, this.#prices[row]!);
		return prices;
	}

	/** What one stick cut this way would save. */
	gain(way: CuttingWay): number {
		const { cost } = this.#kinds[way.stick]!;
		let worth = this.#prices[this.#stickRows.get(way.stick) ?? -1] ?? 0;
		for (let row = 0; row < this.#pieceRows.length; row++)
			worth += way.filling[this.#pieceRows[row]!]! * this.#prices[row]!;
		return worth - cost;
	}

	/** Whether it has had as many changes as it may. */
	get isSpent(): boolean {
		return this.#changes >= CHANGES * this.size;
	}

	/** The cheapest that these ways come to, or near it where it is spent before. */
	settle(ways: readonly CuttingWay[]): void {
		while (!this.isSpent) {
			if (this.#enterSlack()) continue;
			let best: CuttingWay | null = null;
			let most = ROUNDING * this.#dearest;
			for (const way of ways) {
				const gain = this.gain(way);
				if (gain > most) [best, most] = [way, gain];
			}
			if (best === null) return;
			this.#pivot(this.#column(best), this.#kinds[best.stick]!.cost);
		}
	}

	/** Lets a piece be cut too often, or a counted stick stay, where that costs less; false where it does not. */
	#enterSlack(): boolean {
		const isPiece = (row: number) => row < this.#pieceRows.length;
		const row = this.#prices.findIndex((price, row) => (isPiece(row) ? price < -ROUNDING : price > ROUNDING));
		if (row < 0) return false;
		this.#pivot(
			this.#prices.map((_, i) => (i === row ? (isPiece(row) ? -1 : 1) : 0)),
			0,
		);
		return true;
	}

	#column({ stick, filling }: CuttingWay): number[] {
		const column = this.#pieceRows.map((piece) => filling[piece]!);
		for (const counted of this.#stickRows.keys()) column.push(counted === stick ? 1 : 0);
		return column;
	}

	#pivot(column: readonly number[], cost: number): void {
		this.#changes++;
		const change = times(this.#inverse, column);
		let leaves = -1;
		let least = Number.POSITIVE_INFINITY;
		for (const [row, value] of change.entries()) {
			const most = value > ROUNDING ? this.#amounts[row]! / value : Number.POSITIVE_INFINITY;
			if (most < least) [leaves, least] = [row, most];
		}
		if (leaves < 0) return;
		const pivot = this.#inverse[leaves]!.map((value) => value / change[leaves]!);
		for (const [row, factor] of change.entries()) {
			if (row === leaves) continue;
			this.#amounts[row]! -= factor * least;
			const values = this.#inverse[row]!;
			if (factor !== 0) for (let i = 0; i < values.length; i++) values[i]! -= factor * pivot[i]!;
		}
		this.#inverse[leaves] = pivot;
		this.#amounts[leaves] = least;
		this.#costs[leaves] = cost;
		this.#price();
	}

	#price(): void {
		const prices = Array<number>(this.size).fill(0);
		for (const [at, row] of this.#inverse.entries()) {
			const cost = this.#costs[at]!;
			if (cost !== 0) for (let i = 0; i < prices.length; i++) prices[i]! += cost * row[i]!;
		}
		this.#prices = prices;
	}
}

/** The endless stick that takes a kind of piece at the least cost, filled with it. */
function ownStick(length: number, count: number, kinds: readonly StickKind[]): { times: number; cost: number } {
	let best = { times: 0, cost: Number.POSITIVE_INFINITY };
	for (const { room, cost, count: sticks } of kinds) {
		const times = Math.min(count, stepsWithin(room, length));
		if (sticks === Number.POSITIVE_INFINITY && times > 0 && cost / times < best.cost / best.times)
			best = { times, cost };
	}
	return best;
}
