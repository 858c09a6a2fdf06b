import { COMMANDS, COMMON_OPTIONS, type CommandSpec, HOME_COMMAND, type OptionSpec } from './commands.ts';
import { UsageError } from './usage-error.ts';

/** The whole program's help: examples, then the commands, then what every command takes. */
export function programHelp(): string {
	const commands = Object.entries(COMMANDS).map(([name, spec]) => [usageOf(name, spec), spec.summary] as const);
	const examples = [...HOME_COMMAND.examples, ...Object.values(COMMANDS).map(({ examples }) => examples[0]!)];
	return [
		'pullbook guides a tube through a rotary-draw bender, bend by bend.',
		'',
		'Examples',
		...columns(examples),
		'',
		'Commands',
		...columns([[usageOf(null, HOME_COMMAND), HOME_COMMAND.summary], ...commands]),
		'',
		'Options of every command',
		...optionLines(COMMON_OPTIONS),
		'',
		'Exit codes: 0 done, 1 failure, 2 bad input, 3 left to be resumed,',
		'4 another session holds the lock, 5 the disk refused a write, 6 a damaged log.',
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
		throw new UsageError(`There is no command "${name}" to help with. The commands are ${commandNames()}.`);
	}
	const own = Object.keys(spec.options).length > 0 ? ['Options', ...optionLines(spec.options), ''] : [];
	return [
		'Examples',
		...columns(spec.examples),
		'',
		`${usageOf(name, spec)}: ${spec.summary}`,
		'',
		...own,
		'Options of every command',
		...optionLines(COMMON_OPTIONS),
		...(spec.notes ? ['', ...spec.notes] : []),
		'',
	].join('\n');
}

function commandNames(): string {
	return Object.keys(COMMANDS).join(', ');
}

function usageOf(name: string | null, { operands, least, most }: CommandSpec): string {
	const words = operands.map((operand, i) => {
		const many = most === Number.POSITIVE_INFINITY ? '…' : '';
		return i < least ? `${operand}${many}` : `[${operand}]`;
	});
	return ['pullbook', ...(name === null ? [] : [name]), ...words].join(' ');
}

function optionLines(options: Readonly<Record<string, OptionSpec>>): string[] {
	return columns(
		Object.entries(options).map(([name, { value, optional, says }]) => {
			const shown = value === undefined ? '' : optional ? ` [${value}]` : ` ${value}`;
			return [`--${name}${shown}`, says] as const;
		}),
	);
}

/** Two columns, the second lined up where the first leaves room for it. */
function columns(rows: readonly (readonly [string, string])[]): string[] {
	const width = Math.min(34, Math.max(...rows.map(([left]) => left.length)));
	return rows.map(([left, right]) => {
		const gap = left.length > width ? `\n${' '.repeat(width + 4)}` : ' '.repeat(width - left.length + 2);
		return `  ${left}${gap}${right}`;
	});
}
