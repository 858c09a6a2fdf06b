/** Sentences about an end that is cut to fit another tube. */
import type { CopeDoubt, CopedEnd } from '../tube/cope.ts';
import { formatAngle } from '../units/format.ts';
import type { Ruled } from './lengths.ts';
import { fine } from './numbers.ts';
import { END_NAMES, roundWords } from './round.ts';

/** What an end is coped to, how deep and where. */
export function copeWords({ end, od, angle, depth, deepestAt, past }: CopedEnd, style: Ruled): string {
	const joint = `a tube of ${fine(od, style)} at ${formatAngle(angle, 2)}`;
	return `Cope the ${END_NAMES[end]} for ${joint}: ${fine(depth, style)} deep, deepest ${roundWords(deepestAt)}. Its longest point is ${outWords(past, style)}.`;
}

/** Whether a length is less than any instrument shows, in the words of `fine`. */
export const isNothing = (length: number, style: Ruled) => fine(Math.abs(length), style) === fine(0, style);

/** How far out of the end a place of a cope lies. */
export function outWords(out: number, style: Ruled): string {
	if (isNothing(out, style)) return "at the drawing's end";
	return `${fine(Math.abs(out), style)} ${out > 0 ? 'past' : 'before'} the drawing's end`;
}

/** What makes its joint doubtful. */
export function copeDoubts({ end, doubts }: CopedEnd, style: Ruled): string[] {
	return doubts.map((doubt) => `Look at the joint of the ${END_NAMES[end]}: ${jointDoubtWords(doubt, style)}`);
}

function jointDoubtWords(doubt: CopeDoubt, style: Ruled): string {
	switch (doubt.code) {
		case 'shallow':
			return `at ${formatAngle(doubt.angle, 2)} the tubes run too nearly along each other; ${doubt.least}° or more can be cut and welded.`;
		case 'thin-overlap':
			return `the tubes overlap by ${fine(doubt.overlap, style)} only; half of the smaller one, ${fine(doubt.least, style)}, should.`;
		case 'passes-by':
			return `${formatAngle(doubt.degrees)} of its round pass by the other tube and stay open.`;
	}
}
