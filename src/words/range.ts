import type { Range } from '../units/range.ts';
import { listed } from './listed.ts';

/** To stand after what a number is: ` from 0.5 to 2`, ` above 0`; empty where any number will do. */
export function rangeWords({ above, least, below, most, orZero }: Range): string {
	if (least !== undefined && most !== undefined) return ` ${orZero ? '0, or ' : ''}from ${least} to ${most}`;
	const lower = above !== undefined ? `above ${above}` : least !== undefined ? `of ${least} or more` : '';
	const upper = below !== undefined ? `below ${below}` : most !== undefined ? `at most ${most}` : '';
	const both = listed([lower, upper].filter((words) => words !== ''));
	return both === '' ? '' : ` ${both}`;
}
