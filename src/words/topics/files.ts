import type { Topic } from './topic.ts';

export const files: Topic = {
	examples: [
		['pullbook bend JOB --resume', 'go on where a power cut stopped you'],
		['pullbook bend JOB --rescue /media/stick', 'go on there when the disk refuses'],
		['pullbook log', 'list what is kept'],
		['pullbook --home /media/stick', 'keep everything in another folder'],
	],
	sections: [
		{
			heading: 'The folder',
			text: ['Sessions, settings and the cache lie in one folder. The program takes the first of these:'],
			rows: [
				['--home DIR', 'for one command'],
				['PULLBOOK_HOME', 'a variable of the environment'],
				['$XDG_DATA_HOME/pullbook', 'where that variable is set'],
				['~/.local/share/pullbook', 'otherwise; on Windows %LOCALAPPDATA%\\pullbook'],
			],
		},
		{
			heading: 'What lies in it',
			rows: [
				['sessions/', 'one log file a session, one line an answer, each with a checksum'],
				['….log.imported', 'beside a log: where it was imported from'],
				['practice/', 'the same for practice; nothing learns from it'],
				['cache/', 'what was worked out from the logs; you may delete it'],
				['settings.json', 'benders, dies and how the screen looks'],
			],
		},
		{
			heading: 'Copy logs, never edit them',
			text: [
				'The program only adds to a log. To keep logs elsewhere too write pullbook log export DIR.',
				'An edited log counts as damaged. The program then reads it and writes no more to it.',
			],
		},
		{
			heading: 'From one laptop to another',
			text: [
				'Write pullbook log export DIR on the old one and pullbook log import DIR on the new one.',
				'Do both as often as you like: what is there already is not copied again, and nothing is written over.',
				'If a session went on elsewhere, only its new lines are added. If it went on in two places, both logs are kept.',
				'An imported session is marked. --resume goes on with it only when you name it.',
			],
		},
		{
			heading: 'After a power cut',
			text: [
				'Start the program again. The home screen offers the session and asks the very question that was open.',
				'If the terminal shows no cursor, or still the drawing, type reset and press Enter. Your answers are safe.',
			],
		},
		{
			heading: 'When the disk refuses',
			text: [
				'The page says NOT SAVED and keeps your reading. Make room on the disk and press Enter again, or write the number down.',
				'Leaving then gives exit code 5. Every answer before it is kept.',
				'To go on in another folder press Esc, then *. In the line mode write --rescue DIR beforehand.',
				'When the disk works again, --resume brings those lines back into the log.',
				'Were you told to name the folder? Then add --rescue DIR, to pullbook log as well.',
			],
		},
		{
			heading: 'Network and cloud folders',
			text: ['A folder that other software copies may lose what that software loses. Keep logs on a disk of your own.'],
		},
	],
};
