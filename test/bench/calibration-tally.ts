/** What is counted of many tubes: how far off the program's figures are in units of what it says of them, and how often it says right. */

/** Half the width of the band that nine in ten of a normal distribution lie in, in standard deviations. */
const NINE_IN_TEN = 1.6449;

interface Spread {
	n: number;
	squares: number;
	inside: number;
}
export interface Share {
	yes: number;
	of: number;
}
/** Of one bin: what was stated in all, and how often it came to be. */
export interface Stated extends Share {
	stated: number;
}

/** Upper ends of the bins. */
export const BINS = {
	risk: [0.005, 0.01, 0.02, 0.04, 1],
	chance: [0.2, 0.5, 0.8, 0.9, 1],
} as const;

export class Tally {
	readonly #spreads = new Map<string, Spread>();
	readonly #shares = new Map<string, Share>();
	readonly #bins = new Map<string, Stated[]>();
	readonly #pairs = new Map<string, { told: number[]; truly: number[] }>();
	readonly broken = new Map<string, number>();
	tubes = 0;
	bends = 0;
	pulls = 0;
	most = 0;
	scrapped: Share = { yes: 0, of: 0 };

	/** An estimate against the truth. */
	add(kind: string, value: number, sd: number, truly: number): void {
		const spread = this.#spreads.get(kind) ?? { n: 0, squares: 0, inside: 0 };
		this.#spreads.set(kind, spread);
		const z = (truly - value) / sd;
		// What is said without any doubt has no measure.
		if (!Number.isFinite(z)) return;
		spread.n += 1;
		spread.squares += z * z;
		if (Math.abs(z) <= NINE_IN_TEN) spread.inside += 1;
	}

	bin(kind: keyof typeof BINS, stated: number, happened: boolean): void {
		const bins = this.#bins.get(kind) ?? BINS[kind].map(() => ({ stated: 0, yes: 0, of: 0 }));
		this.#bins.set(kind, bins);
		const bin = bins[BINS[kind].findIndex((high) => stated <= high)] ?? bins.at(-1)!;
		bin.stated += stated;
		bin.of += 1;
		if (happened) bin.yes += 1;
	}

	count(kind: string, yes: boolean): void {
		const share = this.share(kind);
		this.#shares.set(kind, { yes: share.yes + (yes ? 1 : 0), of: share.of + 1 });
	}

	/** A size as told and as it is. */
	pair(kind: string, told: number, truly: number): void {
		const pair = this.#pairs.get(kind) ?? { told: [], truly: [] };
		this.#pairs.set(kind, pair);
		pair.told.push(told);
		pair.truly.push(truly);
	}

	/** A tube that was bent to its end, by the pulls of its bends. */
	bent(pulls: readonly number[]): void {
		this.tubes += 1;
		this.bends += pulls.length;
		this.pulls += pulls.reduce((sum, each) => sum + each, 0);
		this.most = Math.max(this.most, ...pulls);
	}

	/** A tube that the advice had scrapped; `good`: all that was made of it lay within tolerance. */
	scrap(good: boolean): void {
		this.scrapped.of += 1;
		if (good) this.scrapped.yes += 1;
	}

	broke(why: string): void {
		this.broken.set(why, (this.broken.get(why) ?? 0) + 1);
	}

	share(kind: string): Share {
		return this.#shares.get(kind) ?? { yes: 0, of: 0 };
	}

	/** Root mean square of the misses in units of their standard deviations, and the part within the 90 % band; null for none. */
	spread(kind: string): { n: number; z: number; inside: number } | null {
		const spread = this.#spreads.get(kind);
		if (!spread || spread.n === 0) return null;
		return { n: spread.n, z: Math.sqrt(spread.squares / spread.n), inside: spread.inside / spread.n };
	}

	bins(kind: keyof typeof BINS): readonly Stated[] {
		return this.#bins.get(kind) ?? [];
	}

	/** Medians of what was told and of what is; null for none. */
	medians(kind: string): { told: number; truly: number } | null {
		const pair = this.#pairs.get(kind);
		return pair ? { told: middle(pair.told), truly: middle(pair.truly) } : null;
	}
}

function middle(values: readonly number[]): number {
	return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}
