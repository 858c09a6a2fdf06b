import type { Fault } from '../../job/facts/index.ts';
import { capital } from '../../units/format.ts';
import type { Quantity } from '../../units/parse.ts';
import type { Units } from '../../units/units.ts';
import { typedFaultWords } from '../job/fault.ts';

/** What the pages of the job form say besides their questions and the job itself. */

export const NEW_JOB = 'a new job';
export const CHANGE = 'What to change';
export const AS_IT_IS = 'as it is';
/** What stands there of a job that is being changed. */
export const nowLine = (now: string): string => `Now: ${now}`;
/** The key that shows lengths another way, where there is little room to say how. */
export const UNITS_BRIEF = 'units';

/** A field's label with what its number is in. */
export function inWhat(label: string, kind: Quantity, units: Units): string {
	if (kind === 'length') return `${label}, ${units}`;
	return kind === 'angle' ? `${label}, degrees` : label;
}

export const WRITE_TEXT = 'Write it on the keyboard and press Enter; / goes back.';

/** `usual`: what + answers. */
export const writeNumber = (usual: string | undefined): string =>
	`Write the number and press Enter${usual === undefined ? '' : `, or + for: ${usual}`}; / goes back.`;

/** What is wrong with an answer. */
export const wrongAnswer = (faults: readonly Fault[]): string => faults.map(typedFaultWords).join(' ');

export const tooFarFromAJob = (path: string): string =>
	`${path} is too far from a job file to be mended here: mend it in a text editor, then look at it again.`;

export const OVERVIEW = {
	title: 'The job',
	save: 'save it',
	saveBrief: 'save',
	empty: (good: boolean): string =>
		`Write the number of a line to change it and press Enter${good ? '; + saves the job' : ''}; / goes back.`,
	elsewhere: (path: string): string => `What no line here changes is mended in a text editor: ${path}`,
} as const;

export const TAKEN = {
	title: 'There is a file of that name',
	said: (path: string): string => `${path} is there already.`,
	otherName: 'save it under another name',
	over: 'write over the file',
} as const;

export const NAMED = {
	title: 'Save under another name',
	label: 'Name of the file',
	wrong: 'Write a name of letters or digits; / goes back.',
	said: 'It goes into the folder of jobs in use; .json is added.',
} as const;

export const LEAVE = {
	title: 'Leave without saving?',
	choice: 'leave without saving',
	plus: 'leave it',
	back: 'go on with it',
	empty: 'Press + to leave the job unsaved, / to go on with it.',
	said: 'What was answered is not kept then.',
} as const;

export const FORM_HELP = {
	title: 'Help: a job on the screen',
	said: [
		'One question at a time; the drawing and the marks grow with every answer, and with every key of one.',
		'Lengths as on the drawing: 31 1/2, 9-3/8, 2\' 6", 362 mm, 12,5, or sums as 12 7/16 - 1.',
		'A straight is measured from where one bend ends to where the next begins, tangent to tangent.',
		'An offset leads the tube over and on beside its own line: two bends by rise and run, or by rise and angle.',
		'/ takes the last answer back, as far as you like. Nothing is written before + in the overview.',
	],
} as const;

/** A bend, a point or a check, counted from 1. */
export const ITEM = {
	title: (what: string, number: number): string => `${capital(what)} ${number}`,
	change: (what: string, number: number): string => `change ${what} ${number}`,
	before: 'put another before it',
	out: (what: string, number: number): string => `take ${what} ${number} out`,
} as const;
