/** Sentences about an end that is cut to fit another tube. */
import type { CopeDoubt, CopedEnd } from '../tube/cope.ts';
import { formatAngle } from '../units/format.ts';
import type { Ruled } from './lengths.ts';
import { fine } from './numbers.ts';
import { END_NAMES, roundWords } from './round.ts';

/** What an end is coped to, how deep and where. */
export function copeWords({ end, od, angle, depth, deepestAt, past }: CopedEnd, style: Ruled): string {
	const longest = past < 0 ? `${fine(-past, style)} before` : `${fine(past, style)} past`;
	const joint = `a tube of ${fine(od, style)} at ${formatAngle(angle, 2)}`;
	return `Cope the ${END_NAMES[end]} for ${joint}: ${fine(depth, style)} deep, deepest ${roundWords(deepestAt)}. Its longest point is ${longest} the drawing's end.`;
}

/** What makes its joint doubtful. */
export function copeDoubts({ end, doubts }: CopedEnd, style: Ruled): string[] {
	return doubts.map((doubt) => `Look at the joint of the ${END_NAMES[end]}: ${doubtWords(doubt, style)}`);
}

function doubtWords(doubt: CopeDoubt, style: Ruled): string {
	switch (doubt.code) {
		case 'shallow':
			return `at ${formatAngle(doubt.angle, 2)} the tubes run too nearly along each other; ${doubt.least}° or more can be cut and welded.`;
		case 'thin-overlap':
			return `the tubes overlap by ${fine(doubt.overlap, style)} only; half of the smaller one, ${fine(doubt.least, style)}, should.`;
		case 'passes-by':
			return `${formatAngle(doubt.degrees)} of its round pass by the other tube and stay open.`;
	}
}
