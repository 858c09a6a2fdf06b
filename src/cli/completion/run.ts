import { homeFolder } from '../../files/home-folder.ts';
import { foreign, harmless } from '../../words/foreign.ts';
import { noShellWords } from '../../words/usage/command-line.ts';
import type { Io } from '../io.ts';
import { UsageError } from '../usage-error.ts';
import { candidates } from './candidates.ts';
import { knownAt } from './known-names.ts';
import { SCRIPTS, SHELLS, type Shell } from './scripts.ts';

const isShell = (word: string): word is Shell => (SHELLS as readonly string[]).includes(word);

/**
 * Prints a shell's completion script; with words, as that script hands them on, what may stand in place of the last: one a line, what it
 * means behind a tab.
 */
export function runCompletion(shell: string, words: readonly string[], home: string, io: Io): number {
	if (!isShell(shell)) throw new UsageError(noShellWords(shell, SHELLS));
	if (words.length === 0) {
		io.stdout.write(SCRIPTS[shell]);
		return 0;
	}
	const typed = words.map((word, n) => (isRaw(shell, n === words.length - 1) ? unquoted(word) : word));
	const found = candidates(typed, knownAt(homeIn(typed, io) ?? home));
	// A name that does something to the terminal is not offered: written out it would be another one.
	const lines = found.filter(({ value }) => harmless(value) === value && !value.includes('\n'));
	io.stdout.write(lines.map(({ value, says }) => `${value}\t${foreign(says)}\n`).join(''));
	return 0;
}

/** bash hands words on as they are typed, fish the one that is being typed. */
const isRaw = (shell: Shell, isLast: boolean): boolean => shell === 'bash' || (shell === 'fish' && isLast);

function unquoted(word: string): string {
	return word.replace(/^["']|["']$/g, '').replace(/\\(.)/g, '$1');
}

/** The home that the words name. */
function homeIn(words: readonly string[], { env }: Io): string | null {
	const at = words.lastIndexOf('--home');
	const named = at >= 0 && at < words.length - 2 ? words[at + 1] : undefined;
	return named === undefined ? null : homeFolder(env, named);
}
