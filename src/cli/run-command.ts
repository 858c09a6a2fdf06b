import { statSync } from 'node:fs';
import { codeOf } from '../files/error-codes.ts';
import { homeFolder } from '../files/home-folder.ts';
import { noHomeWords } from '../words/usage/command-line.ts';
import type { Call, CommandLine } from './command.ts';
import { COMMANDS, HOME_COMMAND } from './commands.ts';
import type { Io } from './io.ts';
import { UsageError } from './usage-error.ts';
import { VERSION } from './version.ts';

/** Runs what the command line asks for and gives the exit code. `samples`: the folder of the sample jobs. */
export async function runCommand(line: CommandLine, io: Io, samples: string): Promise<number> {
	const { command, options } = line;
	if (options.version) return printAsIs(io, `${VERSION}\n`);
	// Loaded only when it is wanted: the topics are long.
	const help: Call['help'] = async (about) => printAsIs(io, (await import('./help.ts')).helpText(about));
	if (options.help) return help(command);
	const spec = command === null ? HOME_COMMAND : COMMANDS[command];
	if (spec === undefined) throw new RangeError(`The table of commands has no "${command}".`);
	return spec.run({ line, samples, home: () => homeGiven(line, io), help }, io);
}

function homeGiven({ options }: CommandLine, { env }: Io): string {
	const home = homeFolder(env, typeof options.home === 'string' ? options.home : null);
	if (isFolderOrNothing(home)) return home;
	throw new UsageError(noHomeWords(home));
}

/** A folder, or a place where one can be made: no file stands at it or on the way to it. */
function isFolderOrNothing(path: string): boolean {
	try {
		return statSync(path, { throwIfNoEntry: false })?.isDirectory() !== false;
	} catch (error) {
		if (codeOf(error) !== 'ENOTDIR') throw error;
		return false;
	}
}

function printAsIs(io: Io, text: string): number {
	io.stdout.write(text);
	return 0;
}
