/** What is wrong with a command line, whatever the command. `program`: `pullbook`, or with the command behind it. */

/** The program, or with words behind it that are typed there. */
export const programWords = (...words: readonly (string | null)[]): string =>
	['pullbook', ...words.filter((word) => word !== null)].join(' ');

export const noCommandWords = (word: string, commands: readonly string[]): string =>
	`There is no command "${word}". The commands are ${commands.join(', ')}; a folder is given with its path (./${word}).`;

/** A job file stands where a command belongs. */
export const jobForCommandWords = (file: string): string =>
	`There is no command "${file}". To bend a job write: pullbook bend ${file}`;

export const noHelpWords = (word: string, commands: readonly string[], topics: readonly string[]): string =>
	`There is no command "${word}" to help with. The commands are ${commands.join(', ')}. The topics are ${topics.join(', ')}.`;

export const noOptionWords = (program: string, option: string, options: readonly string[]): string =>
	`${program} has no option ${option}. Its options are ${options.join(', ')}.`;

export const givenTwiceWords = (program: string, option: string): string =>
	`${program}: ${option} is given twice. Give it once.`;

export const noValueWords = (program: string, option: string, given: string): string =>
	`${program}: ${option} takes no value, but "${given}" stands there.`;

export const needsValueWords = (program: string, option: string, value: string): string =>
	`${program}: ${option} needs a value: ${option} ${value}.`;

export const needsWords = (program: string, missing: string, operands: readonly string[]): string =>
	`${program} needs ${missing}: ${program} ${operands.join(' ')}. See pullbook help.`;

/** More stands there than the command takes. `most`: how many it takes. */
export function takesWords(
	program: string,
	operands: readonly string[],
	most: number,
	given: readonly string[],
): string {
	const one = most === 0 ? 'no argument' : `one ${operands[0]}`;
	const takes = most > 1 ? operands.join(' ') : one;
	return `${program} takes ${takes}, but ${given.map((word) => `"${word}"`).join(', ')} stand there.`;
}

/** How a job is to be bent, for every command that takes one to the bender. */
export const keptHandWords = (program: string): string =>
	`${program}: a resumed session keeps the hand and the end that it was begun with; leave --mirror and --from out.`;
export const noEndWords = (program: string, given: string): string =>
	`${program}: --from is start or far, an end of the drawing, not "${given}".`;

export const noHomeWords = (home: string): string =>
	`${home} is no folder: give a folder to keep settings and logs in with --home DIR.`;
export const noSchemaWords = (name: string, names: readonly string[]): string =>
	`There is no schema "${name}". There are ${names.join(', ')}. For example: pullbook schema log`;
export const noShellWords = (shell: string, shells: readonly string[]): string =>
	`There is no completion for "${shell}". The shells are ${shells.join(', ')}.`;
export const wholeManualWords = (topic: string): string =>
	`pullbook help --man is the whole manual; leave "${topic}" out.`;

/** In front of every message on standard error. */
export const inOurName = (sentence: string): string => `pullbook: ${sentence}\n`;
