import { ENVIRONMENT, HEADINGS, MANUAL } from '../words/commands/index.ts';
import { wholeSentence } from '../words/sentence.ts';
import { EXIT_CODES } from '../words/topics/exit-codes.ts';
import { TOPICS } from '../words/topics/index.ts';
import type { Row, TopicSection } from '../words/topics/topic.ts';
import { TOPIC_NAMES, type TopicName } from '../words/topics/topic-names.ts';
import { programWords } from '../words/usage/command-line.ts';
import type { CommandSpec, OptionSpec } from './command.ts';
import { COMMANDS, COMMON_OPTIONS, HOME_COMMAND } from './commands.ts';
import { optionUsage, usageOf } from './help.ts';
import { VERSION } from './version.ts';

/** All of the help as one manual page, in the macros of man(7), which groff and mandoc both read; ASCII alone. */
export function manPage(): string {
	return [
		macro('TH', MANUAL.name, '1', '', programWords(VERSION), MANUAL.book),
		...section(MANUAL.headings.name),
		roffEscaped(MANUAL.does),
		...section(MANUAL.headings.synopsis),
		...synopsis(),
		...section(HEADINGS.commands.toUpperCase()),
		...commandLines(null, HOME_COMMAND),
		...Object.entries(COMMANDS).flatMap(([name, spec]) => commandLines(name, spec)),
		...section(HEADINGS.common.toUpperCase()),
		...manOptions(COMMON_OPTIONS),
		...(Object.keys(TOPIC_NAMES) as TopicName[]).flatMap(manTopic),
		...section(MANUAL.headings.exitStatus),
		...EXIT_CODES.flatMap(([code, brief, then]) => tagged([code, `${brief}. ${then}`])),
		...section(MANUAL.headings.environment),
		...ENVIRONMENT.flatMap(tagged),
		'',
	].join('\n');
}

function synopsis(): string[] {
	return [usageOf(null, HOME_COMMAND), ...Object.entries(COMMANDS).map(([name, spec]) => usageOf(name, spec))].flatMap(
		(usage, i) => [...(i === 0 ? [] : ['.br']), `\\fB${roffEscaped(usage)}\\fR`],
	);
}

function commandLines(name: string | null, spec: CommandSpec): string[] {
	const { summary, examples, options, notes = [] } = spec;
	return [
		macro('SS', usageOf(name, spec)),
		roffEscaped(wholeSentence(summary)),
		...examples.flatMap(tagged),
		...manOptions(options),
		...(notes.length > 0 ? ['.PP', ...notes.map(roffEscaped)] : []),
	];
}

function manOptions(options: Readonly<Record<string, OptionSpec>>): string[] {
	return Object.entries(options).flatMap(([name, spec]) => tagged([optionUsage(name, spec), wholeSentence(spec.says)]));
}

function manTopic(name: TopicName): string[] {
	const { examples, sections } = TOPICS[name];
	return [
		...section(name.replaceAll('-', ' ').toUpperCase()),
		roffEscaped(wholeSentence(TOPIC_NAMES[name])),
		...examples.flatMap(tagged),
		...sections.flatMap(manSection),
	];
}

function manSection({ heading, text = [], shown = [], rows = [] }: TopicSection): string[] {
	return [
		macro('SS', heading),
		...text.flatMap((paragraph, i) => [...(i === 0 ? [] : ['.PP']), roffEscaped(paragraph)]),
		...(shown.length > 0 ? [...(text.length > 0 ? ['.PP'] : []), '.nf', ...shown.map(roffEscaped), '.fi'] : []),
		...rows.flatMap(tagged),
	];
}

/** A line that man(7) reads as the macro of that name. */
const macro = (name: string, ...words: string[]): string =>
	`.${name} ${words.map((word) => `"${word === '' ? '' : roffEscaped(word)}"`).join(' ')}`;

const section = (heading: string): string[] => [macro('SH', heading)];

/** What is written, and under it, set in, what it does. */
function tagged([tag, says]: Row): string[] {
	return ['.TP', `\\fB${roffEscaped(tag)}\\fR`, roffEscaped(says)];
}

/** Characters that man(7) would read as something else, or set as a typographic one, by groff_char(7). */
const AS_ROFF: Readonly<Record<string, string>> = {
	'\\': '\\(rs',
	'-': '\\-',
	"'": '\\(aq',
	'`': '\\(ga',
	'^': '\\(ha',
	'~': '\\(ti',
	'"': '\\(dq',
	'…': '...',
	'°': '\\(de',
	'±': '\\(+-',
	'×': '\\(mu',
};

/** A line of text; one that begins with a dot is no macro. */
function roffEscaped(text: string): string {
	const line = [...text].map((character) => AS_ROFF[character] ?? plain(character)).join('');
	return line.startsWith('.') ? `\\&${line}` : line === '' ? '\\&' : line;
}

function plain(character: string): string {
	const code = character.codePointAt(0)!;
	return code < 0x7f ? character : `\\[u${code.toString(16).toUpperCase().padStart(4, '0')}]`;
}
