import type {
	CheckAsk,
	ConfirmAsk,
	DecideAsk,
	MeasureAsk,
	PullAsk,
	SetAsk,
} from '../../../src/session/protocol/asks.ts';
import type { ChangeDie } from '../../../src/session/protocol/facts/caution.ts';
import { GENERAL_CAUTIONS } from '../../../src/session/protocol/facts/caution.ts';
import type { CorrectedNote, DoneNote, SessionNote, WarningsNote } from '../../../src/session/protocol/notes.ts';

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
			...{ bend: 4, needs: 2, is: 1.75 },
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
	cautions: [{ code: 'clamp-room', needs: 4, is: 3.5 }],
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
	reason: [
		{ code: 'springback-expected', by: 3.6, to: 47.9, sd: 0.4, known: { tubes: 0, near: [], pulls: 1 } },
		{ code: 'chance-over', limit: 48.7, chance: 0.018 },
	],
};
export const MEASURE: MeasureAsk = {
	ask: 'measure',
	entry: 6,
	bend: 2,
	expect: { angle: 47.9, sd: 0.35 },
	readings: 2,
	reason: [{ code: 'first-measurement' }],
};
export const CONFIRM: ConfirmAsk = {
	ask: 'confirm',
	entry: 7,
	of: 'angle',
	reading: 84.1,
	expect: { value: 47.9, sd: 0.35 },
	reason: [{ code: 'above-the-dial', value: 84.1, held: 51.5 }],
	bend: 2,
};
/** A pull that did not stop where it was asked to. */
export const CONFIRM_LOADED: ConfirmAsk = {
	...{ ask: 'confirm', entry: 6, of: 'loaded', reading: 61.5, expect: { value: 51.5, sd: 0.35 }, bend: 2 },
	reason: [{ code: 'off-the-stop', stop: 51.5, value: 61.5 }],
};
export const CONFIRM_CHECK: ConfirmAsk = {
	...{ ask: 'confirm', entry: 9, of: 'check', reading: 15.81, expect: { value: 14.31, sd: 0.08 }, name: 'rise' },
	reason: [
		{ code: 'check-off', name: 'rise', kind: 'drop', expected: 14.31, value: 15.81 },
		{
			...{ code: 'look-at', kind: 'drop', bend: 2, angle: 47.8 },
			slip: { of: 'mark', bend: 2, was: 39.625, would: 39.125 },
		},
	],
};
export const CHECK: CheckAsk = {
	ask: 'check',
	entry: 8,
	name: 'rise',
	kind: 'drop',
	expect: { value: 14.31, sd: 0.08 },
	design: 14.25,
	tolerance: 0.0625,
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
	reason: [
		{ code: 'bend-short', by: 0.9, chance: 0.97 },
		{ code: 'pull-again' },
		{ code: 'bend-made', angle: 47.3, sd: 0.12, target: 48.2 },
	],
	accepted: { endOffset: 0.02, endAngle: 0.1, shape: { bend: 1, off: 0.05 }, checks: [], left: 0.4, within: true },
	tweaks: [],
};
const EVERY_CHECK = [
	{ name: 'rise', value: 14.28, sd: 0.05 },
	{ name: 'legs', value: 0.2, sd: 0.15 },
	{ name: 'reach', value: 31.25, sd: 0.08 },
	{ name: 'lie', value: 0.03, sd: 0.05 },
];
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
/** The first of four bends is made, every check foretold: more than a small window has room for. */
export const CORRECTED_FIRST: CorrectedNote = {
	...CORRECTED,
	after: { bend: 1 },
	remaining: [
		{ bend: 2, fromStart: 39.5625, angle: 48.4, rotation: 0, was: { fromStart: 39.5, angle: 48, rotation: 0 } },
		...CORRECTED.remaining,
	],
	predicted: { ...CORRECTED.predicted, checks: EVERY_CHECK },
	without: { ...CORRECTED.without, checks: EVERY_CHECK },
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
		{ end: 'start', off: 0.5, bend: 1, fromTangent: 12, fromCorner: 14.5 },
		{ end: 'far', off: 0.4375, bend: 4, fromTangent: 12, fromCorner: 14.5 },
	],
	finish: [{ code: 'check-not-read', name: 'lie', kind: 'out', design: 0, tolerance: 0.125, expected: 0.02 }],
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
		...GENERAL_CAUTIONS.map((code) => ({ code })),
		{ code: 'cut-length', length: 116 },
		{ code: 'growth-expected', growth: 1.01 },
		{ code: 'swing', reach: 17, above: null, below: null, floor: null },
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
/** The same bend on another die than the one before. */
export const CHANGE_DIE: ChangeDie = { code: 'change-die', die: '4 1/2 tight', clr: 4.5, from: '5.5 in' };
export const SET_DIE: SetAsk = { ...SET, die: CHANGE_DIE.die, cautions: [CHANGE_DIE, ...SET.cautions] };
/** The same bend in the die a second time: no turn, and the dial expected where it was left. */
export const SET_AGAIN: SetAsk = {
	...SET,
	seat: 2,
	tubeTurn: { degrees: 0, way: 'none' },
	pointer: 47.5,
	still: true,
	cautions: [{ code: 'seat-as-before' }],
};
const CHECKED = { ask: 'check', entry: 8 } as const;
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
	includes: 0.5,
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
	to: 48.5,
	reason: [
		{ code: 'bend-over', by: 0.9, chance: 0.98 },
		{ code: 'open-by', by: 0.6, to: 48.5 },
		{ code: 'go-easy-opening' },
		{ code: 'bend-made', angle: 49.1, sd: 0.12, target: 48.2 },
	],
};
/** The machine is at its end, and the bend still short. */
export const LIMIT: DecideAsk = {
	...DECIDE,
	advice: 'accept',
	limit: true,
	reason: [
		{ code: 'bend-short', by: 0.9, chance: 0.97 },
		{ code: 'limit-reached' },
		{ code: 'bend-made', angle: 47.3, sd: 0.12, target: 48.2 },
	],
};
export const GIVEN_UP: DecideAsk = {
	...DECIDE,
	advice: 'scrap',
	made: { angle: 58.2, sd: 0.12 },
	reason: [
		{ code: 'bend-over', by: 10, chance: 1 },
		{ code: 'too-far-to-open' },
		{ code: 'bend-made', angle: 58.2, sd: 0.12, target: 48.2 },
	],
};
const END_ALLOWED = { place: 0.25, direction: 1 };
/** The same with all that there is to say of it: more than a small window has room for beside the choices. */
export const HOPELESS: DecideAsk = {
	...GIVEN_UP,
	reason: [
		...GIVEN_UP.reason,
		{ code: 'nearest', fits: false, how: 'accept', bend: 2 },
		{
			...{
				code: 'still-missed',
				endOffset: 4.2,
				endAngle: 9.1,
				endAllowed: END_ALLOWED,
				corner: { bend: 3, off: 2.5, tolerance: 0.25 },
			},
			checks: [
				{ name: 'rise', kind: 'drop', off: 1.9, tolerance: 0.0625 },
				{ name: 'legs', kind: 'angle', off: 9.1, tolerance: 0.5 },
			],
		},
		{ code: 'stock-left', behind: 70, again: false, before: 14 },
	],
};
const LOW = { name: 'rise', kind: 'drop', reading: 14.06, off: -0.19, tolerance: 0.0625 } as const;
/** A check contradicts what was measured of the bend before, and once more what is asked for is the check itself. */
export const MEASURE_AGAIN: DecideAsk = {
	...DECIDE,
	advice: 'measure',
	of: { kind: 'angle', bend: 1 },
	made: { angle: 48.2, sd: 0.12 },
	reason: [{ code: 'does-not-go', again: { kind: 'angle', bend: 1 }, value: 41.6, check: LOW }],
};
export const READ_AGAIN: DecideAsk = {
	...MEASURE_AGAIN,
	of: { kind: 'check', name: 'rise' },
	reason: [{ code: 'does-not-go', again: { kind: 'check', name: 'rise' }, value: 14.06, check: LOW }],
};
export const REOPEN: DecideAsk = {
	...DECIDE,
	advice: 'reopen',
	of: 1,
	made: { angle: 48.2, sd: 0.12 },
	reason: [
		{ code: 'reopen-would', bend: 1, by: 0.5, before: 0.2, chance: 0.7 },
		{
			...{ code: 'still-missed', endOffset: 0.2, endAngle: 0.3, endAllowed: END_ALLOWED },
			checks: [{ name: 'rise', kind: 'drop', off: -0.19, tolerance: 0.0625 }],
		},
	],
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
