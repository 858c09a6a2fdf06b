import type { Topic } from './topic.ts';

export const method: Topic = {
	examples: [
		['pullbook practice jobs/bow-rail.json --auto', 'see a whole session played'],
		['pullbook log ID', 'see why it asked for each stop'],
		['pullbook bender shop', 'see what it knows of your bender'],
	],
	sections: [
		{
			heading: 'Where to stop',
			text: [
				'The program keeps a guess about everything between the dial and the angle that stays, and how sure it is of each part.',
				"There is slack and the dial's zero. There is springback that grows with the angle. This tube adds something, and so does each set-up.",
				"The first guess comes from the tube's strength and the die's radius. Every reading moves it and makes it surer.",
				'The stop is a division of your dial, at or under the angle wanted. Too short costs more pulls; too far may cost the tube. The whole bend, all pulls together, goes over about as often as the risk in the job allows.',
				'A pull that did not move the tube tells something too.',
			],
		},
		{
			heading: 'Which readings count',
			text: [
				'A reading far from the expected is asked again. It never slips in unseen.',
				'After the first pull on a tube you measure twice, before anything is built on it. Only a bend that the dial shows more than five degrees short goes on without.',
				'Later the dial alone may do.',
			],
		},
		{
			heading: 'What was made',
			text: [
				'All readings of a bend together give its angle: "made 15.3, give or take 0.2".',
				'A check over a long straight tells an angle more finely than an angle finder. So a check sharpens the angles, and the angles sharpen the springback.',
			],
		},
		{
			heading: 'What to change',
			text: [
				'After each bend the program bends the rest of the tube on paper. It looks for marks, turns and angles that bring the far end and the checks back to the drawing.',
				'Every miss counts in units of its tolerance, and nothing moves further than needed. You see old and new numbers side by side and may keep the old.',
				'If the tube can no longer fit, you hear it at once, with the closest it can still get. You also hear what straight tube you can use again.',
			],
		},
		{
			heading: 'Whether to pull again',
			text: [
				'A bend slightly short is fine where the bends left can take it up. The program then advises to take it as it is.',
				'A bend that went too far is opened only where nothing else serves.',
				'Sometimes a finished bend is the one to change. * and then "see what going back to a made bend would do" shows what each would bring, with its chance.',
			],
		},
		{
			heading: 'Whether it fits',
			text: [
				'Marks, turns, radius, tape and every reading are off by a little. The program works out from these errors how far off the far end may be, and the chance that the tube fits.',
				'It fits when every check is inside its tolerance, every corner and the far end lie within tolerance.shape, and the last straight points within tolerance.direction.',
			],
			rows: [
				['8 in 10 or more', 'it fits, if all of this also holds by the numbers'],
				['5 to 8 in 10', 'it may fit; the page names the one measurement that tells most'],
				['below', 'it does not fit'],
			],
		},
		{
			heading: 'Give or take',
			text: [
				'"Give or take 0.2" is one standard deviation. Nine in ten true values lie within 1.645 times that.',
				'The program assumes that hands set a mark within half a millimeter and a turn within a third of a degree. Where your earlier tubes showed rougher or finer hands, it assumes as much more or less. Tell it what you read back, and the reading counts instead.',
			],
		},
		{
			heading: 'Corners and radius',
			text: [
				"The drawing's sharp corners and ends hold. Straights, marks and cut length follow from them and from the radius that the bends come out with.",
				'That radius is the one of your test piece. Without one it is what this die and tube have shown, or what to expect of a tube of that strength.',
			],
		},
		{
			heading: 'What is kept',
			text: [
				'The log holds the facts: what was asked and what you answered. Everything else is worked out from them again.',
				'Taking an answer back leaves it in the log and works everything out without it.',
			],
		},
		{
			heading: 'Limits',
			text: [
				'Rotary-draw bends only, with straight tube between them.',
				'The program does not move the machine. If you cannot stop within half a degree, it cannot hold half a degree.',
				'A narrow band costs pulls. The program says how many before the first pull.',
				'Without a test piece, growth and stretch are only expected. A test piece is worth its scrap.',
				'It does not predict thinning, wrinkles, flattening or cracks. The warning tight-radius comes below three diameters.',
			],
		},
	],
};
