import { CHOOSE_OR_BACK } from '../../../words/screen/usual.ts';
import type { Choice } from '../../shell/prompt.ts';
import { line, wrapped } from '../../text/line.ts';
import type { Page, SessionState, Step } from '../session-state.ts';
import { type PageView, ROOMY_ROWS } from './page.ts';

/** What the page from which help was asked is about, the keys, and what can be shown otherwise. */
export function helpPage(state: SessionState, from: Page): PageView {
	return {
		title: 'Help',
		prompt: {
			label: 'Number of your choice, or / to go back',
			choices: choicesOf(from),
			back: { label: 'back', step: { step: 'page', page: from } },
			empty: CHOOSE_OR_BACK,
		},
		body: (room) => [
			{ rank: 0, lines: wrapped(about(state, from), room.columns) },
			{ rank: 1, lines: (room.window < ROOMY_ROWS ? KEYS_BRIEF : KEYS).map((text) => line(text)) },
			{ rank: 2, extra: room.window < ROOMY_ROWS, lines: wrapped(NUMBERS, room.columns) },
		],
	};
}

function choicesOf(from: Page): Choice<Step>[] {
	return [
		{ label: 'what is shown, and heard', step: { step: 'page', page: { page: 'shown', from } } },
		{ label: 'the tube laid out, with all marks', step: { step: 'page', page: { page: 'layout' } } },
		{ label: 'topics to read', step: { step: 'page', page: { page: 'topics', from } } },
	];
}

const KEYS = [
	'+    as advised, ready, go on     Enter  gives the number',
	'/    take back, or back           Esc    clears, or back',
	'*    more: notes, corrections, other readings, leave',
	'h ?  this help; by pad * has it   letters as on the key line',
	'Up   back through the readings, to correct one of them',
];

/** The key line has the arrows where they lead anywhere; how a number is written stands nowhere else. */
const KEYS_BRIEF = [...KEYS.slice(0, -1), 'Numbers: 31.5; 31 1/2, on the pad 31+1/2; 362 mm; 2\' 6"'];

const NUMBERS =
	'Numbers: 31.5 or 31,5; 31 1/2, on the numeric pad 31+1/2; 12 7/16 - 1; with a unit of their own: 362 mm, 2\' 6". What was understood stands beside the field.';

function about({ ask }: SessionState, { page }: Page): string {
	if (page === 'ask') return ask === null ? HELP.over! : HELP[ask.ask]!;
	return HELP[page] ?? HELP.other!;
}

const HELP: Record<string, string> = {
	set: 'Put the large mark to the die\'s line, turn the tube as said, clamp it. "Moved" is from the mark that was drawn on the straight tube. A straight tube: set the dial to 0, or type what it shows. A bent tube, in the die again: don\'t move the dial, type what it shows. + leaves it out.',
	pull: 'Pull until the dial shows the large stop, held under load; slow down where it says ease up. Type what it really shows. The ladder has a rung for each pull of this bend: [ and ] are the tolerance, | is what is wanted, a block is what was made, shading what is expected.',
	measure:
		'Let the tube go and measure the bend: how far it is bent, a straight tube is 0. Two readings are two: take the finder off between them.',
	confirm:
		'The reading is far from what was expected. Read the instrument again. If it says the same press +, else type the new reading.',
	check:
		'Measure the tube itself as said and type it. It tells the angles more finely than the finder does. What is expected is from what was made so far.',
	decide:
		'Take the bend as it is, or go on with it. + follows the advice. A bend that is short can be pulled again; one that is over can hardly be opened. Where it says to measure a bend again, lay the finder on anew and type what it shows.',
	corrected:
		"The program planned the bends left anew, so that the tube still fits. Drawn: by the drawing. Before: until now. Now: from here on. Uncorrected: the tube that the drawing's numbers would give.",
	released:
		'The dial once the pressure is off and the tube has sprung back. It tells how much of the bend is spring. Press + if you did not look.',
	layout:
		'Measure every mark from the same end with one tape, without moving it. A correction later says how far it moves a mark from these.',
	changeDie:
		'Each die has its own radius and springs back in its own way. The numbers that follow are for this one. The marks on the tube stay.',
	over: 'The session is over.',
	other:
		'Every answer is on disk before the next question comes. What was done to the tube stays done, whatever you take back here.',
};
