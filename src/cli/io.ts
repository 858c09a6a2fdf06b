import { foreign, harmless, jsonText } from '../words/foreign.ts';
import { inOurName } from '../words/usage/command-line.ts';
import type { NoTerminal } from '../words/usage/screen.ts';

/** What a command reads from and writes to: data goes to `stdout`, messages to `stderr`. */
export interface Io {
	stdin: NodeJS.ReadStream;
	stdout: NodeJS.WriteStream;
	stderr: NodeJS.WriteStream;
	env: NodeJS.ProcessEnv;
}

/** What keeps a screen from being drawn here; null when a person sits at a terminal. */
export function whyNoScreen({ stdin, stdout }: Io): NoTerminal | null {
	if (!stdin.isTTY) return 'stdin';
	return stdout.isTTY ? null : 'stdout';
}

/** Says a sentence on standard error, in the program's name. */
export function tellOn({ stderr }: Pick<Io, 'stderr'>): (sentence: string) => void {
	return (sentence) => stderr.write(inOurName(foreign(sentence)));
}

/** Puts out lines for people. Names in them have been made one line by then. */
export function print({ stdout }: Pick<Io, 'stdout'>, lines: string): void {
	stdout.write(`${harmless(lines)}\n`);
}

/** Puts out one document. */
export function printJson({ stdout }: Pick<Io, 'stdout'>, document: unknown): void {
	stdout.write(`${jsonText(document, 2)}\n`);
}
