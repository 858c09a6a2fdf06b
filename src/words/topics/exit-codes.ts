import type { Row, Topic } from './topic.ts';

/** Every exit code: in a few words, and what to do then. */
export const EXIT_CODES: readonly (readonly [code: string, brief: string, then: string])[] = [
	['0', 'done', 'A scrapped tube counts as done.'],
	[
		'1',
		'the program failed',
		'Run the same command again with --debug and keep what it prints. After cut: too few sticks.',
	],
	['2', 'bad input', 'A job file, an option or a command is wrong. The message says what to write instead.'],
	['3', 'left, to be resumed', 'Go on with pullbook bend JOB --resume.'],
	['4', 'another session has the log', 'Close the other window first. Nothing was written here.'],
	['5', 'the disk refused a write', 'The last answer is not saved. Make room and give it again, or add --rescue DIR.'],
	['6', 'a log is damaged', 'It is only read from now on. pullbook log ID shows what is whole.'],
	['128 + n', 'ended by signal n', 'Every answer is kept. Go on with pullbook bend JOB --resume.'],
];

export const exitCodes: Topic = {
	examples: [
		['pullbook check jobs/*.json && echo all right', 'goes on only if every file is right'],
		['pullbook bend JOB --lines; echo $?', 'prints the exit code'],
	],
	sections: [
		{
			heading: 'Exit codes',
			rows: EXIT_CODES.map(([code, brief, then]): Row => [code, `${brief}. ${then}`]),
		},
	],
};

/** All of them in a line. */
export const exitCodesWords = (codes: typeof EXIT_CODES): string =>
	`Exit codes: ${codes.map(([code, brief]) => `${code} ${brief}`).join(', ')}.`;
