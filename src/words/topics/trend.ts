import type { Topic } from './topic.ts';

export const trend: Topic = {
	examples: [
		['pullbook log --trend', 'the bender of the newest session'],
		['pullbook log --trend shop', 'every die and tube on the bender called shop'],
		['pullbook log --trend jobs/bow-rail.json', 'one job'],
	],
	sections: [
		{
			heading: 'When springback has moved',
			text: [
				'Look at the pointer first: it may have been bumped. Then look at the die, the clamp and the slack in the frame. Then ask whether the tube is other steel.',
				'The home screen says it in one line, and so does the start of a session. The line stays for six tubes, then the new springback counts as usual. It goes sooner if the next tubes do not confirm it.',
				'Nothing has to be set. The next stops follow what the last tubes showed.',
				'To start over with a bender that was repaired: pullbook help learning.',
			],
		},
		{
			heading: 'What is charted',
			rows: [
				['springback', 'at 45 degrees, by the readings of that session alone'],
				['error', 'made less wanted, mean of the bends'],
				['first pull', 'measured less expected, mean of the first pulls'],
			],
		},
		{
			heading: 'How limits are made',
			text: [
				'The center is the mean of the first 25 sessions, or of as many as there are from 8 up. The limits lie three sigma off, sigma being the mean difference of two in a row over 1.128.',
				'Two in a row are usually no further apart than 3.267 times that mean difference.',
				'Both numbers are from the tables for control charts of individuals and moving range (NIST/SEMATECH e-Handbook, 6.3.2.2).',
			],
		},
		{
			heading: 'What marks a session',
			rows: [
				['beyond the limit', 'more than three sigma off'],
				['2 of 3 far off', 'two of three in a row more than two sigma off on one side'],
				['4 of 5 off', 'four of five in a row more than one sigma off on one side'],
				['8 in a row', 'eight in a row on one side of the center'],
				['far from the one before', 'further from it than two in a row usually are'],
			],
			text: [
				'These are the rules of the Western Electric handbook (1956). They call out now and then where nothing has happened: look, but do not chase them.',
				'The line at home rests on a finer test. It adds up what all readings of each session say of a shift by one degree (a cumulated sum of likelihood ratios).',
				'In a simulated shop with nothing wrong the line stands after less than one tube in 300. It finds a shift of a degree within six tubes, in 8 shops of 10 or more.',
			],
		},
	],
};
