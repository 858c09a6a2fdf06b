import { fileURLToPath } from 'node:url';
import { readCommandLine } from './cli/args.ts';
import { drainOutput, guardOutput } from './cli/output-streams.ts';
import { reportError } from './cli/report.ts';
import { runCommand } from './cli/run-command.ts';

// Before the command line is understood, an error in it must already know whether its origin is wanted.
const argv = process.argv.slice(2);
const debug = argv.includes('--debug');

/** This file and the bundle made from it both lie one folder below the package. */
const samples = fileURLToPath(new URL('../jobs', import.meta.url));

async function main(): Promise<number> {
	try {
		return await runCommand(readCommandLine(argv), process, samples);
	} catch (error) {
		return reportError(error, process.stderr, debug);
	}
}

process.on('uncaughtException', (error) => process.exit(reportError(error, process.stderr, debug)));
guardOutput(process);
const code = await main();
await drainOutput(process);
// A pipe that stays open on standard input must not keep a finished command running.
process.exit(code);
