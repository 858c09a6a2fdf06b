import type { Topic } from './topic.ts';

export const display: Topic = {
	examples: [
		['u', 'lengths in fractions, decimals or millimeters, at any question'],
		['pullbook --ascii', 'draw with plain characters only'],
		['NO_COLOR=1 pullbook', 'draw without colors'],
		['INK_SCREEN_READER=true pullbook', 'for a screen reader: words, line by line'],
	],
	sections: [
		{
			heading: 'Units',
			text: [
				'Press u until the lengths read the way your tape does. From then on a number without a unit counts in what is shown.',
				'The program keeps your choice for the next session. The job file stays as it is.',
			],
		},
		{
			heading: 'The bell',
			text: [
				'The terminal rings when a reading is doubted, when numbers changed, and when something went wrong.',
				'To switch it off press h, then 1 Enter, then 4 Enter. The program keeps your choice.',
			],
		},
		{
			heading: 'Plain characters',
			text: [
				'With --ascii, or in the locale C, the screen uses ASCII characters only. Printed pages keep their ° and ±.',
			],
		},
		{
			heading: 'Colors',
			text: [
				'No color carries a meaning of its own. NO_COLOR=1 or --no-color takes them away. The colors are the 16 of your terminal.',
			],
		},
		{
			heading: 'Screen readers',
			text: [
				'With INK_SCREEN_READER=true the program draws nothing. It writes each new line once, in words, and never writes over it.',
				'A front end of your own can use the line mode: pullbook help line-mode.',
			],
		},
		{
			heading: 'Small windows',
			text: [
				'The program works from 60 columns by 20 rows up. Where a page has no room, "more: larger window" stands beside its title.',
			],
		},
	],
};
