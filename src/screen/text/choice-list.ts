import { cellsOf } from '../../terminal/width.ts';
import { wrap } from '../../terminal/wrap.ts';
import { moreChoicesWords } from '../../words/screen/frame.ts';
import type { Choice, Choices } from '../shell/prompt.ts';
import { EMPTY, type Line, line, span } from './line.ts';
import { firstShown } from './window.ts';

/** A line of the list, and which choice it belongs to; headings to none. */
interface ListedLine {
	line: Line;
	of: number | null;
}

/** Number and mark in front of a label, which the lines after its first keep clear. */
const INDENT = 6;

/**
 * The choices with their numbers, under their headings, in at most `rows` lines of `columns`: those around the one pointed at, or the
 * first ones. What is left out above or below is counted.
 */
export function choiceLines<Step>(
	choices: Choices<Step>,
	selected: number | null,
	columns: number,
	rows: number,
): Line[] {
	// Farther from the one pointed at than there are rows nothing has room, and there may be thousands.
	const from = Math.max(0, (selected ?? 0) - rows);
	const near = choices.slice(from, (selected ?? 0) + rows + 1);
	const all = near.flatMap((choice, i): ListedLine[] => [
		...groupHeading(choice, i === 0 && from > 0 ? choices.at(from - 1) : near[i - 1]).map((each) => ({
			line: each,
			of: null,
		})),
		...choiceOf(choice, from + i, from + i === selected, columns).map((each) => ({ line: each, of: from + i })),
	]);
	if (all.length <= rows) return all.map(({ line: each }) => each);
	const focus = selected === null ? 0 : all.findIndex(({ of }) => of === selected);
	const room = Math.max(1, rows - 2);
	const top = firstShown(focus, room, all.length);
	const shown = all.slice(top, top + room);
	const above = hidden(all.slice(0, top), shown, from, 'above');
	const below = hidden(all.slice(top + room), shown, choices.length - from - near.length, 'below');
	return [above, ...shown.map(({ line: each }) => each), below].slice(0, rows);
}

/** How many choices are left out, `farther` ones with them; one of which a line is seen is not. */
function hidden(
	left: readonly ListedLine[],
	shown: readonly ListedLine[],
	farther: number,
	where: 'above' | 'below',
): Line {
	const seen = new Set(shown.map(({ of }) => of));
	const count = new Set(left.map(({ of }) => of).filter((of) => of !== null && !seen.has(of))).size + farther;
	return count > 0 ? line(`    ${moreChoicesWords(count, where)}`, 'quiet') : EMPTY;
}

function groupHeading<Step>({ group }: Choice<Step>, before: Choice<Step> | undefined): Line[] {
	if (group === undefined || group === before?.group) return [];
	return before === undefined ? [line(group, 'quiet')] : [EMPTY, line(group, 'quiet')];
}

/** A choice whose label has no room is said shorter where it can be, and else goes on below. */
function choiceOf<Step>({ label, brief, advised }: Choice<Step>, at: number, selected: boolean, columns: number) {
	const number = String(at + 1).padStart(3);
	const room = columns - INDENT;
	const text = cellsOf(label) > room ? (brief ?? label) : label;
	const tone = selected ? 'inverse' : advised ? 'strong' : 'plain';
	const parts = cellsOf(text) > room ? wrap(text, room) : [text];
	return parts.map(
		(part, row): Line => [
			span(row === 0 ? `${number}${advised ? ' + ' : '   '}` : ' '.repeat(INDENT), 'strong'),
			span(part, tone),
		],
	);
}
