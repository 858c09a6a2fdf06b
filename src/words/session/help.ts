import type { Ask } from '../../session/protocol/asks.ts';
import type { Lengths } from '../lengths.ts';
import { LENGTH_NAMES } from '../lengths.ts';

/** What the help of a session says, and what it can show. */
export const SESSION_HELP = {
	title: 'Help',
	label: 'Number of your choice, or / to go back',
	choices: {
		shown: 'what is shown, and heard',
		layout: 'the tube laid out, with all marks',
		topics: 'topics to read',
	},
	topics: 'Topics of help',
	numbers:
		'Numbers: 31.5 or 31,5; 31 1/2, on the numeric pad 31+1/2; 12 7/16 - 1; with a unit of their own: 362 mm, 2\' 6". What was understood stands beside the field.',
} as const;

const KEYS = [
	'+    as advised, ready, go on     Enter  gives the number',
	'/    take back, or back           Esc    clears, or back',
	'*    more: notes, corrections, other readings, leave',
	'h ?  this help; on the pad: *     letters as on the key line',
];
const ARROWS = 'Up   back through the readings, to correct one of them';
const NUMBERS_BRIEF = 'Numbers: 31.5; 31 1/2, on the pad 31+1/2; 362 mm; 2\' 6"';

/** What each key does. In a small window how a number is written stands nowhere else, and the key line has the arrows where they lead anywhere. */
export const keysInHelp = (small: boolean): readonly string[] => [...KEYS, small ? NUMBERS_BRIEF : ARROWS];

/** The pages that have a help of their own besides the questions. */
type Helped = Ask['ask'] | 'corrected' | 'released' | 'layout' | 'changeDie';

const HELP: Readonly<Record<Helped, string>> = {
	set: 'Put the large mark at the die\'s line, turn the tube as said, clamp it. "Moved" counts from the mark that you drew on the straight tube. Straight tube: set the dial to 0, or write what it shows. Bent tube set again: don\'t move the dial, write what it shows. + leaves it out.',
	pull: 'Pull until the dial shows the large stop, held under load; slow down where it says ease up. Write what it really shows. The ladder has a rung for each pull of this bend: [ and ] are the tolerance, | is what is wanted, a block is what was made, shading what is expected.',
	measure:
		'Let the tube go and measure how far it is bent: a straight tube is 0. Where two readings are asked for, take the angle finder off between them.',
	confirm:
		'The reading is far from what was expected. Read the instrument again. If it says the same press +, else write the new one.',
	check:
		'Measure the tube itself as the page says. A check tells the angles more finely than the angle finder does. What is expected comes from the bends as made.',
	decide:
		'Take the bend as it is, or go on with it. + follows the advice. A bend that is short can be pulled again; one that is over can hardly be opened. Where it says to measure a bend again, lay the angle finder on again and write what it shows.',
	corrected:
		"These are new numbers for the bends left, so that the tube still fits. Drawn: by the drawing. Before: until now. Now: from here on. Uncorrected: the tube that the drawing's numbers would give.",
	released:
		'The dial once the pressure is off and the tube has sprung back. It tells how much of the bend is spring. Press + if you did not look.',
	layout:
		'Measure every mark from the same end with one tape, without moving it. A correction later says how far it moves a mark from these.',
	changeDie:
		'Each die has its own radius and springs back in its own way. The numbers that follow are for this one. The marks on the tube stay.',
};
const IS_OVER = 'The session is over.';
const ANY_OTHER =
	'Every answer is on disk before the next question comes. What was done to the tube stays done, whatever you take back here.';

/** What the page is about from which help was asked; `ask`: the open question, null in a session that is over. */
export function pageHelp(page: string, ask: Ask['ask'] | null): string {
	if (page === 'ask') return ask === null ? IS_OVER : HELP[ask];
	return Object.hasOwn(HELP, page) ? HELP[page as Helped] : ANY_OTHER;
}

/** What can be shown, and heard, otherwise: each as it would be from here on. */
export const SHOWN = {
	title: 'What is shown',
	lengths: (next: Lengths, now: Lengths): string => `lengths in ${LENGTH_NAMES[next]} (now ${LENGTH_NAMES[now]})`,
	mark: (fromStart: boolean): string =>
		fromStart ? 'large mark from the start end, at every bend' : 'large mark from the far end, from bend 2 on',
	checklist: (on: boolean): string => `check list ${on ? 'on' : 'off'}`,
	bell: (on: boolean): string => `bell ${on ? 'on' : 'off'}`,
} as const;
