import type { CommandSpec, OptionSpec } from '../command.ts';
import { COMMANDS, COMMON_OPTIONS, HOME_COMMAND } from '../commands.ts';

/** A word that may stand where one is being typed, and what it means. */
export interface Candidate {
	value: string;
	says: string;
}

/** What only the disk knows. */
export interface KnownNames {
	/** Newest first; `open`: only those that can be gone on with. */
	sessions(open: boolean): readonly Candidate[];
	benders(): readonly Candidate[];
	/** Of a bender; null: of any. */
	dies(bender: string | null): readonly Candidate[];
	/** Job files, and folders that lead on to some, for what is typed of a path. */
	jobs(typed: string): readonly Candidate[];
	folders(typed: string): readonly Candidate[];
	topics(): readonly Candidate[];
}

/** What may stand for these names of operands and values, where that is always the same. */
const CHOICES: Readonly<Record<string, readonly string[]>> = {
	UNIT: ['in', 'mm'],
	END: ['start', 'far'],
	SIZE: ['letter', 'a4'],
	SHELL: ['bash', 'zsh', 'fish'],
	DOCUMENT: ['log', 'layout', 'job'],
	yes: ['yes'],
	no: ['no'],
};

/** The words of a command line so far, taken apart; the last one is being typed. */
interface Typed {
	spec: CommandSpec;
	/** Null: no command yet. */
	command: string | null;
	operands: string[];
	/** The option that the word being typed is a value of. */
	option: OptionSpec | null;
	last: string;
}

/** What may stand in place of the last of these words, which come after the program's name; what they begin with is typed already. */
export function candidates(words: readonly string[], known: KnownNames): Candidate[] {
	const typed = takenApart(words);
	const all = typed.last.startsWith('-') ? optionsOf(typed.spec) : placeCandidates(typed, known);
	return all.filter(({ value }) => value.startsWith(typed.last));
}

function takenApart(words: readonly string[]): Typed {
	const last = words.at(-1) ?? '';
	const typed: Typed = { spec: HOME_COMMAND, command: null, operands: [], option: null, last };
	for (const word of words.slice(0, -1)) {
		const { option } = typed;
		typed.option = null;
		if (word.startsWith('-')) typed.option = valueOption(typed.spec, word);
		else if (option !== null) continue;
		else if (typed.command === null && typed.operands.length === 0 && Object.hasOwn(COMMANDS, word)) {
			typed.command = word;
			typed.spec = COMMANDS[word]!;
		} else typed.operands.push(word);
	}
	return typed;
}

function valueOption({ options }: CommandSpec, word: string): OptionSpec | null {
	const all: Readonly<Record<string, OptionSpec>> = { ...options, ...COMMON_OPTIONS };
	const option = all[word.replace(/^--/, '')];
	return option?.value === undefined || word.includes('=') ? null : option;
}

function optionsOf({ options }: CommandSpec): Candidate[] {
	return Object.entries({ ...options, ...COMMON_OPTIONS }).map(([name, { says }]) => ({ value: `--${name}`, says }));
}

function placeCandidates(typed: Typed, known: KnownNames): Candidate[] {
	const { command, spec, operands, option } = typed;
	if (option?.value !== undefined) {
		const values = namedCandidates(option.value, typed, known);
		// A value that may be left out: what comes next may stand here too.
		return option.optional ? [...values, ...operandsOf(typed, known)] : [...values];
	}
	const commands = Object.entries(COMMANDS).map(([value, { summary }]) => ({ value, says: summary }));
	if (command === null && operands.length === 0) return [...commands, ...operandsOf(typed, known)];
	if (operands.length >= spec.most) return [];
	return operandsOf(typed, known);
}

function operandsOf(typed: Typed, known: KnownNames): Candidate[] {
	const { operands, most, words = {} } = typed.spec;
	const [first] = typed.operands;
	if (typed.operands.length === 0) {
		const instead = Object.entries(words).map(([value, { says }]) => ({ value, says }));
		return [...instead, ...namedCandidates(operands[0] ?? '', typed, known)];
	}
	const next = first === undefined ? undefined : words[first]?.next;
	if (next !== undefined) return typed.operands.length === 1 ? [...namedCandidates(next, typed, known)] : [];
	const name = operands[typed.operands.length] ?? (most === Number.POSITIVE_INFINITY ? operands.at(-1) : undefined);
	return name === undefined ? [] : [...namedCandidates(name, typed, known)];
}

/** What may stand for a name as the table of commands has it: `JOB`, or `JOB|ID` for either. */
function namedCandidates(name: string, typed: Typed, known: KnownNames): readonly Candidate[] {
	return name.split('|').flatMap((each) => ofKind(each, typed, known));
}

function ofKind(name: string, { command, operands, option, last }: Typed, known: KnownNames): readonly Candidate[] {
	switch (name) {
		case 'ID':
			return known.sessions(option !== null);
		case 'JOB':
			return known.jobs(last);
		case 'NAME':
			return known.benders();
		case 'BENDER':
			return known.benders();
		case 'DIE':
			return known.dies(command === 'bender' ? (operands[0] ?? null) : null);
		case 'FOLDER':
		case 'DIR':
			return known.folders(last);
		case 'TOPIC':
			return [...Object.entries(COMMANDS).map(([value, { summary }]) => ({ value, says: summary })), ...known.topics()];
		default:
			return (CHOICES[name] ?? []).map((value) => ({ value, says: '' }));
	}
}
