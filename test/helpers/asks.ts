import { GENERAL_CAUTIONS } from '../../src/session/cautions.ts';
import type {
	CheckAsk,
	ConfirmAsk,
	CorrectedNote,
	DecideAsk,
	DoneNote,
	MeasureAsk,
	PullAsk,
	SessionNote,
	SetAsk,
	WarningsNote,
} from '../../src/session/protocol.ts';

/** One of each thing that a session puts out, for the arch of the fake ports. */
export const SESSION: SessionNote = {
	note: 'session',
	id: 'aft-arch-1',
	log: '/logs/aft-arch-1.log',
	resumed: false,
	job: 'Aft arch',
	changed: [],
	others: [],
};
export const WARNINGS: WarningsNote = {
	note: 'warnings',
	warnings: [
		{
			at: 'shape.bends[3]',
			code: 'short-follow',
			text: '1 3/4 in of straight tube are left behind the bend, 2 in are needed.',
		},
	],
};
export const SET: SetAsk = {
	ask: 'set',
	entry: 4,
	bend: 2,
	bends: 4,
	target: 48.2,
	design: 48,
	seat: 1,
	mark: { fromStart: 39.6, fromFarEnd: 76.4, fromLastBend: 21.06, tape: '39 5/8', moved: 0.0625 },
	rotation: 180,
	tubeTurn: { degrees: 180, way: 'either' },
	face: 'opposite',
	around: { degrees: 180, length: 2.75 },
	pointer: 0,
	plan: 'new',
	was: { target: 48, fromStart: 39.5375, rotation: 180 },
	cautions: ['Only 3 1/2 in of straight tube lie in the clamp.'],
};
export const PULL: PullAsk = {
	ask: 'pull',
	entry: 5,
	bend: 2,
	pull: 1,
	target: 48.2,
	design: 48,
	stop: 51.5,
	lead: 49,
	expect: { angle: 47.9, sd: 0.35 },
	risk: 0.018,
	limit: false,
	why: 'This tube is expected to spring back 3.6 degrees, give or take 0.4; one bend of it was measured so far.',
};
export const MEASURE: MeasureAsk = {
	ask: 'measure',
	entry: 6,
	bend: 2,
	expect: { angle: 47.9, sd: 0.35 },
	readings: 2,
	why: 'It is the first measurement of this tube: all that follows is built on it.',
};
export const CONFIRM: ConfirmAsk = {
	ask: 'confirm',
	entry: 7,
	of: 'angle',
	reading: 84.1,
	expect: { value: 47.9, sd: 0.35 },
	why: 'That is 36 degrees from what the dial says. Are two digits swapped?',
	bend: 2,
};
/** A pull that did not stop where it was asked to. */
export const CONFIRM_LOADED: ConfirmAsk = {
	...{ ask: 'confirm', entry: 6, of: 'loaded', reading: 61.5, expect: { value: 51.5, sd: 0.35 }, bend: 2 },
	why: 'The stop was 51.5 degrees, and 61.5 degrees is 10 degrees away from it.',
};
export const CONFIRM_CHECK: ConfirmAsk = {
	...{ ask: 'confirm', entry: 9, of: 'check', reading: 15.81, expect: { value: 14.31, sd: 0.08 }, name: 'rise' },
	why: '14.31 in was expected from what has been made; this is 1.5 in away. It does not go with 47.8 degrees at bend 2: measure again, and see that the straight edge lies where the check says; or was the mark of bend 2 at 39 1/8 in, not 39 5/8 in?',
};
export const CHECK: CheckAsk = {
	ask: 'check',
	entry: 8,
	name: 'rise',
	kind: 'drop',
	expect: { value: 14.31, sd: 0.08 },
	design: 14.25,
	tolerance: 0.0625,
	includes: 'The reading includes the half diameter of the tube.',
};
export const DECIDE: DecideAsk = {
	ask: 'decide',
	entry: 9,
	bend: 2,
	advice: 'pull',
	made: { angle: 47.3, sd: 0.12 },
	target: 48.2,
	design: 48,
	limit: false,
	why: 'The bend is 0.9 degrees short and the machine has angle left.',
	accepted: { endOffset: 0.02, endAngle: 0.1, shape: { bend: 1, off: 0.05 }, checks: [], left: 0.4, within: true },
	tweaks: [],
};
export const CORRECTED: CorrectedNote = {
	note: 'corrected',
	after: { bend: 2 },
	remaining: [
		{ bend: 3, fromStart: 68.0625, angle: 47.6, rotation: 179.2, was: { fromStart: 68, angle: 48, rotation: 180 } },
		{ bend: 4, fromStart: 93.5, angle: 42.1, rotation: 0, was: { fromStart: 93.5, angle: 42, rotation: 0 } },
	],
	predicted: {
		endOffset: 0.05,
		endAngle: 0.1,
		shape: { bend: 1, off: 0.05 },
		checks: [
			{ name: 'legs', value: 0.2, sd: 0.15 },
			{ name: 'reach', value: 31.25, sd: 0.08 },
		],
		sd: { endOffset: 0.15, endAngle: 0.3 },
		chance: 0.84,
	},
	without: {
		endOffset: 0.71,
		endAngle: 0.9,
		shape: { bend: 1, off: 0.05 },
		checks: [
			{ name: 'legs', value: 0.9, sd: 0.2 },
			{ name: 'reach', value: 31.0, sd: 0.1 },
		],
		sd: { endOffset: 0.2, endAngle: 0.4 },
		chance: 0.02,
	},
};
export const DONE: DoneNote = {
	note: 'done',
	scrapped: false,
	bends: [
		{ design: 42, target: 42, made: 41.9, sd: 0.12, pulls: 2, seats: 1 },
		{ design: 48, target: 48.2, made: 48.1, sd: 0.1, pulls: 3, seats: 2 },
		{ design: 48, target: 47.6, made: 47.7, sd: 0.11, pulls: 1, seats: 1 },
		{ design: 42, target: 42.1, made: 42, sd: 0.1, pulls: 1, seats: 1 },
	],
	checks: [
		{ name: 'rise', design: 14.25, reading: 14.28 },
		{ name: 'lie', design: 0, reading: null },
	],
	trim: { start: 0.5, end: 0.4375 },
	endOffset: 0.05,
	endAngle: 0.1,
	sd: { endOffset: 0.12, endAngle: 0.3 },
	chance: 0.87,
	tellsMost: { kind: 'rotation', bend: 4 },
	shape: { bend: 3, off: 0.07 },
	outside: [],
	fits: true,
	log: '/logs/aft-arch-1.log',
	cuts: [
		{ end: 'start', off: 0.5, bend: 1, fromTangent: 12, fromCorner: 14.5, words: 'Start end.' },
		{ end: 'far', off: 0.4375, bend: 4, fromTangent: 12, fromCorner: 14.5, words: 'Far end.' },
	],
	finish: ['Check lie was not read: it should be 0 in, within 0.125 in; expected is 0.02 in.'],
};
/** More likely than not that it fits, one bend outside the drawing's own tolerance. */
export const MAY_FIT: DoneNote = {
	...DONE,
	fits: false,
	chance: 0.63,
	outside: [3],
	sd: { endOffset: 0.21, endAngle: 0.5 },
};
export const ARCH_NAME = SESSION.job;
/** The first bend's first seat. */
export const SET_FIRST: SetAsk = {
	...SET,
	entry: 1,
	bend: 1,
	target: 42,
	design: 42,
	mark: { fromStart: 14.5, fromFarEnd: 101.5, fromLastBend: null, tape: '14 1/2', moved: 0 },
	rotation: 0,
	tubeTurn: { degrees: 0, way: 'none' },
	face: 'same',
	around: { degrees: 0, length: 0 },
	was: { target: 42, fromStart: 14.5, rotation: 0 },
	cautions: [
		...GENERAL_CAUTIONS,
		'Cut length: 116 in, both trims in it.',
		"The radius is expected to come out 1.0 % larger than the die's: the marks are planned for that. Give the length of the piece as really cut.",
		"Swing: the part beyond the clamp reaches 17 in from the die's centre.",
	],
};
/** A bend out of the plane of the one before: the mark goes one way round, the tube is turned the other way. */
export const SET_TURNED: SetAsk = {
	...SET,
	rotation: 120,
	tubeTurn: { degrees: 120, way: 'counterclockwise' },
	face: 'other',
	around: { degrees: 120, length: 1.8326 },
	cautions: [],
};
/** The same bend in the die a second time: no turn, and the dial expected where it was left. */
export const SET_AGAIN: SetAsk = {
	...SET,
	seat: 2,
	tubeTurn: { degrees: 0, way: 'none' },
	pointer: 47.5,
	cautions: ["Seat the tube at the same mark and in the same plane as before; keep it level. Don't move the dial."],
};
const CHECKED = { ask: 'check', entry: 8, includes: undefined } as const;
export const CHECK_ANGLE: CheckAsk = {
	...CHECKED,
	name: 'legs',
	kind: 'angle',
	expect: { value: 89.6, sd: 0.2 },
	design: 90,
	tolerance: 0.5,
};
export const CHECK_SPAN: CheckAsk = {
	...CHECKED,
	name: 'reach',
	kind: 'span',
	expect: { value: 41.28, sd: 0.06 },
	design: 41.25,
	tolerance: 1 / 8,
	includes: 'The start end is not cut yet: the reading includes 1/2 in of trim.',
};
export const CHECK_OUT: CheckAsk = {
	...CHECKED,
	name: 'lie',
	kind: 'out',
	expect: { value: -0.09, sd: 0.1 },
	design: 0,
	tolerance: 1 / 8,
};
export const CHECK_OVALITY: CheckAsk = {
	...CHECKED,
	name: 'section',
	kind: 'ovality',
	expect: { value: 0.96, sd: 0.02 },
	design: 1,
	tolerance: 0.1,
};
export const RELIEVE: DecideAsk = {
	...DECIDE,
	advice: 'relieve',
	made: { angle: 49.1, sd: 0.12 },
	open: 0.6,
	why: 'The bend is 0.9 degrees past its target, over the upper tolerance.',
};
/** The machine is at its end, and the bend still short. */
export const LIMIT: DecideAsk = {
	...DECIDE,
	advice: 'accept',
	limit: true,
	why: 'The bend is 0.9 degrees short and the machine can pull no further: accept it, and what is left is corrected for it.',
};
export const GIVEN_UP: DecideAsk = {
	...DECIDE,
	advice: 'scrap',
	made: { angle: 58.2, sd: 0.12 },
	why: 'The bend is 58.2 degrees, give or take 0.1; the target is 48.2. That is too far to work back: the tube is better given up.',
};
export const REOPEN: DecideAsk = {
	...DECIDE,
	advice: 'reopen',
	of: 1,
	made: { angle: 48.2, sd: 0.12 },
	why: 'The check rise cannot be met any more by what is left; 0.6 degrees more in bend 1 would bring it in.',
	how: 'pull',
	accepted: {
		endOffset: 0.2,
		endAngle: 0.3,
		shape: { bend: 1, off: 0.05 },
		checks: [{ name: 'rise', value: 14.06 }],
		left: 3,
		within: false,
	},
	tweaks: [
		{
			...{ bend: 1, do: 'pull', by: 0.5, expect: { angle: 42.4, sd: 0.35 }, chance: 0.6 },
			...{
				endOffset: 0.03,
				endAngle: 0.1,
				shape: { bend: 1, off: 0.05 },
				checks: [{ name: 'rise', value: 14.24 }],
				left: 0.5,
				within: true,
			},
		},
		{
			...{ bend: 1, do: 'relieve', by: 0.25, expect: { angle: 41.65, sd: 0.35 }, chance: 0 },
			...{
				endOffset: 0.3,
				endAngle: 0.4,
				shape: { bend: 1, off: 0.05 },
				checks: [{ name: 'rise', value: 13.98 }],
				left: 4.5,
				within: false,
			},
		},
	],
};
export const SCRAPPED: DoneNote = {
	...DONE,
	scrapped: true,
	bends: [
		{ design: 42, target: 42, made: 41.9, sd: 0.12, pulls: 2, seats: 1 },
		{ design: 48, target: 48.2, made: null, sd: null, pulls: 1, seats: 1 },
	],
	checks: [],
	fits: false,
	cuts: [],
	finish: [],
};
