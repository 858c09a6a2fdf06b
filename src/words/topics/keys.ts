import type { Topic } from './topic.ts';

export const keys: Topic = {
	examples: [
		['18.5 Enter', 'give a number'],
		['16+3/8 Enter', '16 3/8 on the numeric pad, which has no space'],
		['+', 'do what is advised, or go on'],
		['/', 'take the last answer back (+ confirms), or go back a page'],
	],
	sections: [
		{
			heading: 'On every page',
			rows: [
				['Enter', 'gives the number, or takes the choice'],
				['+', 'as advised; ready; go on; next page'],
				['/', 'take back at a question, back on every other page'],
				['*', 'more: notes, corrections, other measurements, help, leaving'],
				[
					'h or ?',
					'help with this page, and topics to read; on the numeric pad * has it. Where letters search, only ?',
				],
				['Esc', 'clears what you typed; with nothing typed, goes back'],
				['Backspace', 'takes off the last character'],
				['Ctrl-C', 'leaves at once; every answer given is kept'],
				['Ctrl-Z', 'pauses the program; fg goes on'],
			],
		},
		{
			heading: 'In a session',
			rows: [
				['Up, Down', 'walk through your readings; type the right number at a wrong one'],
				['u', 'lengths in inch fractions, decimal inches or millimeters'],
				['m', 'from bend 2 on: shows the large mark from the far end, or from the start end'],
				['c', 'check list on or off, while you set the tube'],
				['+ at a stop', 'the dial was held where asked'],
				['r', 'asks for the dial after release again, once you have passed it over twice'],
				['s', 'the tube never left the die, at a further set-up'],
				['+ at the end', 'the next piece, where the job wants several; * has another of the same'],
			],
		},
		{
			heading: 'In a list',
			rows: [
				['1 2 3 … Enter', 'takes the choice of that number'],
				['Up, Down', 'point at a choice; Enter takes it'],
				['Page Up, Page Down', 'ten choices back, ten on'],
				['Home, End', 'the first choice, the last'],
				['letters', 'search the list of the home screen, and that of kept sessions'],
				['p', "on a job's page: a PDF of its shop sheet"],
			],
		},
		{
			heading: 'Reading a long page',
			rows: [
				['+ or Enter', 'next page'],
				['-', 'page before'],
				['2 8', 'a line down, a line up'],
				['7 1', 'to the beginning, to the end'],
				['/ or Esc', 'back'],
			],
		},
		{
			heading: 'Looking at a kept session',
			rows: [
				['+', 'reads on: a page a bend, then corrections, checks, the tube, each line, plots'],
				['Left, Right, Up, Down', 'turn the tube, step through the lines, change the plot, move a long page'],
				['4 6 8 2', 'the same on the pad'],
				['0, 5', 'on the tube: its errors ten times as large; the view as it was'],
				['7 1', 'line by line: the first line, the last'],
				['/', 'back to the session, then to the list'],
			],
		},
		{
			heading: 'Numbers',
			text: [
				'Write them as you say them: 31.5, 31,5, 31 1/2, 12 7/16 - 1, 2\' 6", 362 mm. A number without a unit counts in the unit that the page shows.',
				'The page shows what it understood beside what you type. Instruments that type like a keyboard work too.',
			],
		},
	],
};
