import { parseArgs } from 'node:util';
import {
	givenTwiceWords,
	jobForCommandWords,
	needsValueWords,
	needsWords,
	noCommandWords,
	noOptionWords,
	noValueWords,
	programWords,
	takesWords,
} from '../words/usage/command-line.ts';
import type { CommandLine, CommandSpec, OptionSpec } from './command.ts';
import { COMMANDS, COMMON_OPTIONS, HOME_COMMAND } from './commands.ts';
import { UsageError } from './usage-error.ts';

/** Every option of every command: which of them take a value must be known before the command is. */
const EVERY_OPTION: Record<string, OptionSpec> = Object.assign(
	{},
	...Object.values(COMMANDS).map(({ options }) => options),
	COMMON_OPTIONS,
);

/** What `node:util` makes of a command line, in order. An option with an optional value is read as one without. */
function argumentTokens(argv: readonly string[]) {
	const options = Object.fromEntries(
		Object.entries(EVERY_OPTION).map(([name, { value, optional }]) => {
			return [name, { type: value !== undefined && !optional ? ('string' as const) : ('boolean' as const) }];
		}),
	);
	const { tokens } = parseArgs({ args: [...argv], options, strict: false, allowPositionals: true, tokens: true });
	return tokens;
}
type LineToken = ReturnType<typeof argumentTokens>[number];
type OptionToken = Extract<LineToken, { kind: 'option' }>;

/**
 * The command line after the program's name.
 * @throws UsageError for an unknown command or option, a missing or a superfluous argument
 */
export function readCommandLine(argv: readonly string[]): CommandLine {
	const tokens = argumentTokens(argv);
	const words = tokens.filter((token) => token.kind === 'positional');
	const first = words[0];
	const command = first !== undefined && Object.hasOwn(COMMANDS, first.value) ? first.value : null;
	const name = programWords(command);
	const spec = (command !== null && COMMANDS[command]) || HOME_COMMAND;
	const operands = (command === null ? words : words.slice(1)).map(({ value }) => value);
	if (command === null && first !== undefined && !looksLikeFolder(first.value)) throw unknownCommand(first.value);
	const { options, repeated } = readOptions(tokens, name, spec, operands);
	if (!options.help && !options.version) checkOperands(name, spec, operands);
	return { command, operands, options, ...(Object.keys(repeated).length > 0 && { repeated }) };
}

/** A bare word is taken for a mistyped command; a folder is told by a separator or a dot in front. */
function looksLikeFolder(word: string): boolean {
	return /[\\/]/.test(word) || word === '.' || word === '..';
}

function unknownCommand(word: string): UsageError {
	return new UsageError(/\.json$/i.test(word) ? jobForCommandWords(word) : noCommandWords(word, Object.keys(COMMANDS)));
}

/** Reads the options; takes out of `operands` the word that turns out to be an optional value. */
function readOptions(tokens: readonly LineToken[], name: string, spec: CommandSpec, operands: string[]) {
	const known: Record<string, OptionSpec> = { ...spec.options, ...COMMON_OPTIONS };
	const options: Record<string, string | true> = {};
	const repeated: Record<string, string[]> = {};
	for (const token of tokens) {
		if (token.kind !== 'option') continue;
		const option = Object.hasOwn(known, token.name) ? known[token.name] : undefined;
		if (!option) throw unknownOption(token.rawName, name, known);
		if (option.repeats) {
			repeated[token.name] = [...(repeated[token.name] ?? []), optionValue(token, option, name) ?? ''];
			continue;
		}
		if (Object.hasOwn(options, token.name)) throw new UsageError(givenTwiceWords(name, token.rawName));
		options[token.name] = optionValue(token, option, name) ?? followingWord(token, option, tokens, operands) ?? true;
	}
	return { options, repeated };
}

function unknownOption(rawName: string, name: string, known: Record<string, OptionSpec>): UsageError {
	const names = Object.keys(known).map((key) => `--${key}`);
	return new UsageError(noOptionWords(name, rawName, names));
}

function optionValue(token: OptionToken, { value, optional }: OptionSpec, name: string): string | undefined {
	const given = token.value;
	if (value === undefined) {
		if (given === undefined) return undefined;
		throw new UsageError(noValueWords(name, token.rawName, given));
	}
	if (given === undefined && optional) return undefined;
	// The next option is not a value, but a negative number is one, and so is `-` for standard output.
	const missing = !given || (!token.inlineValue && /^-(?![\d.]|$)/.test(given));
	if (missing) throw new UsageError(needsValueWords(name, token.rawName, value));
	return given;
}

/** The word after an option whose value may be left out, unless that word is the only operand there is. */
function followingWord(token: OptionToken, option: OptionSpec, tokens: readonly LineToken[], operands: string[]) {
	if (!option.optional || operands.length < 2) return undefined;
	const next = tokens.find(({ index }) => index === token.index + 1);
	if (next?.kind !== 'positional') return undefined;
	// Equal words differ by their place; the first word of all is the command.
	const place = tokens.filter(({ kind, index }) => kind === 'positional' && index < next.index).length - 1;
	if (place < 0) return undefined;
	operands.splice(place, 1);
	return next.value;
}

function checkOperands(name: string, { operands, least, most, handsOn }: CommandSpec, given: readonly string[]): void {
	if (given.length < least) {
		throw new UsageError(needsWords(name, operands[given.length] ?? operands[0]!, operands));
	}
	if (given.length <= most || handsOn) return;
	throw new UsageError(takesWords(name, operands, most, given));
}
