import { MOST_MENDED } from '../session/advice/last-bend-mends.ts';
import type { LastBendMends } from '../session/protocol/notes.ts';
import type { Wording } from './lengths.ts';
import { angle, exactAngle, fine } from './numbers.ts';

/** What the last bend can still mend. */
export function lastBendMendsWords({ bend, upTo, off, left }: LastBendMends, style: Wording): string {
	const edge = `With it ${angle(off)} off, the far end would be ${fine(left.endOffset, style)} and ${angle(left.endAngle)} from the drawing.`;
	if (upTo === 0)
		return `The last bend alone cannot bring the tube within its tolerances: bend ${bend} has to. ${edge}`;
	const most = upTo >= MOST_MENDED ? `${exactAngle(upTo)} and more` : exactAngle(upTo);
	return `Bend ${bend} may come out up to ${most} off: the last bend still mends that. ${edge}`;
}
