import { EMPTY, type Line, line, span } from '../line.ts';
import type { Choice } from '../prompt.ts';

/**
 * The choices with their numbers, under their headings, in at most `rows` lines: those around the one pointed at, or the first ones.
 * What is left out above or below is counted.
 */
export function choiceLines<Step>(choices: readonly Choice<Step>[], selected: number | null, rows: number): Line[] {
	const all = choices.flatMap((choice, at) => [...heading(choices, at), choiceLine(choice, at, at === selected)]);
	if (all.length <= rows) return all;
	const first = all.length - choices.length;
	const focus = selected === null ? 0 : selected + Math.min(first, headingsBefore(choices, selected));
	const room = Math.max(1, rows - 2);
	const top = Math.min(Math.max(0, focus - Math.floor(room / 2)), all.length - room);
	const more = (count: number, where: string) =>
		count > 0 ? line(`    (${count} more ${where}; arrow keys)`, 'quiet') : EMPTY;
	return [more(top, 'above'), ...all.slice(top, top + room), more(all.length - top - room, 'below')].slice(0, rows);
}

function headingsBefore<Step>(choices: readonly Choice<Step>[], selected: number): number {
	return choices.slice(0, selected + 1).reduce((sum, _, at) => sum + heading(choices, at).length, 0);
}

function heading<Step>(choices: readonly Choice<Step>[], at: number): Line[] {
	const group = choices[at]?.group;
	if (group === undefined || group === choices[at - 1]?.group) return [];
	return at === 0 ? [line(group, 'quiet')] : [EMPTY, line(group, 'quiet')];
}

function choiceLine<Step>({ label, advised }: Choice<Step>, at: number, selected: boolean): Line {
	const number = String(at + 1).padStart(3);
	const mark = advised ? ' + ' : '   ';
	return [span(`${number}${mark}`, 'strong'), span(label, selected ? 'inverse' : advised ? 'strong' : 'plain')];
}
