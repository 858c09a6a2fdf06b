import type { Action } from '../../../session/protocol/action.ts';
import { type MeasuredIn, QUANTITY_OF } from '../../../session/protocol/measured-in.ts';
import { parseQuantity } from '../../../units/parse.ts';
import { UnitsError } from '../../../units/units-error.ts';
import { fromShown, type Ruled, shownUnits } from '../../../words/lengths.ts';
import { KEY_SAYS } from '../../../words/screen/usual.ts';
import { EXPECTED } from '../../../words/session/ask-measure.ts';
import { TAKE_BACK } from '../../../words/session/keys.ts';
import { bendRight, numberRight, written } from '../../../words/session/number.ts';
import { NotTaken, type Prompt } from '../../shell/prompt.ts';
import { EMPTY, type Line, span } from '../../text/line.ts';
import type { SessionStep } from '../session-state.ts';

/** From so many columns on a table has all of its columns, as wide as they may be. */
export const FULL_WIDTH = 80;

/** The room that a page's body has, and what fills a cell of a block digit. */
export interface Room {
	columns: number;
	rows: number;
	/** Of the rows those that the choices under the body leave. */
	free: number;
	ink: string;
	/** Rows of the whole window: sizes that depend on it alone do not jump when a message comes. */
	window: number;
	/** Only ASCII can be drawn. */
	ascii: boolean;
	/** It is read out, so that nothing may be said by a drawing alone. */
	spoken: boolean;
}

/** Rows of a window from which nothing has to be said in its shortest form. */
export const ROOMY_ROWS = 22;

/** Lines that belong together. Where room is scarce the lower ranks come first; rank 0 stays. */
export interface Section {
	rank: number;
	lines: readonly Line[];
	/** Over the whole width, above what is set beside the picture in a wide window. */
	wide?: boolean;
	/** Nobody misses anything where it has no room: it stands elsewhere too. */
	extra?: boolean;
}

/** What of a page's body has room; `short`: whether something is missing that stands nowhere else. */
export interface FittedBody {
	lines: Line[];
	short: boolean;
}

/** One page of a session. */
export interface PageView {
	title: string;
	prompt: Prompt<SessionStep>;
	body(room: Room): Section[];
}

/** The sections' lines, a blank line between sections as far as there are rows, without the sections that do not fit. */
export function fitted(sections: readonly Section[], rows: number): FittedBody {
	const filled = sections.filter(({ lines }) => lines.length > 0);
	const byRank = filled.toSorted((a, b) => a.rank - b.rank);
	const chosen = new Set<Section>();
	let taken = 0;
	for (const section of byRank) {
		if (section.rank > 0 && taken + section.lines.length > rows) continue;
		chosen.add(section);
		taken += section.lines.length;
	}
	let blanks = Math.max(0, rows - taken);
	const spaced = filled
		.filter((each) => chosen.has(each))
		.flatMap(({ lines }, at) => (at === 0 || blanks-- <= 0 ? lines : [EMPTY, ...lines]));
	const missed = filled.some((each) => !chosen.has(each) && each.extra !== true);
	return { lines: spaced.slice(0, rows), short: missed || spaced.length > rows };
}

/** The keys that every ask has besides its own. */
export const SLASH = { label: TAKE_BACK, step: { step: 'page', page: { page: 'undo' } } } as const;
export const STAR = { label: KEY_SAYS.more, step: { step: 'page', page: { page: 'more' } } } as const;
export const BACK = { label: KEY_SAYS.back, step: { step: 'page', page: { page: 'ask' } } } as const;

/** A field for one number of that measure; a length without a unit is in the one that is shown, the value in the job's. */
export function numberField(
	measure: MeasuredIn,
	job: Ruled,
	step: (value: number) => SessionStep,
): { read: (text: string) => SessionStep; understood: (text: string) => string } {
	const kind = QUANTITY_OF[measure];
	const parse = (text: string) => {
		const value = parseQuantity(text, kind, shownUnits(job));
		return kind === 'length' ? fromShown(value, job) : value;
	};
	const typed = (text: string) => {
		try {
			return parse(text);
		} catch (error) {
			throw error instanceof UnitsError ? new NotTaken(text, numberRight(measure, job)) : error;
		}
	};
	// What the step itself refuses is a number, and says what is wrong with it.
	return { read: (text) => step(typed(text)), understood: (text) => written(parse(text), measure, job) };
}

/** The step that answers with one action. */
export function answer(action: Action): SessionStep {
	return { step: 'answer', answer: { action } };
}

/** Refuses what only a whole number from 1 to `last` can be. */
export function bendNumber(text: string, last: number): number {
	if (/^\d+$/.test(text) && Number(text) >= 1 && Number(text) <= last) return Number(text);
	throw new NotTaken(text, bendRight(last));
}

/** In plain figures: what a reading is expected to be must not be easier to see than what it is. */
export function expectedLine(value: string): Line {
	return [span(`${EXPECTED}  `), span(value, 'strong')];
}
