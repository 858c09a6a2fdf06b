import type { Plan } from '../../session/protocol/asks.ts';
import type { TubeTurn } from '../../tube/turns.ts';
import { angle } from '../numbers.ts';

/** What can be done besides answering, as choices. */
export const MORE = {
	note: 'write a note',
	undo: 'take back the last answer',
	evidence: 'tell something else that was measured',
	leave: (practice: boolean): string =>
		practice ? 'leave: practice cannot be resumed' : 'leave, to go on another time',
	amend: 'correct an earlier reading',
	reopen: 'go back to a made bend',
	measureAgain: 'measure a bend again',
	heat: 'tell the heat or certificate number of this tube',
	scrap: 'scrap the tube',
	elsewhere: 'go on in another folder: this disk refuses',
	still: 'it never left the die',
	takenOut: 'the tube has been out of the die',
	skipMeasuring: 'skip: go on by the dial',
	skipCheck: 'skip this check',
	why: 'read all of the reason',
	whatIf: 'see what going back to a made bend would do',
} as const;

/** From the plan that is in force to the other one. */
export const OTHER_PLAN: Readonly<Record<Plan, string>> = {
	new: 'keep the old numbers',
	old: 'take the new numbers',
};

/** Whether the dial after release is asked for from here on. */
export const askRelease = (asked: boolean): string =>
	asked ? 'ask for the dial after release again' : 'go on without the dial after release';

/** What the tube is not as asked, as a choice. */
export const NOT_AS_ASKED = {
	mark: 'the mark is somewhere else: tell where',
	rotation: 'the tube is turned otherwise: tell how',
	length: 'the piece is longer or shorter: tell how long',
} as const;

/** What the page says on which that is told. */
export const DETAIL = {
	title: 'Not as asked',
	mark: 'Where the mark really is, from the start end',
	length: 'How long the piece really is',
	empty: 'Write the number and press Enter; / goes back.',
	kept: 'The next + keeps it, and the numbers after that allow for it.',
	seen: 'Seen from the clamp side toward the far end. For the other way write a number below 0.',
} as const;

/** By how much the tube was turned, and how much was asked for. */
export function turnedBy(way: 'clockwise' | 'counterclockwise', { degrees }: Pick<TubeTurn, 'degrees'>): string {
	const asked = degrees === 0 ? '' : ` (asked: ${angle(degrees)})`;
	return `How far the tube is really turned ${way}${asked}`;
}

/** Taking back. */
export const UNDO = {
	title: 'Take back',
	plus: 'take it back',
	empty: 'Press + to take it back, / to leave it.',
	nothing: 'There is nothing to take back.',
	what: 'The program asks its question again. The line stays in the log but no longer counts. What you did to the tube stays done.',
} as const;
