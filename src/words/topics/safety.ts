import type { Topic } from './topic.ts';

export const safety: Topic = {
	examples: [
		['pullbook bend JOB --resume', 'go on where it stopped'],
		['pullbook bend JOB --rescue /media/stick', 'go on there when the disk refuses'],
	],
	sections: [
		{
			heading: 'What is safe',
			rows: [
				['Every answer', 'is on the disk before the next question. A power cut takes nothing away.'],
				['NOT SAVED', 'means what it says. Give the answer again, or write it down.'],
				['One window', 'writes a session. A second one is refused (exit code 4).'],
				['The log', 'is only added to. Damage is shown, never written over (exit code 6).'],
				['Another folder', 'is used only when you agree to it, and resuming brings its lines home.'],
			],
		},
		{
			heading: 'What is not',
			rows: [
				['A lost disk', 'loses its logs. pullbook log export DIR keeps them twice.'],
				['Cloud folders', 'may lose what their software loses. Keep logs on your own disk.'],
				['A memory disk', 'is empty after a power cut. The program says so when you choose one.'],
				['An edited log', 'counts as damaged. Copy logs, never edit them.'],
				['The tube', 'stays as it is bent: taking an answer back undoes no pull.'],
			],
		},
	],
};
