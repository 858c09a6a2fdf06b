import type { Topic } from './topic.ts';

export const learning: Topic = {
	examples: [
		['pullbook bender shop', 'see what bender "shop" has learned'],
		['pullbook bender shop --die five --forget', 'the die is new or was adjusted: learn it again'],
		['pullbook bender shop --die five --remember', 'take that back'],
		['pullbook bend JOB --no-learn', 'neither use nor keep what sessions teach'],
	],
	sections: [
		{
			heading: 'What it learns',
			rows: [
				['springback', 'of this bender and die with this tube and material'],
				['your hands', 'how closely you stop, how the tube sits each time; marks and turns are taken to be as close'],
				['your instruments', 'how dial and angle finder read'],
				['wrong numbers', 'how often one comes; where they are frequent, you measure every bend twice'],
			],
		},
		{
			heading: 'From what',
			text: [
				'The program learns under the names of bender and die. A second bender needs a second name.',
				'Other tubes, dies and benders help too, if the material is the same. The less they have in common, the less they help. The newest sessions count most.',
				'A reading you took back teaches nothing. A scrapped tube teaches what you read on it. Practice teaches nothing.',
			],
		},
		{
			heading: 'The cache',
			text: [
				'The logs hold everything. The cache only saves reading them again, and you may delete it.',
				'After that, or after an update that learns another way, a session reads logs for two seconds and says how many it left out. pullbook log reads them all.',
			],
		},
	],
};
