import { filterPrior, newBend, newTube, pull } from '../../src/springback/filter.ts';
import { observe } from '../../src/springback/reading.ts';
import { suggestStop } from '../../src/springback/stop.ts';
import { BEND_OF_60 } from '../helpers/shop/stop-request.ts';

/** Median times in microseconds: a pull or a reading taken in, and a stop decided. */
export function timings(): { update: number; decision: number } {
	let f = newBend(newTube(filterPrior(0.021)));
	const start = f;
	// Angles differ from turn to turn, so that nothing can be remembered.
	const update = median(4000, (i) => {
		f = pull(start, 60 + (i % 97) / 10, 60.2 + (i % 97) / 10);
		f = observe(f, 'released', 56 + (i % 89) / 10);
		f = observe(f, 'angle', 54.6 + (i % 83) / 10);
	});
	const decision = median(2000, (i) => suggestStop(f, { ...BEND_OF_60, target: 30 + (i % 900) / 10 }));
	return { update: update / 3, decision };
}

const BATCH = 5;

function median(batches: number, work: (i: number) => void): number {
	const times: number[] = [];
	for (let b = 0; b < batches; b++) {
		const from = performance.now();
		for (let i = 0; i < BATCH; i++) work(b * BATCH + i);
		times.push((1000 * (performance.now() - from)) / BATCH);
	}
	return times.sort((x, y) => x - y)[batches >> 1]!;
}
