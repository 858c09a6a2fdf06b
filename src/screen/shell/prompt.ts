import { withoutLast } from '../../terminal/width.ts';
import { UnitsError } from '../../units/units-error.ts';
import { longNumberWords, noChoiceWords } from '../../words/screen/frame.ts';
import { cannotBeRead, unitsErrorWords } from '../../words/units.ts';
import type { Key } from './keys.ts';

/** One of several things to do, taken by its number and Enter. */
export interface Choice<Step> {
	label: string;
	/** The same where there is little room. */
	brief?: string;
	step: Step;
	/** The program's own advice. */
	advised?: boolean;
	/** The heading under which it stands. */
	group?: string;
}

/** The choices of a page; of a list of thousands each is made only when it is asked for. */
export type Choices<Step> = ListLike<Choice<Step>>;

/** As much of a list as is asked for. */
interface ListLike<From> {
	readonly length: number;
	at(place: number): From | undefined;
	slice(from: number, to: number): readonly From[];
}

/** A choice of each in a list. */
export function choicesFrom<From, Step>(list: ListLike<From>, made: (from: From) => Choice<Step>): Choices<Step> {
	return {
		length: list.length,
		at(place) {
			const from = list.at(place);
			return from === undefined ? undefined : made(from);
		},
		slice: (from, to) => list.slice(from, to).map(made),
	};
}

/** What was written cannot be taken here; the message says what to write instead. */
export class NotTaken extends Error {
	override name = 'NotTaken';

	constructor(text: string, right: string) {
		super(cannotBeRead(text, right));
	}
}

/** What a page takes from the keyboard. `Step` is what follows from it. */
export interface Prompt<Step> {
	/** What the field is for. */
	label: string;
	/** Reads a number from the field. @throws UnitsError when it is none, NotTaken where it is none for this field */
	read?: (text: string) => Step;
	/** What the field's text is understood as. @throws UnitsError when it cannot be read */
	understood?: (text: string) => string;
	/** As a list where they are written out, so that each is known to be one. */
	choices?: readonly Choice<Step>[] | Choices<Step>;
	/** What `+` means here. */
	plus?: { label: string; brief?: string; step: Step };
	/** What `/` means here: taking back. Where nothing else is said it is `back`, for a pad has no Esc. */
	slash?: { label: string; step: Step };
	/** What `*` means here: more to do. */
	star?: { label: string; step: Step };
	/** What Esc means here when nothing is typed. */
	back?: { label: string; step: Step };
	/** Free text instead of a number: the text field has the keys but Esc. */
	text?: (text: string) => Step | string;
	/** The text is a path, which may begin with `/`: only Esc goes back. */
	path?: true;
	/** What Enter alone is answered with. */
	empty: string;
}

/** What has been typed or pointed at and not yet entered. */
export interface FieldEntry {
	field: string;
	/** The choice pointed at with the arrows. */
	selected: number | null;
}

export const NOTHING: FieldEntry = { field: '', selected: null };

export type Pressed<Step> = { entry: FieldEntry } | { step: Step } | { wrong: string };

/** What was refused is there to be read: the next character begins anew, Backspace mends it. */
export function renewed(entry: FieldEntry, message: { kind: string } | null, key: Key): FieldEntry {
	return message?.kind === 'wrong' && key.key === 'character' ? NOTHING : entry;
}

/** A field holds what a person writes for one number, not more. */
const LONGEST = 40;

/** What a key does on a page. Pure: this is the reducer of every reading field and list. */
export function pressed<Step>(prompt: Prompt<Step>, entry: FieldEntry, key: Key): Pressed<Step> {
	switch (key.key) {
		case 'character':
			return typed(prompt, entry, key.text);
		case 'backspace':
			return { entry: { ...entry, field: withoutLast(entry.field) } };
		case 'escape':
			if (entry.field !== '' || entry.selected !== null || prompt.back === undefined) return { entry: NOTHING };
			return { step: prompt.back.step };
		case 'return':
			return entered(prompt, entry);
		default:
			return { entry: pointed(prompt.choices?.length ?? 0, entry, key.key) };
	}
}

function typed<Step>(prompt: Prompt<Step>, entry: FieldEntry, text: string): Pressed<Step> {
	const sign = ['+', '/', '*'].includes(text);
	// No number begins with a sign of these, and no choice holds one: there they are keys wherever they have a meaning.
	if (sign && (entry.field === '' || prompt.read === undefined)) {
		const shortcut = { '+': prompt.plus, '/': prompt.slash ?? prompt.back, '*': prompt.star }[text];
		if (shortcut !== undefined) return { step: shortcut.step };
		return prompt.empty === '' ? { entry } : { wrong: prompt.empty };
	}
	if (prompt.read === undefined && prompt.choices === undefined) return { entry };
	if (entry.field.length >= LONGEST) return { wrong: longNumberWords(LONGEST) };
	return { entry: { field: entry.field + text, selected: null } };
}

function entered<Step>(prompt: Prompt<Step>, entry: FieldEntry): Pressed<Step> {
	const text = entry.field.trim();
	const { choices = [] } = prompt;
	if (text === '') {
		const pointedAt = entry.selected === null ? undefined : choices.at(entry.selected);
		return pointedAt === undefined ? { wrong: prompt.empty } : { step: pointedAt.step };
	}
	if (prompt.read !== undefined) return readNumber(prompt.read, text);
	if (choices.length === 0) return { wrong: prompt.empty };
	const choice = choiceNumbered(choices, text);
	if (choice !== undefined) return { step: choice.step };
	return { wrong: noChoiceWords(text, choices.length) };
}

/** What in a list has the number that is typed. */
export function choiceNumbered<From>(list: Pick<ListLike<From>, 'at'>, text: string): From | undefined {
	const number = /^\d+$/.test(text) ? Number(text) : 0;
	return number === 0 ? undefined : list.at(number - 1);
}

function readNumber<Step>(read: (text: string) => Step, text: string): Pressed<Step> {
	try {
		return { step: read(text) };
	} catch (error) {
		if (error instanceof UnitsError) return { wrong: unitsErrorWords(error) };
		if (error instanceof NotTaken) return { wrong: error.message };
		throw error;
	}
}

function pointed(count: number, entry: FieldEntry, key: Exclude<Key['key'], 'character'>): FieldEntry {
	if (count === 0) return entry;
	const last = count - 1;
	const from = entry.selected;
	const moves: Partial<Record<Key['key'], number>> = {
		up: from === null ? last : from - 1,
		down: from === null ? 0 : from + 1,
		pageUp: (from ?? 0) - 10,
		pageDown: (from ?? 0) + 10,
		home: 0,
		end: last,
	};
	const to = moves[key];
	return to === undefined ? entry : { field: '', selected: Math.min(last, Math.max(0, to)) };
}
