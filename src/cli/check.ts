import { countOf, type Fault, formatFault, JobFileError } from '../job/fault.ts';
import { loadJob } from '../job/load.ts';
import type { ToolingLookup } from '../job/tooling.ts';
import type { Io } from './io.ts';

/** Exit code when a file has a fault. */
const BAD_INPUT = 2;

/** What `--json` says of one file. */
interface FileReport {
	file: string;
	ok: boolean;
	faults: readonly Fault[];
}

/**
 * `pullbook check`: says every fault of every file. What a job leaves to a bender and die that are set up comes from
 * `lookup`. Exit code 0 when all files are right, else 2.
 */
export async function runCheck(
	args: { files: readonly string[]; json: boolean; lookup?: ToolingLookup },
	io: Pick<Io, 'stdout'>,
): Promise<number> {
	const reports = args.files.map((file) => checkFile(file, args.lookup));
	const text = args.json ? `${JSON.stringify({ files: reports }, null, 2)}\n` : reports.map(asText).join('');
	io.stdout.write(text);
	return reports.every(({ ok }) => ok) ? 0 : BAD_INPUT;
}

function checkFile(file: string, lookup: ToolingLookup | undefined): FileReport {
	try {
		loadJob(file, lookup);
		return { file, ok: true, faults: [] };
	} catch (error) {
		if (!(error instanceof JobFileError)) throw error;
		return { file, ok: false, faults: error.faults };
	}
}

function asText({ file, ok, faults }: FileReport): string {
	if (ok) return `${file}: ok\n`;
	return `${file}: ${countOf(faults)}\n${faults.map((fault) => `  ${formatFault(fault)}\n`).join('')}`;
}
