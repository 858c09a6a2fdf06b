import type { KeptRow } from '../journal/kept-row.ts';
import type { KeptBender } from '../settings/settings.ts';
import type { Forgotten } from '../settings/settings-file.ts';
import type { KeptRecord } from '../tube/kept-tooling.ts';
import { FIELD_NAMES, TOOLING_FIELDS } from '../tube/tooling-fields.ts';
import { formatQuantity } from '../units/format.ts';
import { BENDER_PAGE, forgottenWords } from '../words/bender-page.ts';
import { LEARNED_LEGEND } from '../words/learned.ts';
import type { LearnedHere } from './learned.ts';
import { learnedText } from './learned-text.ts';
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
	return [
		...(setUp.length === 0 && !page.isOne ? [BENDER_PAGE.none] : []),
		...page.benders.flatMap(({ name, machine, dies }) => [
			BENDER_PAGE.bender(name),
			...(machine ? [BENDER_PAGE.withEvery(fieldsText(machine))] : []),
			...dies.map((die) => BENDER_PAGE.die(die.name, fieldsText(die))),
			...learnedOn(name, page),
		]),
		...notSetUp.flatMap((name) => [BENDER_PAGE.notSetUp(name), ...learnedOn(name, page)]),
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
export function forgottenText(entry: Forgotten, leftOut: readonly KeptRow[]): [what: string, how: string] {
	const rows = rowsBefore(entry, leftOut);
	const pulls = rows.reduce((sum, row) => sum + row.pulls, 0);
	return forgottenWords(entry, rows.length, pulls);
}

function rowsBefore({ bender, die, before }: Forgotten, rows: readonly KeptRow[]): KeptRow[] {
	const isMeant = ({ kin }: KeptRow) => kin?.bender === bender && (die === null || kin.die === die);
	return rows.filter((row) => isMeant(row) && !(Date.parse(row.at) >= Date.parse(before)));
}

function fieldsText({ units, fields }: KeptRecord): string {
	const shown = FIELD_NAMES.flatMap((field) => {
		const value = fields[field];
		if (value == null) return [];
		return [`${optionName(field)} ${formatQuantity(value, TOOLING_FIELDS[field].kind, units)}`];
	});
	return shown.length > 0 ? shown.join(', ') : BENDER_PAGE.noFigures;
}
