import { counted } from './counted.ts';
import { foreignName } from './foreign.ts';

/** What the page of benders and dies says. */
export const BENDER_PAGE = {
	none: 'No bender is set up. To set one up: pullbook bender NAME --die DIE --clr LENGTH',
	bender: (name: string): string => `Bender ${foreignName(name)}`,
	notSetUp: (name: string): string => `Bender ${foreignName(name)} (not set up)`,
	withEvery: (figures: string): string => `  with every die: ${figures}`,
	die: (name: string, figures: string): string => `  die ${foreignName(name)}: ${figures}`,
	noFigures: 'nothing kept',
} as const;

/** Two lines on what was learned and does not count. `before`: ISO time; `sessions`, `pulls`: how many that leaves out. */
export function forgottenWords(
	{ die, before }: { die: string | null; before: string },
	sessions: number,
	pulls: number,
): [what: string, how: string] {
	const takenBack = die === null ? '--remember' : `--die ${argument(foreignName(die))} --remember`;
	return [
		`forgotten${die === null ? '' : ` of die ${foreignName(die)}`}: what was learned before ${minuteOf(before)}`,
		`  ${counted(sessions, 'session')}, ${counted(pulls, 'pull')}; the logs are kept, ${takenBack} undoes it`,
	];
}

/** A name as it is typed: with a blank or a sign of the shell's in it, in quotes. */
function argument(name: string): string {
	return /^[\w.,:+-]+$/.test(name) ? name : `"${name}"`;
}

/** Times are UTC in the logs' names as well. */
const minuteOf = (iso: string): string => `${iso.slice(0, 16).replace('T', ' ')} UTC`;
