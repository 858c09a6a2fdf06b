/** What mechanics excludes, whatever machine and tube: such a number was misread, or the pull before it was. Degrees. */

/**
 * A bend springs back: neither it nor its dial after release can show more than the dial was held at. What may make it look so even in a
 * rough shop: the dial's zero (2), the finder's bias or the dial's lag after release (1 to 3), half a division of a coarse dial (.5), and
 * the scatter of seat and readings, together .7 where all are twice what is common, of which four times is one in 30,000. Slack and
 * springback, 2 or more but for the smallest bends, go the other way.
 */
const MOST_ABOVE = 8;
/** No bender and tube take back more than this much and this part of the dial held: they show 3 and 12 % (common practice, no source). */
const SPRINGS_AT_MOST = { offset: 12, part: 0.25 };

/** Which way a reading of a bend, by finder or by the dial after release, cannot be: more than it was pulled to, or far less. */
export type Exclusion = 'above' | 'below';

/** `held`: the largest dial angle that the bend was pulled to; `opened`: it was opened since, and may lie anywhere below. Null: it can be. */
export function exclusion(reading: number, held: number, opened: boolean): Exclusion | null {
	if (reading > held + MOST_ABOVE) return 'above';
	return !opened && reading < held * (1 - SPRINGS_AT_MOST.part) - SPRINGS_AT_MOST.offset ? 'below' : null;
}
