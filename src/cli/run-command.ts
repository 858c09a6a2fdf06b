import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { homeFolder } from '../settings/home.ts';
import type { CommandLine } from './args.ts';
import { bentAsIn } from './bent-as.ts';
import { type Io, tellOn, whyNoScreen } from './io.ts';
import { type JobFolder, listed } from './job-folder.ts';
import { UsageError } from './usage-error.ts';
import { VERSION } from './version.ts';

/** What is known about where the program runs. */
interface Place {
	/** The folder that holds the sample jobs. */
	samples: string;
}

/**
 * Runs what the command line asks for and gives the exit code. Every command is loaded only when it is wanted: the
 * mark table must not wait for the screen, nor the screen for the page writer.
 */
export async function runCommand(line: CommandLine, io: Io, place: Place): Promise<number> {
	const { command, operands, options } = line;
	if (options.version) return print(io, `${VERSION}\n`);
	if (options.help || command === 'help') {
		const about = options.help ? command : (operands[0] ?? null);
		return print(io, (await import('./help.ts')).help(about));
	}
	const home = homeFolder(io.env, typeof options.home === 'string' ? options.home : null);
	if (statSync(home, { throwIfNoEntry: false })?.isDirectory() === false) {
		throw new UsageError(`${home} is no folder: give a folder to keep settings and logs in with --home DIR.`);
	}
	if (command === null) return openHome(line, io, place, home);
	if (command === 'bend') return bend(line, io, home);
	if (command === 'practice') return practice(line, io, home);
	const json = options.json === true;
	const [first] = operands as [string, ...string[]];
	switch (command) {
		case 'layout':
			return (await import('./layout.ts')).runLayout({ file: first, json, home, as: bentAsIn(line) }, io);
		case 'check':
			return check(operands, json, home, io);
		case 'log':
			return (await import('./log.ts')).runLog({ id: operands[0] ?? null, json, home }, io);
		default:
			return (await import('./bender.ts')).runBender({ name: operands[0] ?? null, json, home, options }, io);
	}
}

function print(io: Io, text: string): number {
	io.stdout.write(text);
	return 0;
}

/** What a job file leaves to its bender is no fault, so the kept ones are looked up. */
async function check(files: readonly string[], json: boolean, home: string, io: Io): Promise<number> {
	const { keptTooling } = await import('./kept-tooling.ts');
	const lookup = keptTooling(home, tellOn(io));
	return (await import('./check.ts')).runCheck({ files, json, lookup }, io);
}

async function openHome({ operands, options }: CommandLine, io: Io, { samples }: Place, home: string) {
	const [given] = operands;
	if (given !== undefined && !existsSync(given))
		throw new UsageError(`There is no folder "${given}" to take jobs from.`);
	const jobs: JobFolder = { own: given ?? 'jobs', samples };
	const why = whyNoScreen(io);
	if (why !== null) {
		const folder = listed(jobs).folder;
		throw new UsageError(
			`The home screen needs a terminal, but ${why}. Without one: pullbook layout ${join(folder, 'JOB.json')}, ` +
				`pullbook bend ${join(folder, 'JOB.json')} --lines, pullbook log; pullbook help lists every command.`,
		);
	}
	// The screen itself heeds NO_COLOR and plain terminals.
	const color = options['no-color'] !== true;
	return (await import('./home.ts')).runHome({ home, jobs, color, ascii: options.ascii === true });
}

async function bend(line: CommandLine, io: Io, home: string) {
	const { operands, options } = line;
	const as = bentAsIn(line);
	const [file] = operands as [string];
	const lines = options.lines === true;
	const why = lines ? null : whyNoScreen(io);
	if (why !== null) {
		throw new UsageError(
			`The guided session needs a terminal, but ${why}. Without one: pullbook bend ${file} --lines, ` +
				'which asks and takes answers as JSON lines.',
		);
	}
	const color = options['no-color'] !== true;
	const learn = options['no-learn'] !== true;
	const ascii = options.ascii === true;
	const request = { file, lines, resume: options.resume ?? null, learn, home, color, ascii, as };
	return (await import('./bend.ts')).runBend(request, io);
}

async function practice(line: CommandLine, io: Io, home: string) {
	const { operands, options } = line;
	const [file] = operands as [string];
	const request = {
		file,
		auto: options.auto === true,
		json: options.json === true,
		seed: typeof options.seed === 'string' ? options.seed : null,
		home,
		color: options['no-color'] !== true,
		ascii: options.ascii === true,
		as: bentAsIn(line),
	};
	return (await import('./practice.ts')).runPractice(request, io);
}
