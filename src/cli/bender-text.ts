import type { KeptRow } from '../journal/kept-row.ts';
import type { Forgotten, KeptBender } from '../settings/settings.ts';
import type { KeptRecord } from '../tube/kept-tooling.ts';
import { FIELD_NAMES, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { formatQuantity } from '../units/format.ts';
import { foreignName } from '../words/foreign.ts';
import type { LearnedHere } from './learned.ts';
import { counted, LEARNED_LEGEND, learnedText } from './learned-text.ts';
import { optionName } from './quantity.ts';

/** What the page of benders shows. */
export interface BenderPage {
	benders: readonly KeptBender[];
	learned: readonly LearnedHere[];
	/** Until when what was learned does not count, and the sessions that this leaves out. */
	forgotten: readonly Forgotten[];
	leftOut: readonly KeptRow[];
	/** Of one bender that was named. */
	isOne: boolean;
}

/** Benders, each with its dies, what is kept of them and what was learned with them, line by line. */
export function benderText(page: BenderPage): string[] {
	const setUp = page.benders.map(({ name }) => name);
	const others = new Set([...page.learned.map(({ kin }) => kin.bender), ...page.forgotten.map(({ bender }) => bender)]);
	const notSetUp = [...others].filter((name) => !setUp.includes(name)).sort();
	const none = 'No bender is set up. To set one up: pullbook bender NAME --die DIE --clr LENGTH';
	return [
		...(setUp.length === 0 && !page.isOne ? [none] : []),
		...page.benders.flatMap(({ name, machine, dies }) => [
			`Bender ${foreignName(name)}`,
			...(machine ? [`  with every die: ${fieldsOf(machine)}`] : []),
			...dies.map((die) => `  die ${foreignName(die.name)}: ${fieldsOf(die)}`),
			...learnedOn(name, page),
		]),
		...notSetUp.flatMap((name) => [`Bender ${foreignName(name)} (not set up)`, ...learnedOn(name, page)]),
		...(page.learned.length > 0 ? ['', ...LEARNED_LEGEND] : []),
	];
}

function learnedOn(bender: string, { learned, forgotten, leftOut }: BenderPage): string[] {
	const own = learned.filter(({ kin }) => kin.bender === bender);
	const lines = [
		...own.flatMap((each) => ['', ...learnedText(each)]),
		...forgotten.filter((entry) => entry.bender === bender).flatMap((entry) => forgottenText(entry, leftOut)),
	];
	return lines.map((line) => (line === '' ? '' : `  ${line}`));
}

/** Two lines on what does not count by this. */
export function forgottenText(entry: Forgotten, leftOut: readonly KeptRow[]): string[] {
	const { die, before } = entry;
	const rows = rowsBefore(entry, leftOut);
	const pulls = rows.reduce((sum, row) => sum + row.pulls, 0);
	const takenBack = die === null ? '--remember' : `--die ${argument(foreignName(die))} --remember`;
	return [
		`forgotten${die === null ? '' : ` of die ${foreignName(die)}`}: what was learned before ${minuteOf(before)}`,
		`  ${counted(rows.length, 'session')}, ${counted(pulls, 'pull')}; the logs are kept, ${takenBack} undoes it`,
	];
}

/** A name as it is typed: with a blank or a sign of the shell's in it, in quotes. */
function argument(name: string): string {
	return /^[\w.,:+-]+$/.test(name) ? name : `"${name}"`;
}

function rowsBefore({ bender, die, before }: Forgotten, rows: readonly KeptRow[]): KeptRow[] {
	const isMeant = ({ kin }: KeptRow) => kin?.bender === bender && (die === null || kin.die === die);
	return rows.filter((row) => isMeant(row) && !(Date.parse(row.at) >= Date.parse(before)));
}

/** Times are UTC in the logs' names as well. */
const minuteOf = (iso: string) => `${iso.slice(0, 16).replace('T', ' ')} UTC`;

function fieldsOf({ units, fields }: KeptRecord): string {
	const shown = FIELD_NAMES.flatMap((field) => {
		const value = fields[field];
		if (value == null) return [];
		return [`${optionName(field)} ${formatQuantity(value, TOOLING_FIELDS[field].kind, units)}`];
	});
	return shown.length > 0 ? shown.join(', ') : 'nothing kept';
}
