import { angle, dial } from '../numbers.ts';

/** What the page of a pull says. */
export const PULL = {
	title: (pull: number): string => `Pull ${pull}`,
	label: (stop: number): string => `Pull to ${dial(stop)} and hold: the dial under load?`,
	plus: 'held there',
	empty: 'Pull to the stop and hold. Press + if the dial shows it, else write what it shows and press Enter.',
	stop: { label: 'STOP', below: 'held under load' },
	easeUp: { label: 'EASE UP', below: 'from here' },
	limit: 'This is the largest angle that the bender reaches.',
	/** The general cautions stood on the session's first page; the ones that count with the first stroke are said again. */
	first: '! Hands clear of die, follower and clamp; stand out of the swing of the tube.',
	firstBrief: '! Hands clear of the tooling; stand out of the swing.',
} as const;

/** What the page says after the stroke. */
export const RELEASED = {
	title: (pull: number): string => `Pull ${pull}, after release`,
	label: 'Dial after release, the tube still snug?',
	plus: 'not read',
	empty: 'Write what the dial reads after release and press Enter, or press + to go on without it.',
	held: { label: 'HELD', below: 'kept' },
	what: 'Let the pressure off. What does the dial read now?',
} as const;

/** In front of the rungs of the ladder, from the words of one of them to those of the next. */
export const RUNGS = {
	held: (pull: number, loaded: number): string => `${pull} held ${dial(loaded)}`,
	opened: '  opened',
	back: (how: string, released: number): string => `${how}, back ${dial(released)}`,
	made: (how: string, made: number): string => `${how}, made ${angle(made)}`,
	next: (pull: number, stop: number, to: string): string => `${pull} stop ${dial(stop)} > ${to}`,
} as const;

/** What the ladder leads to: the angle wanted; where it is read out, the band of it too. */
export const wantedWords = ({ target, design }: { target: number; design: number }): string =>
	`wanted ${angle(target)}${angle(target) === angle(design) ? '' : ` (drawing ${angle(design)})`}`;
export const bandWords = (wanted: string, { low, high }: { low: number; high: number }): string =>
	`${wanted}, from ${angle(low)} to ${angle(high)}`;
