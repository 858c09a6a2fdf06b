import type { Fault } from '../job/facts/index.ts';
import { JobFileError } from '../job/fault.ts';
import { loadJob } from '../job/load.ts';
import type { ToolingLookup } from '../job/tooling.ts';
import { faultLines, soundWords, toldFault } from '../words/job/fault.ts';
import { EXIT } from './exit.ts';
import { type Io, print, printJson, tellOn } from './io.ts';
import { keptTooling } from './tooling-lookup.ts';

/** What there is to say of one file. */
interface FileReport {
	file: string;
	ok: boolean;
	faults: readonly Fault[];
}

/**
 * `pullbook check`: says every fault of every file. What a job leaves to a bender that is set up is no fault. Exit code 0 when all files are
 * right, else 2.
 */
export async function runCheck(
	args: { files: readonly string[]; json: boolean; home: string },
	io: Pick<Io, 'stdout' | 'stderr'>,
): Promise<number> {
	const lookup = keptTooling(args.home, tellOn(io));
	const reports = args.files.map((file) => checkFile(file, lookup));
	if (args.json) printJson(io, { files: reports.map(asDocument) });
	else print(io, reports.map(asText).join('\n'));
	return reports.every(({ ok }) => ok) ? 0 : EXIT.badInput;
}

function checkFile(file: string, lookup: ToolingLookup): FileReport {
	try {
		loadJob(file, lookup);
		return { file, ok: true, faults: [] };
	} catch (error) {
		if (!(error instanceof JobFileError)) throw error;
		return { file, ok: false, faults: error.fact.faults };
	}
}

const asDocument = (report: FileReport) => ({ ...report, faults: report.faults.map(toldFault) });

function asText({ file, ok, faults }: FileReport): string {
	if (ok) return soundWords(file);
	return faultLines(file, faults);
}
