import type { Io } from './io.ts';

/** What an option takes. */
export interface OptionShape {
	/** The name of the value the option takes; absent: it takes none. */
	value?: string;
	/** The value may be left out. */
	optional?: true;
	/** It may be given more than once. */
	repeats?: true;
}

export interface OptionSpec extends OptionShape {
	says: string;
}

/** A command with its operands, options and examples: what the parser accepts, what `help` prints, and what it does. */
export interface CommandSpec {
	summary: string;
	/** Names of the operands, in order. */
	operands: readonly string[];
	/** Words that may stand in place of the first operand, and the operand that follows them. */
	words?: Readonly<Record<string, { says: string; next: string }>>;
	/** Further words may stand behind `--`, which a shell puts there and no person; help does not tell of them. */
	handsOn?: true;
	/** How many operands must and may be given. */
	least: number;
	most: number;
	options: Readonly<Record<string, OptionSpec>>;
	examples: readonly (readonly [line: string, does: string])[];
	/** Sentences under the options. */
	notes?: readonly string[];
	run: Run;
}

/** A command line that has been checked against the table of commands. */
export interface CommandLine {
	/** Null: the home screen. */
	command: string | null;
	operands: string[];
	/** By option name: the value, or true where none was given. */
	options: Record<string, string | true>;
	/** Every value of an option that may be given more than once; absent where none was. */
	repeated?: Record<string, readonly string[]>;
}

/** A command line and where it runs. */
export interface Call {
	line: CommandLine;
	/** The folder that holds the sample jobs. */
	samples: string;
	/** The folder of settings and logs. @throws UsageError where it is none */
	home(): string;
	/** Prints the help on a command or a topic; null: on the whole program. */
	help(about: string | null): Promise<number>;
}

/** Resolves to the exit code. What a command needs it loads itself: the mark table must not wait for the screen. */
export type Run = (call: Call, io: Io) => Promise<number>;
