import type { CommandWords } from '../words/commands/command-words.ts';
import { COMMAND_WORDS, type CommandName } from '../words/commands/index.ts';
import type { CommandSpec, OptionShape, OptionSpec } from './command.ts';

type WordsOf<N extends CommandName> = (typeof COMMAND_WORDS)[N];
type InsteadOf<N extends CommandName> = WordsOf<N> extends { words: infer W } ? keyof W & string : never;

/** A command but for its words: what each option that has words takes, and further options that bring theirs. */
interface CommandShape<N extends CommandName>
	extends Pick<CommandSpec, 'operands' | 'least' | 'most' | 'handsOn' | 'run'> {
	options: Record<keyof WordsOf<N>['options'], OptionShape> & Record<string, OptionShape | OptionSpec>;
	/** The operand that follows each word that may stand in place of the first one. */
	next?: Record<InsteadOf<N>, string>;
}

/** The command of that name with its words. */
export function worded<N extends CommandName>(name: N, { options, next, ...shape }: CommandShape<N>): CommandSpec {
	const { words, ...said }: CommandWords = COMMAND_WORDS[name];
	return {
		...shape,
		...said,
		options: optionsWorded(options, said.options),
		...(words && next && { words: instead(words, next) }),
	};
}

/** Options with what they say, in the order of the shapes. */
export function optionsWorded(
	shapes: Readonly<Record<string, OptionShape | OptionSpec>>,
	words: CommandWords['options'],
): Record<string, OptionSpec> {
	return Object.fromEntries(
		Object.entries(shapes).map(([name, shape]) => [name, 'says' in shape ? shape : { ...shape, says: words[name]! }]),
	);
}

function instead(words: Readonly<Record<string, string>>, next: Readonly<Record<string, string>>) {
	return Object.fromEntries(Object.entries(words).map(([word, says]) => [word, { says, next: next[word]! }]));
}
