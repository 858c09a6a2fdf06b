import { createHash } from 'node:crypto';
import { filterPrior, newBend, newSeat, newTube, observe, pull } from '../springback/filter.ts';
import { lessonFrom } from '../springback/lesson.ts';

/**
 * How a log becomes a row. Raise it whenever the same log would give another row: when it changes what lists show, or which readings the
 * filter is given. What the filter and lessons make of readings is seen by itself.
 */
const METHOD = 3;

/**
 * Names the way in which this program learns from a log. What it makes of a few readings stands in it, so that a change of the filter or of
 * lessons gives another name without anybody having to think of it.
 */
export function methodName(): string {
	name ??= named();
	return name;
}

let name: string | null = null;

function named(): string {
	const start = newTube(filterPrior(0.02));
	let f = observe(pull(newBend(start), 42, 42.5), 'released', 37.5);
	f = observe(f, 'angle', 37.1, { readings: 2 });
	f = observe(newSeat(f), 'pointer', 38);
	f = observe(observe(pull(f, 45, 45), 'released', 41), 'angle', 39.6);
	f = observe(pull(newBend(f), 95, 95), 'angle', 85.5, { confirmed: true });
	const kin = { bender: '', die: '', od: 0, wall: 0, clr: 0, material: '', k: 0.02 };
	const lesson = lessonFrom(kin, start, f, { at: '', session: '', pulls: 3, readings: 5 });
	return createHash('sha256')
		.update(JSON.stringify([METHOD, lesson]))
		.digest('hex')
		.slice(0, 16);
}
