/** One thing to time: `run` gives the milliseconds that one go took. */
export interface Measurement {
	name: string;
	run: () => Promise<number>;
	/** Largest median allowed, in medians of the first measurement; null: only reported. */
	limit: number | null;
}
export interface Result {
	name: string;
	/** Milliseconds. */
	median: number;
	least: number;
	most: number;
	/** Median over the first measurement's. */
	ratio: number;
	limit: number | null;
	within: boolean;
}

/** The middle value; the lower of two middle ones. NaN for none. */
export function median(values: readonly number[]): number {
	return [...values].sort((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? Number.NaN;
}

/**
 * Times every measurement once a round, each round beginning with another one, so that a machine that slows down
 * half way slows them all. The first round only warms the disk cache and is not counted.
 */
export async function interleave(measurements: readonly Measurement[], rounds: number): Promise<Result[]> {
	const times = measurements.map((): number[] => []);
	for (let round = 0; round <= rounds; round++) {
		for (let i = 0; i < measurements.length; i++) {
			const which = (i + round) % measurements.length;
			const taken = await measurements[which]!.run();
			if (round > 0) times[which]!.push(taken);
		}
	}
	const base = median(times[0] ?? []);
	return measurements.map(({ name, limit }, i) => {
		const own = times[i]!;
		const ratio = median(own) / base;
		const within = limit === null || ratio <= limit;
		return { name, median: median(own), least: Math.min(...own), most: Math.max(...own), ratio, limit, within };
	});
}

/** The results as lines of a table, milliseconds whole. */
export function table(results: readonly Result[]): string[] {
	const rows = results.map(({ name, median, least, most, ratio, limit, within }) => [
		name,
		median.toFixed(0),
		least.toFixed(0),
		most.toFixed(0),
		ratio.toFixed(2),
		limit === null ? '' : limit.toFixed(2),
		limit === null ? '' : within ? 'within' : 'OVER',
	]);
	const all = [['', 'median ms', 'least', 'most', 'ratio', 'limit', ''], ...rows];
	const widths = all[0]!.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
	return all.map((row) =>
		row.map((cell, i) => (i === 0 || i === 6 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  '),
	);
}
