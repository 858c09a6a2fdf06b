import { parseLength } from '../units/parse.ts';
import { lengthsOf, type Ruled, shownUnits } from './lengths.ts';
import { notNothing } from './words.ts';

/** A length as a sentence has it. Where the word behind the number is no unit, as in "bend 2 in the die", no length stands there. */
const LENGTH =
	/(?<!bend |bends |pull |entry |[\w./])-?\d+(?:[ -]\d+\/\d+|\/\d+|\.\d+)? (?:in|mm)\b(?! (?:the|a|its|bend|this)\b)/g;

/** A sentence of the session, which knows only the job's own unit, with its lengths as they are shown on the screen. */
export function toldLengths(text: string, job: Ruled): string {
	const lengths = lengthsOf(job);
	if (shownUnits(job) === job.units && lengths !== 'fraction') return text;
	return text.replace(LENGTH, (found) => {
		if (!found.endsWith(` ${job.units}`)) return found;
		// By the tape already.
		if (lengths === 'fraction' && job.units === 'in' && found.includes('/')) return found;
		return notNothing(parseLength(found, job.units), job);
	});
}
