import { folded, foldedAt } from '../terminal/folded.ts';
import { HEADINGS, PROGRAM } from '../words/commands/index.ts';
import { EXIT_CODES, exitCodesWords } from '../words/topics/exit-codes.ts';
import { TOPICS } from '../words/topics/index.ts';
import { topicLines } from '../words/topics/topic-lines.ts';
import { isTopic, TOPIC_NAMES } from '../words/topics/topic-names.ts';
import { noHelpWords, programWords } from '../words/usage/command-line.ts';
import type { CommandSpec, OptionSpec } from './command.ts';
import { COMMANDS, COMMON_OPTIONS, HOME_COMMAND } from './commands.ts';
import { WIDTH } from './page-lines.ts';
import { UsageError } from './usage-error.ts';

/**
 * What `pullbook help` prints: of the whole program, a command or a topic.
 * @throws UsageError when there is nothing of that name
 */
export function helpText(about: string | null): string {
	if (about === null) return programHelp();
	return isTopic(about) ? `${topicLines(TOPICS[about], WIDTH, foldedAt).join('\n')}\n` : commandHelp(about);
}

/** The whole program's help: examples, then the commands, then what every command takes. */
export function programHelp(): string {
	const commands = Object.entries(COMMANDS).map(([name, spec]) => [usageOf(name, spec), spec.summary] as const);
	const examples = [...HOME_COMMAND.examples, ...Object.values(COMMANDS).map(({ examples }) => examples[0]!)];
	return [
		PROGRAM,
		'',
		HEADINGS.examples,
		...columns(examples),
		'',
		HEADINGS.commands,
		...columns([[usageOf(null, HOME_COMMAND), HOME_COMMAND.summary], ...commands]),
		'',
		HEADINGS.topics,
		...columns(Object.entries(TOPIC_NAMES).map(([name, says]) => [programWords('help', name), says])),
		'',
		HEADINGS.common,
		...helpOptions(COMMON_OPTIONS),
		'',
		...folded(exitCodesWords(EXIT_CODES), WIDTH),
		'',
	].join('\n');
}

/**
 * One command's help.
 * @throws UsageError when there is no such command
 */
export function commandHelp(name: string): string {
	const spec = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
	if (!spec) {
		throw new UsageError(noHelpWords(name, Object.keys(COMMANDS), Object.keys(TOPIC_NAMES)));
	}
	const own = Object.keys(spec.options).length > 0 ? [HEADINGS.options, ...helpOptions(spec.options), ''] : [];
	return [
		HEADINGS.examples,
		...columns(spec.examples),
		'',
		`${usageOf(name, spec)}: ${spec.summary}`,
		'',
		...own,
		HEADINGS.common,
		...helpOptions(COMMON_OPTIONS),
		...(spec.notes ? ['', ...spec.notes] : []),
		'',
	].join('\n');
}

/** A command as it is written. */
export function usageOf(name: string | null, { operands, least, most }: CommandSpec): string {
	const words = operands.map((operand, i) => {
		const many = most === Number.POSITIVE_INFINITY ? '…' : '';
		return i < least ? `${operand}${many}` : `[${operand}]`;
	});
	return ['pullbook', ...(name === null ? [] : [name]), ...words].join(' ');
}

function helpOptions(options: Readonly<Record<string, OptionSpec>>): string[] {
	return columns(Object.entries(options).map(([name, spec]) => [optionUsage(name, spec), spec.says] as const));
}

/** An option as it is written. */
export function optionUsage(name: string, { value, optional }: OptionSpec): string {
	return `--${name}${value === undefined ? '' : optional ? ` [${value}]` : ` ${value}`}`;
}

/** Two columns, the second lined up where the first leaves room for it. */
function columns(rows: readonly (readonly [string, string])[]): string[] {
	const width = Math.min(34, Math.max(...rows.map(([left]) => left.length)));
	return rows.map(([left, right]) => {
		const gap = left.length > width ? `\n${' '.repeat(width + 4)}` : ' '.repeat(width - left.length + 2);
		return `  ${left}${gap}${right}`;
	});
}
