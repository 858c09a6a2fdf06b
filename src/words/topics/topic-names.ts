/** What each topic of help is about, in a few words, by the name that `pullbook help` takes. */
export const TOPIC_NAMES = {
	keys: 'every key of the screen',
	display: 'units, plain characters, no colors, screen readers',
	files: 'where everything is kept; power cuts, full disks',
	safety: 'what is never lost, and what is not promised',
	'other-end': 'the opposite part, and bending from the other end',
	learning: 'what each session teaches, and how to forget it',
	trend: 'whether a bender has changed; control limits',
	tables: 'the columns of --csv',
	method: 'how the program decides, in plain words',
	'line-mode': 'the session without a screen, one JSON object a line',
	'exit-codes': 'what the number means that a command ends with',
} as const;

export type TopicName = keyof typeof TOPIC_NAMES;

export function isTopic(name: string): name is TopicName {
	return Object.hasOwn(TOPIC_NAMES, name);
}
