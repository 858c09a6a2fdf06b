import type { Io } from './io.ts';

/**
 * A reader that goes away (`pullbook log | head`) is no fault: what is still written goes nowhere and the command
 * ends as it would have. Any other error of an output stream is thrown on, to end the program with its reason.
 */
export function guardOutput({ stdout, stderr }: Io): void {
	for (const stream of [stdout, stderr]) {
		stream.on('error', (error: NodeJS.ErrnoException) => {
			if (error.code !== 'EPIPE') throw error;
		});
	}
}

/** Resolves once everything written so far has left the program, or its reader has; a failed write has been thrown on by then. */
export async function drainOutput({ stdout, stderr }: Io): Promise<void> {
	for (const stream of [stdout, stderr]) await new Promise<void>((resolve) => stream.write('', () => resolve()));
	// A stream tells of its error only after the callbacks of its writes.
	await new Promise<void>((resolve) => setImmediate(resolve));
}
