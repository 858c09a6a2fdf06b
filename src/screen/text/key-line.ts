import { FIELD_KEYS, KEY_NAMES } from '../../words/screen/frame.ts';
import type { Prompt } from '../shell/prompt.ts';
import { type Line, type Span, span, widthOf } from './line.ts';

/** A key and what it does here; the same shorter, for where that saves a line. */
export type KeyHint = readonly [key: string, does: string, brief?: string | undefined];

/** The keys that a prompt takes, in the order of the numeric pad and then the rest. */
export function keysOf<Step>(prompt: Prompt<Step>): KeyHint[] {
	const keys: KeyHint[] = [];
	if (prompt.plus !== undefined) keys.push(['+', prompt.plus.label, prompt.plus.brief]);
	if (prompt.text !== undefined) keys.push([KEY_NAMES.enter, FIELD_KEYS.keep]);
	else if (prompt.read !== undefined) keys.push([KEY_NAMES.numberEnter, FIELD_KEYS.give]);
	else if (prompt.choices !== undefined) keys.push([KEY_NAMES.numberEnter, FIELD_KEYS.choose]);
	if (prompt.slash !== undefined) keys.push(['/', prompt.slash.label]);
	if (prompt.star !== undefined) keys.push(['*', prompt.star.label]);
	if (prompt.back !== undefined) {
		const onlyEscape = prompt.slash !== undefined || prompt.path === true;
		keys.push([onlyEscape ? KEY_NAMES.escape : KEY_NAMES.slashEscape, prompt.back.label]);
	}
	return keys;
}

/** The keys in as few lines of that width as they need, said shorter only where that saves a line. */
export function keyLines(keys: readonly KeyHint[], columns: number): Line[] {
	const whole = inLines(keys, columns);
	const brief = inLines(
		keys.map(([key, does, short = does]) => [key, short]),
		columns,
	);
	return brief.length < whole.length ? brief : whole;
}

function inLines(keys: readonly KeyHint[], columns: number): Line[] {
	const lines: Span[][] = [[]];
	for (const [key, does] of keys) {
		const hint = [span(` ${key} `, 'inverse'), span(` ${does}`)];
		const current = lines.at(-1)!;
		if (current.length > 0 && widthOf(current) + 2 + widthOf(hint) > columns) lines.push(hint);
		else current.push(...(current.length > 0 ? [span('  ')] : []), ...hint);
	}
	return lines;
}
