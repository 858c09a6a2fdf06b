import { foreign, harmless, jsonText } from '../words/foreign.ts';

/** What a command reads from and writes to: data goes to `stdout`, messages to `stderr`. */
export interface Io {
	stdin: NodeJS.ReadStream;
	stdout: NodeJS.WriteStream;
	stderr: NodeJS.WriteStream;
	env: NodeJS.ProcessEnv;
}

/** Why no screen can be drawn here, in words; null when a person sits at a terminal. */
export function whyNoScreen({ stdin, stdout }: Io): string | null {
	if (!stdin.isTTY) return 'standard input is not a terminal';
	return stdout.isTTY ? null : 'standard output is not a terminal';
}

/** Says a sentence on standard error, in the program's name. */
export function tellOn({ stderr }: Pick<Io, 'stderr'>): (sentence: string) => void {
	return (sentence) => stderr.write(`pullbook: ${foreign(sentence)}\n`);
}

/** Puts out lines for people. Names in them have been made one line by then. */
export function print({ stdout }: Pick<Io, 'stdout'>, lines: string): void {
	stdout.write(`${harmless(lines)}\n`);
}

/** Puts out one document. */
export function printJson({ stdout }: Pick<Io, 'stdout'>, document: unknown): void {
	stdout.write(`${jsonText(document, 2)}\n`);
}
