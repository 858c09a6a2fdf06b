import type { Cause } from '../../session/protocol/facts/not-saved.ts';
import { listed } from '../listed.ts';
import { whyRefused } from '../refused.ts';

/** What is told of a PDF: why it is not written, or where it lies. */
export const PDF = {
	page: (given: string, pages: readonly string[]): string => `--page is ${listed(pages, 'or')}, not "${given}".`,
	part: (given: string, parts: readonly string[]): string =>
		`There is no part "${given}" to print. The parts are ${parts.join(', ')}; put a comma between two.`,
	ofAJob: (option: string, given: string): string =>
		`pullbook paper: --${option} goes with a job file, but "${given}" is none. The record of a session is printed whole, as it was bent.`,
	noFile: (path: string): string =>
		`${path} is not a file that can be written over. Give another name with --out FILE.`,
	inTheWay: (path: string): string =>
		`${path} is there already. Write over it with --force, or give another name with --out FILE.`,
	refused: (path: string, cause: Cause): string =>
		`${path} was not written: ${whyRefused(cause)}. Give another place with --out FILE, or --out - to send it to a printer.`,
	written: (path: string): string => `Written: ${path}`,
	/** At the foot of a record: what made it, from which log. */
	recordFoot: (version: string, log: string): string => `pullbook ${version}, from ${log}`,
} as const;
