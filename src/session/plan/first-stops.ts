import { atDie } from '../../springback/several-dies.ts';
import { suggestStop } from '../../springback/stop.ts';
import { dieOf } from '../../tube/dies.ts';
import type { Job } from '../../tube/job.ts';
import type { Shape } from '../../tube/shape.ts';
import { limitsOfStop } from '../advice/bend-check.ts';
import type { Beginning } from '../log/start.ts';
import { type Known, knownFrom } from '../protocol/facts/known.ts';

/** Where to stop the first pull of a bend, and what that should leave. Degrees. */
export interface FirstStop {
	stop: number;
	expect: { angle: number; sd: number };
	/** The machine reaches no further. */
	limit: boolean;
}

/** The first pull of every bend as it looks before the tube is begun: the pulls of one bend tell more of the next, which only a session knows. */
export function firstStops(
	job: Job,
	shape: Shape,
	{ prior, from }: Pick<Beginning, 'prior' | 'from'>,
): { stops: FirstStop[]; known: Known } {
	const stops = shape.bends.map(({ angle: target }, i) => {
		const { stop, expect, limit } = suggestStop(atDie(prior, dieOf(job, i + 1)), {
			...limitsOfStop(job, i + 1),
			target,
			loadedBefore: null,
			measured: false,
		});
		return { stop, expect, limit };
	});
	return { stops, known: knownFrom(from) };
}
