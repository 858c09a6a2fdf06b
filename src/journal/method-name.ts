import { createHash } from 'node:crypto';
import { modelName } from '../springback/model-name.ts';

/**
 * How a log becomes a row. Raise it whenever the same log would give another row: when it changes what lists show, or which readings the
 * filter is given. What the filter and lessons make of readings is seen by itself.
 */
const METHOD = 9;

/** Names the way in which this program learns from a log; a change of the model gives another name. */
export function methodName(): string {
	knownMethod ??= createHash('sha256')
		.update(JSON.stringify([METHOD, modelName()]))
		.digest('hex')
		.slice(0, 16);
	return knownMethod;
}

let knownMethod: string | null = null;
