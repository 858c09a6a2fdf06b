import type { Topic } from './topic.ts';

export const otherEnd: Topic = {
	examples: [
		['pullbook bend jobs/mast-brace.json --mirror', 'bend the brace for the other side'],
		['pullbook bend jobs/mast-brace.json --from far', "begin at the drawing's far end"],
		['pullbook layout jobs/mast-brace.json', 'see which end is better'],
	],
	sections: [
		{
			heading: 'How it works',
			text: [
				'layout, bend and practice take both options. On the home screen pick the job, then the hand and the end.',
				'Marks, turns, trims and checks follow. A session keeps the hand and end it began with.',
			],
		},
		{
			heading: 'Which end first',
			text: [
				'layout tells from which end every bend has room: for the clamp, for the tube behind the last bend, above the floor.',
				'It also tells which end leaves later bends more to correct with.',
			],
		},
		{
			heading: 'Room for the swing',
			text: [
				"layout lists how far the bent part reaches while it swings with the die, and how far above and below the die's plane.",
				'Give tooling.floor in the job, and layout warns where the part would meet the floor.',
				'Which side is up depends on the side of the tube on which your die lies. layout tells both.',
			],
		},
	],
};
