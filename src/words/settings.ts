import type { Cause } from '../session/protocol/facts/index.ts';
import type { Broken, FieldRight, FileFault, SettingsFact } from '../settings/facts.ts';
import { LONGEST_NAME } from '../tube/names.ts';
import { foreign } from './foreign.ts';
import { rangeWords } from './range.ts';

/** What there is to say of the settings: what the user should know, or why a change was not kept. */
export function settingsWords(fact: SettingsFact): string {
	return foreign(settingsFactWords(fact));
}

function settingsFactWords(fact: SettingsFact): string {
	switch (fact.code) {
		case 'settings-unreadable':
			return `${fact.file} cannot be read (${causeName(fact.cause)}): no bender, die or preference kept there is used.`;
		case 'settings-copy':
			return `${fileFaultWords(fact.file, fact.fault)} ${copyWords(fact)}`;
		case 'settings-copy-old':
			return `The settings are kept, but their spare copy ${fact.good} could not be renewed (${causeName(fact.cause)}).`;
		case 'settings-value': {
			const { bender, die, field, value, right } = fact;
			const of = `bender "${bender}"`;
			const owner = die === null ? of : `die "${die}" of ${of}`;
			return `${field} of ${owner} is kept as ${value} and does not count: set ${fieldRightWords(right)}.`;
		}
		case 'settings-no-name':
			return `A ${fact.of} cannot be called ${JSON.stringify(fact.name)}; write ${NAME_RIGHT}.`;
		case 'settings-no-value':
			return `${fact.field} of ${fact.of} "${fact.name}" cannot be ${fact.value}; write ${fieldRightWords(fact.right)}.`;
		case 'settings-busy':
			return `${fact.file} was not written: another program is changing it (${fact.lock}). Try again; if none is, remove that file.`;
		case 'settings-not-written':
			return `${fact.file} was not written (${causeName(fact.cause)}). Nothing kept before is changed.`;
	}
}

/** The system's name for it, else its text. */
const causeName = ({ errno, text }: Cause): string => errno || text;

const BROKEN = {
	empty: 'it is empty',
	'not-json': 'it is not whole JSON',
	'no-settings': 'it holds no settings',
} as const;

const brokenWords = (why: Broken): string =>
	typeof why === 'string' ? BROKEN[why] : `${why.path} is not what can be kept there`;

function fileFaultWords(file: string, fault: FileFault): string {
	if (fault === 'missing') return `${file} is missing.`;
	const broken = `${file} is broken (${brokenWords(fault.why)})`;
	return 'aside' in fault
		? `${broken}; it was put aside as ${fault.aside}.`
		: `${broken} and cannot be put aside (${causeName(fault.cause)}).`;
}

function copyWords({ good, copy }: Extract<SettingsFact, { code: 'settings-copy' }>): string {
	if (copy === 'used') return `The last good copy, ${good}, is used.`;
	if (copy === 'none') return 'No copy of it is kept.';
	return copy === 'broken'
		? `Its copy ${good} is broken too.`
		: `Its copy ${good} cannot be used (${causeName(copy)}).`;
}

/** What a kept value may be. */
export function fieldRightWords({ kind, range, units }: FieldRight): string {
	const what = kind === 'angle' ? 'an angle in degrees' : `a ${kind}`;
	return `${what}${rangeWords(range)}${kind === 'length' ? ` ${units}` : ''}`;
}

/** What a bender or die may be called. */
export const NAME_RIGHT = `a name of visible characters on one line, at most ${LONGEST_NAME} of them`;
