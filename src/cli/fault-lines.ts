import { countOf, type Fault, formatFault } from '../job/fault.ts';
import { foreign } from '../words/foreign.ts';

/** A line for the file, and one a fault. */
export function faultLines(file: string, faults: readonly Fault[]): string {
	return [`${foreign(file)}: ${countOf(faults)}`, ...faults.map((fault) => `  ${foreign(formatFault(fault))}`)].join(
		'\n',
	);
}
